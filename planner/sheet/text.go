// Package sheet writes a plan out for reading: as plain text for a terminal or
// the booth wall, and as markdown.
package sheet

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strings"
	"time"

	"coatwright/planner"
	q "coatwright/quantity"
)

// Text writes the plan as plain text.
func Text(w io.Writer, p *planner.Plan) error {
	out := bufio.NewWriter(w)
	title(out, p.Title, "=")
	if r := p.Refused; r != nil {
		refusal(out, r)
		return out.Flush()
	}
	summary(out, p)
	for _, c := range p.Conditions {
		fmt.Fprintf(out, "Room, %s: %s\n", c.Level, c.What)
	}
	title(out, "Cautions", "-")
	for _, c := range p.Cautions {
		fmt.Fprintf(out, "  ! %s: %s\n", c.Title, c.Says)
	}
	title(out, "What you need", "-")
	for _, m := range p.Materials {
		fmt.Fprintf(out, "  %-36s %8s %8s   have at least %s\n", m.Title, ml(m.ML), grams(m.G), ml(m.BuyML))
	}
	title(out, "Steps", "-")
	numbers := numbered(p)
	day := ""
	for i, s := range p.Steps {
		if d := s.Start.Format("Monday 2 January 2006"); d != day {
			fmt.Fprintf(out, "\n%s\n", d)
			day = d
		}
		step(out, i+1, s, numbers)
	}
	return out.Flush()
}

func title(out io.Writer, text, rule string) {
	fmt.Fprintf(out, "\n%s\n%s\n", text, strings.Repeat(rule, len([]rune(text))))
}

func refusal(out io.Writer, r *planner.Refusal) {
	fmt.Fprintf(out, "\nNo plan for %s: %s.\n", r.Part, missing(r))
	for _, reason := range r.Reasons {
		fmt.Fprintf(out, "  - %s\n", reason)
	}
}

// missing says what stands in the way of a plan.
func missing(r *planner.Refusal) string {
	switch {
	case r.ByHours():
		return "the working hours do not allow it"
	case r.Step == "":
		return fmt.Sprintf("nothing gives %q", r.Fact)
	}
	return fmt.Sprintf("nothing gives %q, which step/%s needs", r.Fact, r.Step)
}

func summary(out io.Writer, p *planner.Plan) {
	t := p.Totals
	fmt.Fprintf(out, "%d steps, %s of work, %s to %s.\n", len(p.Steps), duration(t.WorkMin), stamp(t.Start), stamp(t.End))
	fmt.Fprintf(out, "Films in section, from the bottom:\n")
	for _, f := range p.Films {
		fmt.Fprintf(out, "  %-34s %d x coats, %.0f um dry, on %s\n", f.Title, f.Coats, f.DryUm, strings.Join(f.Parts, ", "))
	}
}

// numbered maps step ids to their numbers.
func numbered(p *planner.Plan) map[string]int {
	numbers := map[string]int{}
	for i, s := range p.Steps {
		numbers[s.ID] = i + 1
	}
	return numbers
}

func step(out io.Writer, n int, s planner.Step, numbers map[string]int) {
	fmt.Fprintf(out, "\n%3d. %s-%s  %s", n, s.Start.Format("15:04"), s.End.Format("15:04"), s.Title)
	if len(s.Films) > 0 {
		fmt.Fprintf(out, ": %s", strings.Join(s.Films, ", "))
	}
	fmt.Fprintf(out, "  [%s]  (%s)\n", strings.Join(s.Parts, ", "), s.Note)
	line := func(format string, args ...any) { fmt.Fprintf(out, "       "+format+"\n", args...) }
	line("%s", s.Because)
	if s.Advised {
		line("Advised: costs %.0f min, saves about %.0f.", s.CostsMin, s.SavesMin)
	}
	if s.Meanwhile != "" {
		line("Meanwhile %s.", s.Meanwhile)
	}
	for _, w := range s.Waits {
		line("%s", WaitText(w, numbers))
	}
	if s.Coats > 0 {
		line("%s", filmText(s))
	}
	if s.Mix != nil {
		mix(line, s.Mix)
	}
	for _, c := range s.Checks {
		line("[ ] %s", c)
	}
	for _, r := range Reasons(s.Why, numbers) {
		line("Gives %s", r)
	}
	if len(s.Serves) > 1 {
		line("Leads to %s.", chain(s.Serves, numbers))
	}
	line("If skipped: %s", s.Skipped)
}

