// Package sheet writes a plan out for reading: as plain text for a terminal or
// the booth wall, and as markdown.
package sheet

import (
	"bufio"
	"fmt"
	"io"
	"strings"
	"time"

	"coatwright/planner"
	q "coatwright/quantity"
)

// Text writes the plan as plain text, its figures in some units.
func Text(w io.Writer, p *planner.Plan, u *q.System) error {
	out := bufio.NewWriter(w)
	title(out, p.Title, "=")
	if r := p.Refused; r != nil {
		refusal(out, r)
		return out.Flush()
	}
	summary(out, p, u)
	for _, c := range p.Conditions {
		fmt.Fprintf(out, "Room, %s: %s\n", c.Level, u.Text(c.What))
	}
	strips(out, p, u)
	hardware(out, p)
	title(out, "Cautions", "-")
	for _, c := range p.Cautions {
		fmt.Fprintf(out, "  ! %s: %s\n", c.Title, c.Says)
	}
	title(out, "What you need", "-")
	for _, m := range p.Materials {
		fmt.Fprintf(out, "  %-36s %8s %8s   have at least %s\n", m.Title, ml(u, m.ML), grams(u, m.G), ml(u, m.BuyML))
	}
	emissions(out, p, u)
	title(out, "Steps", "-")
	numbers, rework := numbered(p), reworks(p)
	day := ""
	for i, s := range p.Steps {
		if d := s.Start.Format("Monday 2 January 2006"); d != day {
			fmt.Fprintf(out, "\n%s\n", d)
			day = d
		}
		step(out, u, i+1, s, numbers, rework[s.ID])
	}
	return out.Flush()
}

// emissions writes what of each mix goes into the air, and who decides about it.
func emissions(out io.Writer, p *planner.Plan, u *q.System) {
	if len(p.Emissions) == 0 {
		return
	}
	title(out, "What goes into the air", "-")
	deferred := ""
	for _, e := range p.Emissions {
		fmt.Fprintf(out, "  %-36s VOC %s as sprayed, %s less water%s\n", strings.Join(e.Films, ", "), gPerL(u, e.VOCgPerL), gPerL(u, e.LessWaterGPerL), limit(u, e))
		if e.Defer != "" {
			deferred = e.Defer
		}
	}
	if deferred != "" {
		fmt.Fprintf(out, "  %s\n", deferred)
	}
}

// limit is what the law has for a mix, "" for nothing.
func limit(u *q.System, e planner.Emission) string {
	if e.LimitGPerL == 0 {
		return ""
	}
	return fmt.Sprintf("; EU limit, %s: %s, %s", e.Category, gPerL(u, e.LimitGPerL), e.Verdict)
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

func summary(out io.Writer, p *planner.Plan, u *q.System) {
	t := p.Totals
	fmt.Fprintf(out, "%d steps, %s of work, %s.\n", len(p.Steps), duration(t.WorkMin), ends(t))
	if len(p.Left) > 0 {
		fmt.Fprintf(out, "Nothing to do: %s.\n", strings.Join(p.Left, ", "))
	}
	fmt.Fprintf(out, "Films in section, from the bottom:\n")
	for _, f := range p.Films {
		fmt.Fprintf(out, "  %-34s %s, %s dry, on %s", f.Title, coats(f.Coats), um(u, f.DryUm), strings.Join(f.Parts, ", "))
		if f.Design != "" {
			fmt.Fprintf(out, ": %s", f.Design)
		}
		fmt.Fprintln(out)
	}
}

// ends is from when to when, and how late it may get.
func ends(t planner.Totals) string {
	text := stamp(t.Start) + " to " + stamp(t.End)
	if t.HighEnd.After(t.End) {
		text += ", at the latest " + stamp(t.HighEnd)
	}
	return text
}

func hardware(out io.Writer, p *planner.Plan) {
	if len(p.Hardware) == 0 {
		return
	}
	title(out, "Hardware in bags", "-")
	for _, b := range p.Hardware {
		fmt.Fprintf(out, "  %-7s from %s: %s\n", b.Label, b.Part, b.Holds)
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

func ml(u *q.System, x float64) string    { return q.Show(u, q.Volume(x*1e-6)) }
func grams(u *q.System, x float64) string { return q.Show(u, q.Mass(x*1e-3)) }
func gPerL(u *q.System, x float64) string { return q.Show(u, q.Concentration(x)) }
func um(u *q.System, x float64) string    { return q.Show(u, q.Length(x*1e-6)) }
func mm(u *q.System, x float64) string    { return q.Show(u, q.Length(x*1e-3)) }

// duration says minutes as a painter would.
func duration(min float64) string { return q.Time(min * 60).String() }
