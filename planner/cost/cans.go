package cost

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"github.com/govalues/decimal"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// CansFormula is how Cheapest chooses.
var CansFormula = trace.Formula{
	Text:   "least Σ n × price with Σ n × size ≥ volume; of equal prices, the least left over",
	Source: "definition",
	Note:   "background/what-a-quote-is-made-of",
}

// Can is a size that a liquid is sold in.
type Can struct {
	Size  q.Volume
	Price Money
}

// Stack is a number of cans of one size.
type Stack struct {
	Can   Can
	Count int
}

// mostSteps bounds the work: the volume is cut into no more steps than this.
const mostSteps = 100_000

// Cheapest returns the cans that cover need for the least money, the largest first;
// of those that cost the same, the ones with the least left over. No need takes no
// cans.
func Cheapest(need q.Volume, sizes []Can) ([]Stack, error) {
	if err := sound(need, sizes); err != nil {
		return nil, err
	}
	if need == 0 {
		return nil, nil
	}
	left, cans := steps(need, sizes)
	ways := make([]filled, left+1)
	for i := 1; i <= left; i++ {
		for c, size := range cans {
			if size == 0 {
				continue // smaller than a step
			}
			before := ways[max(0, i-size)]
			cost, err := before.cost.Add(sizes[c].Price.Amount)
			if err != nil {
				return nil, fmt.Errorf("the amount is too large to reckon with: %w", err)
			}
			w := filled{cost, before.volume + sizes[c].Size, c}
			if ways[i].volume == 0 || w.better(ways[i]) {
				ways[i] = w
			}
		}
	}
	return trimmed(stacks(ways, cans, sizes), need), nil
}

// filled is the best way to fill so many steps.
type filled struct {
	cost   decimal.Decimal
	volume q.Volume // of all cans
	last   int      // the can that was added last
}

func (f filled) better(than filled) bool {
	if c := f.cost.Cmp(than.cost); c != 0 {
		return c < 0
	}
	return f.volume < than.volume
}

// steps cuts need and the sizes into steps of one volume: the largest that divides
// all sizes. Where that would be too many, the step is wider, and a can is taken for
// the steps that it fills; the cans still cover need.
func steps(need q.Volume, sizes []Can) (left int, cans []int) {
	const nanolitre = 1e-12 // m3; metric sizes are whole ones, and the US gallon, quart and pint
	nanolitres := func(v q.Volume) int64 { return int64(math.Round(float64(v) / nanolitre)) }
	var step int64
	for _, c := range sizes {
		step = divisor(step, nanolitres(c.Size))
	}
	step = max(step, nanolitres(need)/mostSteps)
	for _, c := range sizes {
		cans = append(cans, int(nanolitres(c.Size)/step))
	}
	return int(math.Ceil(float64(need) / nanolitre / float64(step) * (1 - sliver))), cans
}

// divisor is the greatest common divisor.
func divisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// stacks counts the cans of each size on the way to the last step.
func stacks(ways []filled, cans []int, sizes []Can) []Stack {
	counts := make([]int, len(cans))
	for i := len(ways) - 1; i > 0; i -= cans[ways[i].last] {
		counts[ways[i].last]++
	}
	out := make([]Stack, len(sizes))
	for c, n := range counts {
		out[c] = Stack{sizes[c], n}
	}
	slices.SortStableFunc(out, func(a, b Stack) int { return cmp.Compare(b.Can.Size, a.Can.Size) })
	return out
}

// trimmed is stacks without empty ones, and without the cans that need can do
// without: wide steps may have let some in.
func trimmed(stacks []Stack, need q.Volume) []Stack {
	var total q.Volume
	for _, s := range stacks {
		total += s.Can.Size * q.Volume(s.Count)
	}
	for i, s := range stacks {
		for stacks[i].Count > 0 && total-s.Can.Size >= need*(1-sliver) {
			stacks[i].Count--
			total -= s.Can.Size
		}
	}
	return slices.DeleteFunc(stacks, func(s Stack) bool { return s.Count == 0 })
}

// sound refuses what cannot be bought.
func sound(need q.Volume, sizes []Can) error {
	if !(need >= 0) || math.IsInf(float64(need), 1) {
		return fmt.Errorf("found a need of %g mL; expected 0 or more", need.Millilitres())
	}
	if len(sizes) == 0 {
		return errors.New("found no sizes of cans; expected one or more")
	}
	const most = 100 // of the largest can, so that it fills many steps
	widest := sizes[0].Size
	for _, c := range sizes {
		if !(c.Size >= 1e-6 && c.Size <= 1) {
			return fmt.Errorf("found a can of %g mL; expected 1 mL to 1 m3", c.Size.Millilitres())
		}
		if c.Price.Currency != sizes[0].Price.Currency {
			return fmt.Errorf("found cans priced in %s and in %s; expected one currency", sizes[0].Price.Currency, c.Price.Currency)
		}
		widest = max(widest, c.Size)
	}
	if need > widest*most {
		return fmt.Errorf("found a need of %g L with cans of %g L at most; expected no more than %d of them", need.Litres(), widest.Litres(), most)
	}
	return nil
}