// WaitText says a wait in a sentence.
func WaitText(w planner.Wait, numbers map[string]int) string {
	var text string
	switch until := strings.TrimPrefix(w.Until, "before "); {
	case w.Min > 0:
		text = fmt.Sprintf("Wait %s after step %d, until %s", duration(w.Min), numbers[w.After], until)
	case until != w.Until:
		return fmt.Sprintf("Do it within %s of step %d, before the film is %s.", duration(w.Max), numbers[w.After], until)
	default:
		return fmt.Sprintf("Start within %s of step %d (%s: %s).", duration(w.Max), numbers[w.After], w.Until, w.By)
	}
	if w.Max > 0 {
		text += fmt.Sprintf("; the window closes after %s", duration(w.Max))
	}
	return text + "."
}

func filmText(s planner.Step) string {
	text := fmt.Sprintf("%d coats, each %.0f um wet, together %.0f um dry; %.0f kPa at the inlet", s.Coats, s.WetUm, s.DryUm, s.Pressure)
	if s.Coats > 1 {
		text += fmt.Sprintf("; flash %s between coats", duration(math.Ceil(s.FlashMin)))
	}
	if s.Colour != "" {
		text += "; colour " + s.Colour
	}
	return text + "."
}

func mix(line func(string, ...any), m *planner.Mix) {
	if m.Batches > 1 {
		line("Mix %d batches, each:", m.Batches)
	}
	for _, l := range m.Lines {
		line("pour %-28s %7s  to the mark %7s   scale %7s   %s", l.Title, ml(l.ML), ml(l.MarkML), grams(l.MarkG), l.Share)
	}
	text := fmt.Sprintf("The need is %s to %s, as %s of the spray lands.", ml(m.LowML), ml(m.HighML), m.Transfer)
	if m.StandMin > 0 {
		text += fmt.Sprintf(" Stand %s.", duration(m.StandMin))
	}
	if m.StrainUm > 0 {
		text += fmt.Sprintf(" Strain through %.0f um.", m.StrainUm)
	}
	line("%s Use within %s.", text, duration(m.PotLife))
}

// Reasons gathers the later steps that need one fact into one line.
func Reasons(why []planner.Reason, numbers map[string]int) []string {
	var lines []string
	for i, r := range why {
		if i > 0 && sameGift(why[i-1], r) {
			continue
		}
		var to []string
		for _, other := range why[i:] {
			if !sameGift(other, r) {
				break
			}
			to = append(to, forWhom(other.For, numbers))
		}
		lines = append(lines, fmt.Sprintf("%q for %s: %s", r.Fact, strings.Join(to, ", "), r.Because))
	}
	return lines
}

// chain names the steps from one to what was agreed.
func chain(serves []planner.Reason, numbers map[string]int) string {
	var to []string
	for _, r := range serves {
		to = append(to, forWhom(r.For, numbers))
	}
	return strings.Join(to, ", then ")
}

func sameGift(a, b planner.Reason) bool { return a.Fact == b.Fact && a.Because == b.Because }

func forWhom(id string, numbers map[string]int) string {
	if n, ok := numbers[id]; ok {
		return fmt.Sprintf("step %d", n)
	}
	return "the job as agreed"
}

func stamp(t time.Time) string { return t.Format("Mon 2 Jan 15:04") }

func ml(x float64) string {
	if x >= 1000 {
		return fmt.Sprintf("%.2f L", x/1000)
	}
	if x < 10 {
		return fmt.Sprintf("%.1f mL", x)
	}
	return fmt.Sprintf("%.0f mL", x)
}

func grams(x float64) string {
	if x < 10 {
		return fmt.Sprintf("%.1f g", x)
	}
	return fmt.Sprintf("%.0f g", x)
}

// duration says minutes as a painter would.
func duration(min float64) string { return q.Time(min * 60).String() }
