package calendar

import "slices"

// maxRepairs bounds how often a plan is changed to meet its maximum lags. Plans
// need a handful; one that cannot be met would go on for ever.
const maxRepairs = 400

// manyRepairs is when it is time to ask whether a lag can be met at all.
const manyRepairs = 20

// late returns the index of the first maximum lag for which activity i starts
// too late, -1 when there is none.
func (p *placing) late(i int) int {
	return slices.IndexFunc(p.acts[i].Lags, func(l Lag) bool {
		return l.Max > 0 && p.at[i]-p.end(l.After) > l.Max
	})
}

// repair changes what made the activity at place n of the order late, and
// returns the place from which to go on.
func (p *placing) repair(n int, late Lag) int {
	i := p.order[n]
	first := p.afterItsLast(i)
	alone := p.hours.next(p.ready(i), p.acts[i].Work)
	if first < n && !p.early[i] && alone-p.end(late.After) <= late.Max {
		// Only the painters are busy, with what could wait: i goes first.
		p.early[i] = true
		p.order = slices.Insert(slices.Delete(p.order, n, n+1), first, i)
		return first
	}
	// The one before comes so late that i could stay where it is.
	p.from[late.After] = p.at[i] - late.Max - p.acts[late.After].Work
	return slices.Index(p.order, late.After)
}

// afterItsLast returns the first place in the order at which all that activity
// i waits for has been placed.
func (p *placing) afterItsLast(i int) int {
	first := 0
	for _, l := range p.acts[i].Lags {
		first = max(first, slices.Index(p.order, l.After)+1)
	}
	return first
}

// takeBack leaves only the first n activities of the order placed.
func (p *placing) takeBack(n int) {
	p.crew.steps = p.crew.steps[:0]
	for _, i := range p.order[:n] {
		p.crew.add(p.span(i), 1)
	}
}

// note keeps the shortest wait seen on lag k of activity i, which is not met.
func (p *placing) note(i, k int) {
	key, wait := [2]int{i, k}, p.at[i]-p.end(p.acts[i].Lags[k].After)
	if seen, ok := p.shortest[key]; !ok || wait < seen {
		p.shortest[key] = wait
	}
}

// tightest returns, of the maximum lags that were missed on the way, the one with
// the least to spare, as a share of it: where repairs come to no end, it is the
// likeliest reason. It is lag k of activity i where none stands out.
func (p *placing) tightest(i, k int) (int, int) {
	least := 0.5
	for _, c := range chains(p.acts, p.hours) {
		_, missed := p.shortest[[2]int{c.act, c.k}]
		if taken := float64(c.best) / float64(c.lag.Max); missed && taken > least {
			least, i, k = taken, c.act, c.k
		}
	}
	return i, k
}

func (p *placing) windowError(i, k int) error {
	l := p.acts[i].Lags[k]
	return &WindowError{
		ID: p.acts[i].ID, After: p.acts[l.After].ID,
		Min: l.Min, Max: l.Max, Best: p.shortest[[2]int{i, k}],
	}
}
