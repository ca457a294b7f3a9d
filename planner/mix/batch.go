package mix

import (
	"errors"
	"fmt"
	"math"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// cups is how many cups of mix a total takes, at least 1. A cup of no size holds
// everything.
func cups(total, cup q.Volume) float64 {
	if cup <= 0 {
		return 1
	}
	return max(1, math.Ceil(float64(total/cup)-sliver))
}

// BatchFormula is how InBatches comes about.
var BatchFormula = trace.Formula{
	Text:   "batches = the larger of total / cup and work / (pot life - stand), rounded up",
	Source: "pot life and induction time as MIL-HDBK-1110, 7.3.1.1 has them: from mixing on, the standing in it",
	Note:   "background/why-mixes-stand",
}

// Batching is a mix that may not fit one cup, or not keep until it is laid. The
// pot life is that of the day's temperature. A big batch warms itself and keeps
// less long than the sheet's small one, which nothing here knows of.
type Batching struct {
	Total   q.Volume // of mix that the film takes
	Work    q.Time   // from the first trigger to the last, waits between coats in it
	PotLife q.Time   // from when the batch is mixed; zero where it keeps
	Stand   q.Time   // from when the batch is mixed until it may be used
	Size    q.Volume // of the cup; zero for no limit
	Lines   Cup      // a batch is poured up to one of them
	Least   q.Volume // the smallest batch that can be measured; zero for any
}

// Batch is when one batch is mixed, used and gone, from when the first is mixed.
type Batch struct {
	Mix, From, Until q.Time
	Dies             q.Time // when its pot life ends; zero where it keeps
}

// Batched is a mix in equal batches.
type Batched struct {
	Each      q.Volume
	Left      q.Volume // over at the end, for the lines of the cup and the least batch
	ByPotLife bool     // fewer would fit the cup, and not be laid in time
	Batches   []Batch
}

// mostBatches is a number that nobody mixes for one film: a pot life that asks
// for more is wrong, or the job is.
const mostBatches = 100

// InBatches parts a mix into as few equal batches as fit the cup and are laid
// before their pot life ends, and says when to mix each: so that its stand ends
// as the batch before runs out.
func InBatches(b Batching) (Batched, error) {
	if err := b.check(); err != nil {
		return Batched{}, err
	}
	n, byLife := cups(b.Total, b.Size), 1.0
	if b.PotLife > 0 {
		byLife = math.Ceil(float64(b.Work/(b.PotLife-b.Stand)) - sliver)
	}
	out := Batched{ByPotLife: byLife > n}
	n = max(n, byLife)
	if n > mostBatches {
		return Batched{}, fmt.Errorf("it takes %.0f batches; expected at most %d: a bigger cup, or a mix that keeps longer after its stand", n, mostBatches)
	}
	each := max(b.Lines.Up(b.Total/q.Volume(n)), b.Least)
	if b.Size > 0 {
		each = min(each, b.Size)
	}
	out.Each, out.Left = each, max(0, each*q.Volume(n)-b.Total)
	out.Batches = make([]Batch, int(n))
	for i := range out.Batches {
		mixed, lasts := b.Work*q.Time(i)/q.Time(n), b.Work/q.Time(n)
		out.Batches[i] = Batch{Mix: mixed, From: mixed + b.Stand, Until: mixed + b.Stand + lasts}
		if b.PotLife > 0 {
			out.Batches[i].Dies = mixed + b.PotLife
		}
	}
	return out, nil
}

// check refuses what no batches can be made of.
func (b Batching) check() error {
	err := errors.Join(
		sound(float64(b.Total), "a volume of mix"), sound(float64(b.Size), "the size of the cup"),
		sound(float64(b.Least), "the least batch"), sound(float64(b.Work), "a time of work"),
		sound(float64(b.PotLife), "a pot life"), sound(float64(b.Stand), "a time to stand"))
	switch {
	case err != nil:
		return err
	case b.Total == 0:
		return errors.New("found nothing to mix; expected a volume above 0")
	case b.PotLife > 0 && b.Stand >= b.PotLife:
		return fmt.Errorf("found a pot life of %s, and the mix must stand for %s first; expected a pot life that outlasts the standing", b.PotLife, b.Stand)
	case b.Size > 0 && b.Least > b.Size*(1+sliver):
		return fmt.Errorf("the least batch that can be measured, %s, does not fit a cup of %s; expected a bigger cup or a finer scale", q.Show(q.Metric, b.Least), q.Show(q.Metric, b.Size))
	}
	return nil
}
