package sheet

import (
	"bufio"
	"fmt"
	"io"
	"math"

	"coatwright/planner"
)

// Difference writes what leaving out a step, or choosing otherwise, changes.
func Difference(w io.Writer, d *planner.Difference) error {
	out := bufio.NewWriter(w)
	fmt.Fprintf(out, "%s: %s\n", question(d), Verdict(d))
	for _, r := range d.Breaks {
		fmt.Fprintf(out, "  breaks %q, which %s needs: %s\n", r.Fact, forStep(r.For), r.Because)
	}
	for _, r := range d.Misses {
		fmt.Fprintf(out, "  misses %q, which %s wants: %s\n", r.Fact, forStep(r.For), r.Because)
	}
	for _, c := range d.Gone {
		fmt.Fprintf(out, "  - %s (%s), %s\n", change(c), c.Note, duration(c.Work))
	}
	for _, c := range d.Come {
		fmt.Fprintf(out, "  + %s (%s), %s\n", change(c), c.Note, duration(c.Work))
	}
	if d.With != "" && d.Refused != nil {
		refusal(out, d.Refused)
	}
	return out.Flush()
}

// DifferenceMarkdown writes the same as CommonMark, with links as in Markdown.
func DifferenceMarkdown(w io.Writer, d *planner.Difference) error {
	out := bufio.NewWriter(w)
	fmt.Fprintf(out, "# %s\n\n%s\n\n", escape(question(d)), escape(Verdict(d)))
	for _, r := range d.Breaks {
		fmt.Fprintf(out, "- Breaks **%s**, which %s needs: %s\n", escape(r.Fact), escape(forStep(r.For)), escape(r.Because))
	}
	for _, r := range d.Misses {
		fmt.Fprintf(out, "- Misses **%s**, which %s wants: %s\n", escape(r.Fact), escape(forStep(r.For)), escape(r.Because))
	}
	for _, c := range d.Gone {
		fmt.Fprintf(out, "- Goes: [%s](%s.md), %s\n", escape(change(c)), c.Note, duration(c.Work))
	}
	for _, c := range d.Come {
		fmt.Fprintf(out, "- Comes: [%s](%s.md), %s\n", escape(change(c)), c.Note, duration(c.Work))
	}
	if d.With != "" && d.Refused != nil {
		fmt.Fprintf(out, "- No plan for %s: %s.\n", escape(d.Refused.Part), escape(missing(d.Refused)))
		for _, reason := range d.Refused.Reasons {
			fmt.Fprintf(out, "  - %s\n", escape(reason))
		}
	}
	return out.Flush()
}

// question is what was asked: a step left out, or choices made otherwise.
func question(d *planner.Difference) string {
	if d.With != "" {
		return "With " + d.With
	}
	return fmt.Sprintf("Without %q (%s)", d.Title, d.Without)
}

// Verdict is the answer in a sentence.
func Verdict(d *planner.Difference) string {
	if d.Answer == planner.Breaks {
		return "the job cannot be done so."
	}
	return says(d) + "; " + Price(d) + "."
}

// says is what comes of it, without the price.
func says(d *planner.Difference) string {
	chosen := d.With != ""
	switch {
	case d.Answer == planner.Instead && chosen:
		return "it takes other steps"
	case d.Answer == planner.Instead:
		return "something else takes its place"
	case d.Answer == planner.Misses && chosen:
		return "it can be done so, at a risk"
	case d.Answer == planner.Misses:
		return "it can be left out, at a risk"
	case chosen && len(d.Gone) > 0:
		return "it takes fewer steps"
	case chosen:
		return "the steps stay as they are"
	}
	return "it can be left out"
}

// Price says what a difference costs and spares: work, the end, and rework on
// average.
func Price(d *planner.Difference) string {
	text := moreOrLess(d.WorkMin, "more work", "less work", "the same work")
	text += ", " + moreOrLess(d.EndMin, "later at the end", "sooner at the end", "the end at the same time")
	switch {
	case d.RiskMin >= 0.5:
		text += fmt.Sprintf(", and about %s of rework on average", duration(d.RiskMin))
	case d.RiskMin <= -0.5:
		text += fmt.Sprintf(", and about %s less rework on average", duration(-d.RiskMin))
	}
	return text
}

func moreOrLess(min float64, more, less, same string) string {
	switch {
	case min >= 0.5:
		return duration(min) + " " + more
	case min <= -0.5:
		return duration(math.Abs(min)) + " " + less
	}
	return same
}

func change(c planner.Change) string {
	if c.Film == "" {
		return c.Title
	}
	return c.Title + ": " + c.Film
}

func forStep(id string) string {
	if id == planner.Agreed {
		return "the job as agreed"
	}
	return id
}
