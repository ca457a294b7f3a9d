package sheet

import (
	"fmt"
	"io"
	"math"
	"strings"

	"coatwright/planner"
	q "coatwright/quantity"
)

// reworks maps the ids of steps that lay a film to the ways to take it back.
func reworks(p *planner.Plan) map[string][]planner.Rework {
	out := map[string][]planner.Rework{}
	for _, f := range p.Films {
		out[f.Step] = f.Rework
	}
	return out
}

func step(out io.Writer, u *q.System, n int, s planner.Step, numbers map[string]int, rework []planner.Rework) {
	fmt.Fprintf(out, "\n%3d. %s-%s  %s", n, s.Start.Format("15:04"), s.End.Format("15:04"), s.Title)
	if len(s.Films) > 0 {
		fmt.Fprintf(out, ": %s", strings.Join(s.Films, ", "))
	}
	fmt.Fprintf(out, "  [%s]  (%s)\n", strings.Join(s.Parts, ", "), s.Note)
	line := func(format string, args ...any) { fmt.Fprintf(out, "       "+format+"\n", args...) }
	if s.Design != "" {
		line("For %s.", s.Design)
	}
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
		line("%s", filmText(u, s))
	}
	for _, r := range rework {
		line("%s", reworkText(r))
	}
	if s.Mix != nil {
		mix(line, u, s.Mix)
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
		text = fmt.Sprintf("Wait %s%s after step %d, until %s", duration(w.Min), spread(w), numbers[w.After], until)
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

// spread is how short and how long a wait may turn out; "" where it is exact.
func spread(w planner.Wait) string {
	if w.Low == w.High {
		return ""
	}
	return fmt.Sprintf(" (%s to %s)", duration(w.Low), duration(w.High))
}

func reworkText(r planner.Rework) string {
	return fmt.Sprintf("If it goes wrong, until %s (%s): %s", stamp(r.Until), r.State, r.How)
}

func filmText(u *q.System, s planner.Step) string {
	text := fmt.Sprintf("%s of %s wet, %s dry in all; %s at the inlet", coats(s.Coats), um(u, s.WetUm), um(u, s.DryUm), q.Show(u, q.Pressure(s.Pressure*1e3)))
	if s.FanMM > 0 {
		text += fmt.Sprintf(", %s of fan or cone, %s off, %.0f %% overlap", mm(u, s.FanMM), mm(u, s.DistanceMM), math.Round(s.Overlap))
	}
	if s.Coats > 1 {
		text += fmt.Sprintf("; flash %s between coats", duration(math.Ceil(s.FlashMin)))
	}
	if s.Colour != "" {
		text += "; colour " + s.Colour
	}
	return text + "."
}

func coats(n int) string {
	if n == 1 {
		return "1 coat"
	}
	return fmt.Sprintf("%d coats", n)
}

func mix(line func(string, ...any), u *q.System, m *planner.Mix) {
	if m.Batches > 1 {
		line("Mix %d batches, each:", m.Batches)
	}
	for _, l := range m.Lines {
		line("pour %-28s %7s  to the mark %7s   scale %7s   %s", l.Title, m.Poured(u, l.ML), m.Poured(u, l.MarkML), m.Weighed(u, l.MarkG), l.Share)
	}
	if m.WeighIt() {
		line("Weigh it: a pour is less than a line of the cup.")
	}
	if m.TotalML < m.LeastML {
		line("The scale cannot hold this ratio in less than %s: mix that much, or use a finer scale.", ml(u, m.LeastML))
	}
	text := fmt.Sprintf("The need is %s to %s, as %s of the spray lands.", ml(u, m.LowML), ml(u, m.HighML), m.Transfer)
	if m.StandMin > 0 {
		text += fmt.Sprintf(" Stand %s.", duration(m.StandMin))
	}
	if m.StrainUm > 0 {
		text += fmt.Sprintf(" Strain through %s.", um(u, m.StrainUm))
	}
	for _, c := range m.Cups {
		text += fmt.Sprintf(" Runs out of the %s cup in %.0f to %.0f s.", c.Cup, c.Low, c.High)
	}
	line("%s Use within %s.", text, duration(m.PotLife))
}
