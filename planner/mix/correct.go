package mix

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// CorrectFormula is how Correct comes about.
var CorrectFormula = trace.Formula{
	Text:   "V = max over parts of (poured / share); add share × V - poured; each share at the end of its range that asks for least; where V > cup, first take out 1 - cup/V of what is there",
	Source: "balance of each part: what is poured stays in, in the mix",
	Note:   "background/when-you-poured-too-much",
}

// Verdict is what is to be done about what is in the cup.
type Verdict string

// The verdicts.
const (
	Leave    Verdict = "within the range: leave it"
	PourOn   Verdict = "within the range so far: pour on"
	AddTo    Verdict = "out of the range: add to it"
	Overfull Verdict = "the cup does not hold what is missing: take some out first, or go on in more cups"
	Lost     Verdict = "out of the range, and no adding mends it: start again"
)

// Correction is how to come back to a recipe from what is in the cup.
type Correction struct {
	Verdict Verdict
	Least   *Remedy // into the ranges with the least that does it; nil where Lost
	Exact   *Remedy // back to the recipe as chosen; nil where nothing does it
	Running bool    // the pot life has begun: what is added does not set it back
}

// Remedy is what to add, in one cup or in several.
type Remedy struct {
	Out   q.Volume // to take out of the cup before, from what is well stirred
	Add   []Pour   // then to pour; marks count what is in the cup
	Total q.Volume // in the cup at the end
	Cups  int      // or, with nothing taken out: into so many cups, each with an equal share of what is there
	Each  []Pour   // ... and this into each
}

// Correct says how to mend a mix: poured is what is in the cup of each part, in
// the parts' order, and size what it holds, zero for any amount. Percentages may
// lie in their Range, and parts to the first of them may be off by slack.
//
// What is not yet poured is added as the recipe has it. What is in the cup is
// taken to be stirred: what is taken out then has the ratio of what stays.
func Correct(parts []Part, poured []q.Volume, size q.Volume, slack q.Fraction) (Correction, error) {
	c, err := chainOf(parts, slack)
	if err != nil {
		return Correction{}, err
	}
	there, err := inTheCup(parts, poured, size)
	if err != nil {
		return Correction{}, err
	}
	need, exactly := c.settled(there).fill(there), c.exact().fill(there)
	out := Correction{Least: remedy(parts, there, need, size), Exact: remedy(parts, there, exactly, size)}
	out.Verdict = verdict(there, need, out.Least)
	for i, p := range parts {
		out.Running = out.Running || p.Starts && there[i] > 0
	}
	return out, nil
}

// inTheCup checks what was poured, and returns it as numbers.
func inTheCup(parts []Part, poured []q.Volume, size q.Volume) ([]float64, error) {
	if len(poured) != len(parts) {
		return nil, fmt.Errorf("found %d amounts for %d parts; expected one for each, 0 for what is not yet poured", len(poured), len(parts))
	}
	if err := sound(float64(size), "the size of the cup"); err != nil {
		return nil, err
	}
	there := make([]float64, len(parts))
	var total q.Volume
	for i, v := range poured {
		if err := sound(float64(v), "a volume"); err != nil {
			return nil, wrong(i, parts[i], err)
		}
		there[i] = float64(v)
		total += v
	}
	if total == 0 {
		return nil, errors.New("the cup is empty; expected what was poured of at least one part")
	}
	if size > 0 && total > size*(1+sliver) {
		return nil, fmt.Errorf("found %s in a cup of %s; expected no more than it holds", q.Show(q.Metric, total), q.Show(q.Metric, size))
	}
	return there, nil
}

// verdict is the one for what is there, what is needed, and how to get there.
func verdict(there, need []float64, r *Remedy) Verdict {
	var over, missing bool
	for i := range need {
		if lacks(there[i], need[i]) {
			over = over || there[i] > 0
			missing = missing || there[i] == 0
		}
	}
	switch {
	case r == nil:
		return Lost
	case r.Out > 0:
		return Overfull
	case over:
		return AddTo
	case missing:
		return PourOn
	}
	return Leave
}

// lacks reports whether need is more than what is there by more than the
// arithmetic leaves over.
func lacks(there, need float64) bool { return need > there*(1+sliver) }

// remedy gets from what is there to what is needed in a cup of a size; nil where
// nothing is enough.
func remedy(parts []Part, there, need []float64, size q.Volume) *Remedy {
	total := q.Volume(sum(need))
	if math.IsInf(float64(total), 1) {
		return nil
	}
	r := &Remedy{Total: total, Cups: int(min(cups(total, size), math.MaxInt32))}
	keep := 1.0
	if r.Cups > 1 {
		keep, r.Total = float64(size/total), size
	}
	r.Out = q.Volume((1 - keep) * sum(there))
	r.Add = adds(parts, there, need, keep)
	r.Each = adds(parts, there, need, 1/float64(r.Cups))
	return r
}

// adds are the pours from what is there to what is needed, for a share of both.
// Their masses are zero where one of what is in the cup is not known.
func adds(parts []Part, there, need []float64, share float64) []Pour {
	held, more := make([]q.Volume, len(parts)), make([]q.Volume, len(parts))
	for i := range parts {
		held[i] = q.Volume(share * there[i])
		if lacks(there[i], need[i]) {
			more[i] = q.Volume(share * (need[i] - there[i]))
		}
	}
	heldMasses, known := massesOf(parts, held)
	moreMasses, knownToo := massesOf(parts, more)
	if !known || !knownToo {
		heldMasses, moreMasses = make([]q.Mass, len(parts)), make([]q.Mass, len(parts))
	}
	var cup inCup
	cup.pour(parts, held, heldMasses)
	return slices.DeleteFunc(cup.pour(parts, more, moreMasses), func(p Pour) bool { return p.Volume == 0 })
}

func sum(xs []float64) float64 {
	var total float64
	for _, x := range xs {
		total += x
	}
	return total
}
