package sheet

import (
	"fmt"
	"io"
	"math"
	"strings"

	"coatwright/planner"
)

// reworks maps the ids of steps that lay a film to the ways to take it back.
func reworks(p *planner.Plan) map[string][]planner.Rework {
	out := map[string][]planner.Rework{}
	for _, f := range p.Films {
		out[f.Step] = f.Rework
	}
	return out
}

func step(out io.Writer, n int, s planner.Step, numbers map[string]int, rework []planner.Rework) {
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
		line("%s", filmText(s))
	}
	for _, r := range rework {
		line("%s", reworkText(r))
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

func filmText(s planner.Step) string {
	text := fmt.Sprintf("%s of %.0f um wet, %.0f um dry in all; %.0f kPa at the inlet", coats(s.Coats), s.WetUm, s.DryUm, s.Pressure)
	if s.FanMM > 0 {
		text += fmt.Sprintf(", %.0f mm of fan or cone, %.0f mm off, %.0f %% overlap", s.FanMM, s.DistanceMM, math.Round(s.Overlap))
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
