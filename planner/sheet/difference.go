package sheet

import (
	"bufio"
	"fmt"
	"io"
	"math"

	"coatwright/planner"
)

// Difference writes what leaving out a step changes.
func Difference(w io.Writer, d *planner.Difference) error {
	out := bufio.NewWriter(w)
	fmt.Fprintf(out, "Without %q (%s): %s\n", d.Title, d.Without, Verdict(d))
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
	return out.Flush()
}

// Verdict is the answer in a sentence.
func Verdict(d *planner.Difference) string {
	switch d.Answer {
	case planner.Breaks:
		return "the job cannot be done so."
	case planner.Instead:
		return "something else takes its place; " + price(d) + "."
	case planner.Misses:
		return "it can be left out, at a risk; " + price(d) + "."
	}
	return "it can be left out; " + price(d) + "."
}

// price says what leaving out costs and spares.
func price(d *planner.Difference) string {
	text := moreOrLess(d.WorkMin, "more work", "less work", "the same work")
	text += ", " + moreOrLess(d.EndMin, "later at the end", "sooner at the end", "the end at the same time")
	if d.RiskMin > 0 {
		text += fmt.Sprintf(", and about %s of rework on average", duration(d.RiskMin))
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
