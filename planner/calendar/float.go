package calendar

import "time"

// float moves each activity that may be late to its latest time, the others
// standing still, until none can go later.
func (p *placing) float() {
	var end time.Duration
	for i := range p.acts {
		end = max(end, p.end(i))
	}
	for moved := true; moved; {
		moved = false
		// From the back, so that a mix before a mix finds the room it needs.
		for i := len(p.acts) - 1; i >= 0; i-- {
			if p.acts[i].Float && p.sink(i, end) {
				moved = true
			}
		}
	}
}

// sink moves activity i to its latest time, done by end, and reports whether
// that is later than it was.
func (p *placing) sink(i int, end time.Duration) bool {
	was, work := p.at[i], p.acts[i].Work
	t := p.limit(i, end) - work
	for _, l := range p.acts[i].Lags {
		if l.Max > 0 {
			t = min(t, p.end(l.After)+l.Max)
		}
	}
	p.crew.add(p.span(i), -1)
	if work > 0 {
		t = p.crew.latest(p.hours, t, work)
	}
	p.at[i] = t
	p.crew.add(p.span(i), 1)
	return t > was
}

// limit returns when activity i must be done so as to delay none after it, nor
// the end of the plan.
func (p *placing) limit(i int, end time.Duration) time.Duration {
	for j := i + 1; j < len(p.acts); j++ {
		for _, l := range p.acts[j].Lags {
			if l.After == i {
				end = min(end, p.at[j]-l.Min)
			}
		}
	}
	return end
}
