package sheet

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Figures writes figures and how each came about as plain text, in some units.
func Figures(w io.Writer, figures []trace.Figure, u *q.System) error {
	out := bufio.NewWriter(w)
	for _, f := range figures {
		fmt.Fprintf(out, "\n%s: %s%s\n", f.Name, u.Show(f.Value), inBrackets(f.Range, u))
		if f.Text != "" {
			fmt.Fprintf(out, "    %s\n", f.Text)
		}
		for _, in := range f.Inputs {
			fmt.Fprintf(out, "    %-44s %s%s  (%s)\n", strings.TrimSpace(in.Symbol+"  "+in.Name), u.Show(in.Value), inBrackets(in.Range, u), origin(in.Origin))
		}
		for _, r := range f.Remarks {
			fmt.Fprintf(out, "    ! %s\n", u.Text(r))
		}
		if f.Source != "" {
			fmt.Fprintf(out, "    Source: %s\n", f.Source)
		}
		if f.Note != "" {
			fmt.Fprintf(out, "    Explained in %s\n", f.Note)
		}
	}
	return out.Flush()
}

func inBrackets(s *trace.Span, u *q.System) string {
	if s == nil {
		return ""
	}
	return fmt.Sprintf(" (%s to %s)", u.Show(s.Low), u.Show(s.High))
}

// origin says where an input came from.
func origin(o trace.Origin) string {
	text := string(o.From)
	if o.At != "" {
		text += " " + o.At
	}
	if o.Standing != "" {
		text += ", " + strings.ReplaceAll(o.Standing, "-", " ")
	}
	return text
}
