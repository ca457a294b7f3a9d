package route

import (
	"slices"

	q "coatwright/quantity"
)

// film is a coating that may come to lie uppermost, with what is asked of it
// again and again during the search.
type film struct {
	Coating
	rank    int // of its role
	prep    bool
	local   bool
	lags    []q.Time // by dryness state; noLag where it never gets there
	recoat  []q.Time // by the required film that is next; noLag where the window cannot be used
	closes  q.Time
	exposes traits
}

// noLag stands for a dryness state that is never reached.
const noLag = q.Time(-1)

// tabulate makes the table of films and points the ops at it.
func (c *compiled) tabulate() {
	for i := range c.ops {
		f := c.ops[i].film
		if f.IsZero() {
			continue
		}
		at := slices.IndexFunc(c.films, func(o film) bool { return o.Coating == f })
		if at < 0 {
			at = len(c.films)
			c.films = append(c.films, c.film(f))
		}
		c.ops[i].top = int16(at + 1)
	}
}

func (c *compiled) film(k Coating) film {
	f := film{Coating: k, rank: c.ranks[k.Role], prep: c.prep(k.Role), local: c.local(k.Role), closes: c.Closes(k.Material), exposes: c.traitSet(k.Traits)}
	for _, d := range c.Library.Words.Dryness {
		lag, ok := c.Lag(k, d.Name)
		if !ok {
			lag = noLag
		}
		f.lags = append(f.lags, lag)
	}
	for next := range len(c.Films) + 1 {
		lag, ok := c.Lag(k, recoat)
		if !ok || c.Shut[Window{k.Slug, next}] {
			lag = noLag
		}
		f.recoat = append(f.recoat, lag)
	}
	return f
}

func (c *compiled) prep(role string) bool  { return c.Library.Words.Role(role).Prep }
func (c *compiled) local(role string) bool { return c.Library.Words.Role(role).Local }
