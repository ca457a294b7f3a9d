package sheet

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"coatwright/planner"
	q "coatwright/quantity"
)

// Markdown writes the plan as CommonMark with tables, its figures in some
// units. Links to notes are as
// they stand from the notes' own folder: step/tack-off.md.
func Markdown(w io.Writer, p *planner.Plan, u *q.System) error {
	out := bufio.NewWriter(w)
	fmt.Fprintf(out, "# %s\n\n", escape(p.Title))
	if r := p.Refused; r != nil {
		fmt.Fprintf(out, "No plan for %s: %s.\n\n", escape(r.Part), escape(missing(r)))
		for _, reason := range r.Reasons {
			fmt.Fprintf(out, "- %s\n", escape(reason))
		}
		return out.Flush()
	}
	fmt.Fprintf(out, "%d steps, %s of work, %s.\n\n", len(p.Steps), duration(p.Totals.WorkMin), ends(p.Totals))
	if len(p.Left) > 0 {
		fmt.Fprintf(out, "Nothing to do: %s.\n\n", escape(strings.Join(p.Left, ", ")))
	}
	for _, c := range p.Conditions {
		fmt.Fprintf(out, "- Room, **%s**: %s\n", c.Level, escape(u.Text(c.What)))
	}
	markdownStrips(out, p, u)
	markdownHardware(out, p)
	fmt.Fprint(out, "\n## Cautions\n\n")
	for _, c := range p.Cautions {
		fmt.Fprintf(out, "- **[%s](%s.md)** %s\n", escape(c.Title), c.Note, escape(c.Says))
	}
	fmt.Fprint(out, "\n## What you need\n\n| material | volume | mass | have at least |\n|---|--:|--:|--:|\n")
	for _, m := range p.Materials {
		fmt.Fprintf(out, "| [%s](material/%s.md) | %s | %s | %s |\n", escape(m.Title), m.Material, ml(u, m.ML), grams(u, m.G), ml(u, m.BuyML))
	}
	fmt.Fprint(out, "\n## Steps\n")
	numbers, rework := numbered(p), reworks(p)
	for i, s := range p.Steps {
		markdownStep(out, u, i+1, s, numbers, rework[s.ID])
	}
	return out.Flush()
}

func markdownHardware(out io.Writer, p *planner.Plan) {
	if len(p.Hardware) == 0 {
		return
	}
	fmt.Fprint(out, "\n## Hardware in bags\n\n| label | from | holds |\n|---|---|---|\n")
	for _, b := range p.Hardware {
		fmt.Fprintf(out, "| %s | %s | %s |\n", escape(b.Label), escape(b.Part), escape(b.Holds))
	}
}

func markdownStep(out io.Writer, u *q.System, n int, s planner.Step, numbers map[string]int, rework []planner.Rework) {
	fmt.Fprintf(out, "\n### %d. [%s](%s.md)", n, escape(s.Title), s.Note)
	if len(s.Films) > 0 {
		fmt.Fprintf(out, ": %s", escape(strings.Join(s.Films, ", ")))
	}
	if s.Design != "" {
		fmt.Fprintf(out, ", for %s", escape(s.Design))
	}
	fmt.Fprintf(out, "\n\n%s to %s, %s. %s\n", stamp(s.Start), s.End.Format("15:04"), escape(strings.Join(s.Parts, ", ")), escape(s.Because))
	if s.Advised {
		fmt.Fprintf(out, "\nAdvised: costs %.0f min, saves about %.0f.\n", s.CostsMin, s.SavesMin)
	}
	fmt.Fprintln(out)
	for _, w := range s.Waits {
		fmt.Fprintf(out, "- %s\n", escape(WaitText(w, numbers)))
	}
	if s.Coats > 0 {
		fmt.Fprintf(out, "- %s\n", escape(filmText(u, s)))
	}
	for _, r := range rework {
		fmt.Fprintf(out, "- %s\n", escape(reworkText(r)))
	}
	for _, c := range s.Checks {
		fmt.Fprintf(out, "- [ ] %s\n", escape(c))
	}
	for _, r := range Reasons(s.Why, numbers) {
		fmt.Fprintf(out, "- Gives %s\n", escape(r))
	}
	if len(s.Serves) > 1 {
		fmt.Fprintf(out, "- Leads to %s.\n", chain(s.Serves, numbers))
	}
	fmt.Fprintf(out, "- If skipped: %s\n", escape(s.Skipped))
	if s.Mix == nil {
		return
	}
	fmt.Fprint(out, "\n| pour | volume | to the mark | scale shows | share |\n|---|--:|--:|--:|---|\n")
	for _, l := range s.Mix.Lines {
		fmt.Fprintf(out, "| %s | %s | %s | %s | %s |\n", escape(l.Title), s.Mix.Poured(u, l.ML), s.Mix.Poured(u, l.MarkML), s.Mix.Weighed(u, l.MarkG), escape(l.Share))
	}
}

var escaper = strings.NewReplacer(`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "[", `\[`, "]", `\]`, "<", `\<`, ">", `\>`, "#", `\#`, "|", `\|`, "\n", " ")

// escape keeps a text from being read as markdown.
func escape(s string) string { return escaper.Replace(s) }
