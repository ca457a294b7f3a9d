package calendar

import "time"

// placing is a schedule being made. Its times count from the Monday before the
// start.
type placing struct {
	acts  []Activity
	hours Hours
	crew  crew
	order []int           // the activities in the order in which they are placed
	at    []time.Duration // start of each activity that is placed
	from  []time.Duration // each activity starts no earlier
	// early marks what was put earlier in the order, and is left there.
	early []bool
	// shortest is the shortest wait seen on each maximum lag that was not met,
	// by the index of the activity and of its lag.
	shortest map[[2]int]time.Duration
}

func newPlacing(acts []Activity, shop Shop, start time.Duration) *placing {
	p := &placing{
		acts:     acts,
		hours:    shop.Hours,
		crew:     crew{size: shop.Painters},
		order:    make([]int, len(acts)),
		at:       make([]time.Duration, len(acts)),
		from:     make([]time.Duration, len(acts)),
		early:    make([]bool, len(acts)),
		shortest: map[[2]int]time.Duration{},
	}
	for i := range acts {
		p.order[i] = i
		p.from[i] = start
	}
	return p
}

// all places every activity, and repairs the order and the starts until every
// maximum lag is met.
func (p *placing) all() error {
	repairs := 0
	for n := 0; n < len(p.order); {
		i := p.order[n]
		p.place(i)
		k := p.late(i)
		if k < 0 {
			n++
			continue
		}
		p.note(i, k)
		switch repairs++; {
		case repairs == manyRepairs:
			if err := hopeless(p.acts, p.hours); err != nil {
				return err
			}
		case repairs > maxRepairs:
			return p.windowError(p.tightest(i, k))
		}
		n = p.repair(n, p.acts[i].Lags[k])
		p.takeBack(n)
	}
	return nil
}

// place puts activity i at its earliest time, beside those already placed.
func (p *placing) place(i int) {
	t, work := p.ready(i), p.acts[i].Work
	if work > 0 {
		t = p.crew.earliest(p.hours, t, work)
	}
	p.at[i] = t
	p.crew.add(p.span(i), 1)
}

// ready returns when activity i could start for what comes before it.
func (p *placing) ready(i int) time.Duration {
	t := p.from[i]
	for _, l := range p.acts[i].Lags {
		t = max(t, p.end(l.After)+l.Min)
	}
	return t
}

func (p *placing) end(i int) time.Duration { return p.at[i] + p.acts[i].Work }

func (p *placing) span(i int) span { return span{p.at[i], p.end(i)} }
