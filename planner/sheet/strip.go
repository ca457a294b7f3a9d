package sheet

import (
	"fmt"
	"io"
	"math"
	"strings"

	"coatwright/planner"
	q "coatwright/quantity"
)

// strips writes what each candy looks like coat by coat.
func strips(out io.Writer, p *planner.Plan, u *q.System) {
	for _, s := range p.Strips {
		title(out, "Coat by coat, an estimate: "+s.Title, "-")
		if s.Missing != "" {
			fmt.Fprintf(out, "  %s\n", s.Missing)
			continue
		}
		fmt.Fprintf(out, "  %5s  %-8s  %5s  %5s  %5s  %6s\n", "coats", "screen", "L*", "a*", "b*", "change")
		for _, c := range s.Coats[:s.Most()+1] {
			fmt.Fprintf(out, "%s\n", strings.TrimRight(fmt.Sprintf("  %5d  %-8s  %5s  %5s  %5s  %6s  %s", c.Coats, c.Hex, tenths(c.L), tenths(c.A), tenths(c.B), from(c), marks(s, c)), " "))
		}
		for _, line := range StripText(s, u) {
			fmt.Fprintf(out, "  %s\n", line)
		}
	}
}

func markdownStrips(out io.Writer, p *planner.Plan, u *q.System) {
	for _, s := range p.Strips {
		fmt.Fprintf(out, "\n## Coat by coat, an estimate: %s\n\n", escape(s.Title))
		if s.Missing != "" {
			fmt.Fprintf(out, "%s\n", escape(s.Missing))
			continue
		}
		fmt.Fprint(out, "| coats | screen | L\\* | a\\* | b\\* | change | |\n|--:|---|--:|--:|--:|--:|---|\n")
		for _, c := range s.Coats[:s.Most()+1] {
			fmt.Fprintf(out, "| %d | %s | %s | %s | %s | %s | %s |\n", c.Coats, escape(c.Hex), tenths(c.L), tenths(c.A), tenths(c.B), from(c), marks(s, c))
		}
		fmt.Fprintln(out)
		for _, line := range StripText(s, u) {
			fmt.Fprintf(out, "- %s\n", escape(line))
		}
	}
}

// tenths writes a number to a tenth, without a minus before nothing.
func tenths(x float64) string { return fmt.Sprintf("%.1f", math.Round(10*x)/10+0) }

// from is how far it is from the coat before; "" for the bare ground.
func from(c planner.StripCoat) string {
	if c.Coats == 0 {
		return ""
	}
	return tenths(c.Change)
}

// marks are what must be known of a count of coats.
func marks(s planner.Strip, c planner.StripCoat) string {
	var is []string
	if c.Coats == s.Agreed {
		is = append(is, "agreed")
	}
	if s.Nearest != nil && c.Coats == s.Nearest.Coats {
		is = append(is, "nearest")
	}
	if !c.OnScreen {
		is = append(is, "purer than a screen shows")
	}
	return strings.Join(is, ", ")
}

// StripText says in sentences what a strip comes to; none for one that could not
// be reckoned.
func StripText(s planner.Strip, u *q.System) []string {
	if s.Missing != "" || s.Even == nil {
		return nil
	}
	var lines []string
	if m := s.Nearest; m != nil {
		stay := "comes"
		if m.Coats > 1 {
			stay = "come"
		}
		lines = append(lines, fmt.Sprintf("%s %s nearest to the colour wanted, %s: %.1f from it.", coats(m.Coats), stay, s.Wanted, m.Left))
	}
	lines = append(lines, fmt.Sprintf("Lay it even to %s either way, and no eye sees it; %s off shows as %.1f.",
		q.Show(u, q.Fraction(s.Even.Just/100)), q.Show(u, q.Fraction(s.Even.Variation/100)), max(s.Even.Thin, s.Even.Thick)))
	for _, sag := range s.Sags {
		lines = append(lines, fmt.Sprintf("A sag %g times as thick looks %.1f from the rest and loses %.1f of L*.", sag.Times, sag.Change, sag.Darker))
	}
	if s.Remark != "" {
		lines = append(lines, s.Remark)
	}
	return append(lines, "Changes are CIEDE2000: 1 just shows side by side, 2.3 most people see. Spray a test card, and let that decide.")
}
