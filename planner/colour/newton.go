package colour

import "math"

const (
	levelEnough = 1e-7 // for what is left of a gradient; slopes are about 1
	iterations  = 12   // Newton's method needs 4 to 6; beyond 12 it is lost
)

// triple is a number for each sum.
type triple [3]float64

func (t triple) within(limit float64) bool {
	return max(math.Abs(t[0]), math.Abs(t[1]), math.Abs(t[2])) <= limit
}

// point is where the search stands. Burns' z is half a logit:
// (tanh(z) + 1)/2 = 1/(1 + exp(-2z)).
type point struct {
	logits Spectrum
	forces [3]float64 // the Lagrange multipliers of the sums
}

func logistic(u float64) float64 { return 1 / (1 + math.Exp(-u)) }

func (p *point) shares() Spectrum {
	var s Spectrum
	for i, u := range p.logits {
		s[i] = logistic(u)
	}
	return s
}

// pull is that of all forces on a band.
func (p *point) pull(a *aim, band int) float64 {
	return p.forces[0]*a.weights[0][band] + p.forces[1]*a.weights[1][band] + p.forces[2]*a.weights[2][band]
}

func (p *point) moved(by *point, part float64) point {
	out := *p
	for i := range out.logits {
		out.logits[i] += part * by.logits[i]
	}
	for k := range out.forces {
		out.forces[k] += part * by.forces[k]
	}
	return out
}

// balance is how far a point is from a solution: both parts are then zero.
type balance struct {
	gradient Spectrum // of slopes and forces together, at each band
	missing  triple   // from each sum
	give     Spectrum // how much a share moves with its logit
	bend     Spectrum // how the forces bend the gradient at each band
	worth    float64  // one number to bring down
}

func (a *aim) balance(p *point) *balance {
	b := &balance{missing: triple{-a.sums[0], -a.sums[1], -a.sums[2]}}
	shares := p.shares()
	for i, s := range shares {
		pull := p.pull(a, i)
		b.give[i] = s * (1 - s)
		b.bend[i] = b.give[i] * (1 - 2*s) * pull
		b.gradient[i] = b.give[i] * pull
		if i > 0 {
			slope := p.logits[i] - p.logits[i-1]
			b.gradient[i] += slope
			b.gradient[i-1] -= slope
		}
	}
	for _, g := range b.gradient {
		b.worth += g * g
	}
	for k := range a.sums {
		b.missing[k] += sum(&a.weights[k], &shares)
		b.worth += 1e4 * b.missing[k] * b.missing[k] // a sum must be far closer than a slope
	}
	return b
}

func (b *balance) done() bool {
	for _, g := range b.gradient {
		if math.Abs(g) > levelEnough {
			return false
		}
	}
	return b.missing.within(closeEnough)
}

// newton looks for the balance of a from a point on, by Newton's method with
// steps that are halved until they do good.
func newton(p point, a *aim) (point, bool) {
	b := a.balance(&p)
	for range iterations {
		if b.done() {
			return p, true
		}
		step := a.step(b)
		for part := 1.0; ; part /= 2 {
			next := p.moved(&step, part)
			after := a.balance(&next)
			if after.worth < b.worth*(1-1e-4*part) {
				p, b = next, after
				break
			}
			if part < 1e-3 {
				return p, false
			}
		}
	}
	return p, b.done()
}

// step is Newton's: where the balance would be if it went on in a straight
// line. Slopes tie each band to its neighbours only, so that all but the last
// band is a tridiagonal system; the last band and the three sums are its
// border. Without a border it would have no solution while forces are zero.
func (a *aim) step(b *balance) point {
	const last = Bands - 1
	var m bordered
	var r column
	for i := range r {
		m.diagonal[i] = 2 + b.bend[i]
		r[i] = -b.gradient[i]
		for k := range a.weights {
			m.wide[k+1][i] = b.give[i] * a.weights[k][i]
		}
	}
	m.diagonal[0]-- // the first band has one neighbour
	m.wide[0][last-1] = -1
	m.corner[0][0] = 1 + b.bend[last]
	s := [border]float64{-b.gradient[last], -b.missing[0], -b.missing[1], -b.missing[2]}
	for k := range a.weights {
		m.corner[0][k+1] = b.give[last] * a.weights[k][last]
		m.corner[k+1][0] = m.corner[0][k+1]
	}
	x, y := m.solve(&r, s)
	out := point{forces: [3]float64{y[1], y[2], y[3]}}
	copy(out.logits[:], x[:])
	out.logits[last] = y[0]
	return out
}
