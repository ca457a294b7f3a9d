package mix

import (
	"errors"
	"fmt"
	"slices"

	q "coatwright/quantity"
)

// link ties a part to another: how many volumes of it go with one volume of the
// other, at least, as chosen and at most.
type link struct {
	to             int // -1 for the part that all others hang on
	low, mid, high float64
}

// chain is how the parts of a recipe hang together: every part but one on
// another. order lists a part after the one that it hangs on.
type chain struct {
	links []link
	order []int
}

// chainOf ties shares to their parts, and the parts in parts to the first of
// them, which may be off by a share of slack. A share may lie in its Range.
func chainOf(parts []Part, slack q.Fraction) (chain, error) {
	if !(slack >= 0 && slack < 1) {
		return chain{}, fmt.Errorf("found %g %% as what a ratio may be off; expected a share from 0 %% to below 100 %%", slack.Percent())
	}
	shares, err := Shares(parts)
	if err != nil {
		return chain{}, err
	}
	root := slices.IndexFunc(parts, func(p Part) bool { return p.Of == "" && p.Parts > 0 })
	c := chain{links: make([]link, len(parts))}
	for i, p := range parts {
		if i == root {
			c.links[i] = link{to: -1}
			continue
		}
		if p.Of == "" {
			mid := float64(shares[i] / shares[root])
			c.links[i] = link{root, mid * (1 - float64(slack)), mid, mid * (1 + float64(slack))}
			continue
		}
		if c.links[i], err = shareLink(p, parts[place(parts, p.Of)]); err != nil {
			return chain{}, wrong(i, p, err)
		}
		c.links[i].to = place(parts, p.Of)
	}
	for i := range parts {
		c.list(i)
	}
	return c, nil
}

// shareLink is the link of p to the part that it is a share of.
func shareLink(p, of Part) (link, error) {
	r, perMass := p.Range, 1.0
	if r.IsZero() {
		r = q.Range[q.Fraction]{Low: p.Share, High: p.Share}
	}
	if !r.Holds(p.Share) {
		return link{}, errors.New(outside(p))
	}
	if p.ByMass {
		var err error
		if perMass, err = byVolume(p.Density, of.Density); err != nil {
			return link{}, err
		}
	}
	return link{low: float64(r.Low) * perMass, mid: float64(p.Share) * perMass, high: float64(r.High) * perMass}, nil
}

// list puts part i into the order, after the part that it hangs on.
func (c *chain) list(i int) {
	if slices.Contains(c.order, i) {
		return
	}
	if to := c.links[i].to; to >= 0 {
		c.list(to)
	}
	c.order = append(c.order, i)
}

// exact is c with no room in any link.
func (c chain) exact() chain {
	out := chain{make([]link, len(c.links)), c.order}
	for i, l := range c.links {
		out.links[i] = link{l.to, l.mid, l.mid, l.mid}
	}
	return out
}

// settled is c for what is in the cup: what is not yet poured goes in as chosen.
func (c chain) settled(poured []float64) chain {
	out := chain{slices.Clone(c.links), c.order}
	for i, l := range out.links {
		if l.to >= 0 && (poured[i] == 0 || poured[l.to] == 0) {
			out.links[i] = link{l.to, l.mid, l.mid, l.mid}
		}
	}
	return out
}

// fill returns the least amounts that are no less than poured and keep every
// link; +Inf where a link allows none of what was poured.
//
// Each part is first raised to what those that hang on it ask for, then those to
// what it asks for. Neither can be less, and as low <= high the second way down
// asks for nothing more on the way up. So each amount is the least possible, and
// with it the total.
func (c chain) fill(poured []float64) []float64 {
	need := slices.Clone(poured)
	for _, i := range slices.Backward(c.order) {
		if l := c.links[i]; l.to >= 0 && need[i] > 0 {
			need[l.to] = max(need[l.to], need[i]/l.high)
		}
	}
	for _, i := range c.order {
		if l := c.links[i]; l.to >= 0 && l.low > 0 {
			need[i] = max(need[i], need[l.to]*l.low)
		}
	}
	return need
}
