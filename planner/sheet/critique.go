package sheet

import (
	"bufio"
	"fmt"
	"io"

	"coatwright/planner"
	"coatwright/planner/critique"
)

// Critique writes what is wrong with a plan, finding by finding: the step by its
// number in p and its id, what is wrong and why, the note that says so, the
// smallest repair, and where something is let stand, for what reason.
func Critique(w io.Writer, c *critique.Critique, p *planner.Plan) error {
	out := bufio.NewWriter(w)
	fmt.Fprintf(out, "%s: %s\n", c.Title, CritiqueVerdict(c))
	numbers := numbered(p)
	for _, f := range c.Findings {
		finding(out, f, numbers)
	}
	return out.Flush()
}

// CritiqueVerdict is the critique in a sentence.
func CritiqueVerdict(c *critique.Critique) string {
	kept, risks := 0, 0
	for _, f := range c.Findings {
		switch {
		case f.Level == critique.Risks:
			risks++
		case f.Kept != "":
			kept++
		}
	}
	text := "every need is met"
	switch {
	case c.Open == 1:
		text = "1 need is not met"
	case c.Open > 1:
		text = fmt.Sprintf("%d needs are not met", c.Open)
	case kept > 0:
		text = "every other need is met"
	}
	if kept > 0 {
		text = fmt.Sprintf("%d kept so on purpose, ", kept) + text
	}
	if risks > 0 {
		text += fmt.Sprintf("; %d wanted and not met", risks)
	}
	return text + "."
}

func finding(out io.Writer, f critique.Finding, numbers map[string]int) {
	where := "The plan as a whole"
	if n := numbers[f.Step]; n > 0 {
		where = fmt.Sprintf("Step %d (%s), %s", n, f.Step, f.Title)
	}
	fmt.Fprintf(out, "\n%s", where)
	if f.Part != "" {
		fmt.Fprintf(out, ", on %s", f.Part)
	}
	fmt.Fprintf(out, "\n  %s: %s\n", levelWord(f.Level), f.Says)
	line := func(label, text string) {
		if text != "" {
			fmt.Fprintf(out, "  %s: %s\n", label, text)
		}
	}
	line("because", f.Because)
	line("note", f.Note)
	if f.Repair != nil {
		line("repair", f.Repair.Says)
	}
	line("kept so because", f.Kept)
}

// levelWord says how much a finding matters.
func levelWord(l critique.Level) string {
	if l == critique.Breaks {
		return "not met"
	}
	return "risk"
}
