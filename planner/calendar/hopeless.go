package calendar

import (
	"slices"
	"time"
)

// Samples are how far apart the starts are that a chain is tried from: roughly
// first, and finely where that leaves it open.
const (
	rough = 30 * time.Minute
	fine  = 5 * time.Minute
)

// chain is a maximum lag, the k-th of activity act, and the least that what must
// be done in between takes, even with painters enough for all.
type chain struct {
	act, k int
	lag    Lag
	best   time.Duration
}

// chains are those of every maximum lag that has something in between.
func chains(acts []Activity, hours Hours) []chain {
	var out []chain
	for i, a := range acts {
		for k, l := range a.Lags {
			if l.Max == 0 {
				continue
			}
			if between := between(acts, l.After, i); len(between) > 0 {
				best := shortestChain(acts, hours, l.After, between, i, rough)
				if best > l.Max && best <= l.Max+rough {
					best = shortestChain(acts, hours, l.After, between, i, fine)
				}
				out = append(out, chain{i, k, l, best})
			}
		}
	}
	return out
}

// hopeless finds the first maximum lag that what must be done in between makes
// impossible: a *WindowError, nil when there is none.
func hopeless(acts []Activity, hours Hours) error {
	for _, c := range chains(acts, hours) {
		if c.best > c.lag.Max+fine {
			return c.err(acts)
		}
	}
	return nil
}

func (c chain) err(acts []Activity) error {
	return &WindowError{ID: acts[c.act].ID, After: acts[c.lag.After].ID, Min: c.lag.Min, Max: c.lag.Max, Best: c.best}
}

// between returns the activities that wait for from and that to waits for.
func between(acts []Activity, from, to int) []int {
	leads := make([]bool, to+1) // to waits for it
	leads[to] = true
	for j := to; j > from; j-- {
		if leads[j] {
			for _, l := range acts[j].Lags {
				leads[l.After] = true
			}
		}
	}
	follows := make([]bool, to+1) // it waits for from
	follows[from] = true
	var out []int
	for j := from + 1; j < to; j++ {
		for _, l := range acts[j].Lags {
			follows[j] = follows[j] || follows[l.After]
		}
		if follows[j] && leads[j] {
			out = append(out, j)
		}
	}
	return out
}

// shortestChain returns the shortest time from the end of one activity to the
// start of another that the work and the waits between them allow.
func shortestChain(acts []Activity, hours Hours, from int, between []int, to int, sample time.Duration) time.Duration {
	chain := append(append([]int{from}, between...), to)
	lags := make([][]Lag, len(chain)) // by place in the chain, After too
	for n, j := range chain {
		for _, l := range acts[j].Lags {
			if at := slices.Index(chain[:n], l.After); at >= 0 {
				lags[n] = append(lags[n], Lag{After: at, Min: l.Min})
			}
		}
	}
	ends := make([]time.Duration, len(chain))
	best := forever
	try := func(at time.Duration) {
		ends[0] = at + acts[from].Work
		start := at
		for n := 1; n < len(chain); n++ {
			start = 0
			for _, l := range lags[n] {
				start = max(start, ends[l.After]+l.Min)
			}
			start = hours.next(start, acts[chain[n]].Work)
			ends[n] = start + acts[chain[n]].Work
		}
		best = min(best, start-ends[0])
	}
	if hours.always() {
		try(0)
		return best
	}
	for _, s := range hours.spans {
		for at := s.from; at+acts[from].Work <= s.to; at += sample {
			try(at)
		}
		if last := s.to - acts[from].Work; last >= s.from {
			try(last)
		}
	}
	return best
}
