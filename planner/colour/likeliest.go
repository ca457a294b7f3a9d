package colour

import "math"

// likeliest returns the spectrum of the greatest entropy that has the sums of
// a, and 1. It is less smooth than the smoothest, but found wherever a spectrum
// exists (save where nearly every share must be 0 or 1), as the problem is
// convex and has three unknowns.
//
// Where none exists, it returns that for sums which lie a part (0 to 1) of the
// way to them from the even spectrum, just short of the last ones that have any.
func likeliest(a *aim, even float64) (p point, part float64) {
	part = 1
	for range attempts {
		logits, limit, ok := a.towards(even, part).mix(even)
		if ok {
			return point{logits: logits}, part
		}
		part *= 0.99 * limit
	}
	return point{logits: flat(math.Log(even / (1 - even)))}, 0
}

// mix looks for the logits, which are a mixture of the weights: by Newton's
// method, with steps that are halved until they do good. When it finds that
// there are none, it returns a part of the way from the even spectrum beyond
// which there are none; when it finds nothing, a part that is worth a try.
func (a *aim) mix(even float64) (logits Spectrum, limit float64, ok bool) {
	const rounds = 100 // it needs 5 to 10, and more the nearer the shares come to 0 and 1
	const worthATry = 0.9
	m := a.mixture([3]float64{})
	for range rounds {
		if m.missing.within(closeEnough) {
			return m.logits, 1, true
		}
		if limit := m.limit(a, even); limit < 1 {
			return m.logits, limit, false
		}
		next := m.better(a)
		if next == nil {
			break
		}
		m = next
	}
	return m.logits, worthATry, false
}

// mixture is some of each weight, and how far its shares are from the sums.
type mixture struct {
	parts   [3]float64
	logits  Spectrum
	give    Spectrum // how much a share moves with its logit
	missing triple   // from each sum; it is the gradient of worth
	worth   float64  // Σ ln(1 + exp(u)) - Σ part × sum: least where nothing is missing
}

func (a *aim) mixture(parts [3]float64) *mixture {
	m := &mixture{parts: parts}
	for i := range m.logits {
		u := parts[0]*a.weights[0][i] + parts[1]*a.weights[1][i] + parts[2]*a.weights[2][i]
		share := logistic(u)
		m.logits[i], m.give[i] = u, share*(1-share)
		m.worth += max(u, 0) + math.Log1p(math.Exp(-math.Abs(u))) // ln(1 + exp(u)), of any u
		for k := range m.missing {
			m.missing[k] += a.weights[k][i] * share
		}
	}
	for k := range m.missing {
		m.missing[k] -= a.sums[k]
		m.worth -= parts[k] * a.sums[k]
	}
	return m
}

// better is one step on, nil where no step does good.
func (m *mixture) better(a *aim) *mixture {
	step := m.step(a)
	slope := step[0]*m.missing[0] + step[1]*m.missing[1] + step[2]*m.missing[2]
	rounding := 1e-9 * (1 + math.Abs(m.worth)) // below it, a change of worth means nothing
	for part := 1.0; part > 1e-6; part /= 2 {
		next := a.mixture([3]float64{m.parts[0] + part*step[0], m.parts[1] + part*step[1], m.parts[2] + part*step[2]})
		if -slope < rounding || next.worth <= m.worth+1e-4*part*slope {
			return next
		}
	}
	return nil
}

// step is Newton's.
func (m *mixture) step(a *aim) [3]float64 {
	var curve matrix
	for i, g := range m.give {
		for j := range curve {
			for k := range curve {
				curve[j][k] += g * a.weights[j][i] * a.weights[k][i]
			}
		}
	}
	trace := curve[0][0] + curve[1][1] + curve[2][2]
	for j := range curve {
		curve[j][j] += 1e-13 * trace // keeps it from being singular where all shares are 0 or 1
	}
	back := curve.inverse()
	s := back.times(m.missing)
	return [3]float64{-s[0], -s[1], -s[2]}
}

// limit is a part of the way from the even spectrum beyond which no spectrum
// lies, and infinite where m cannot tell. No spectrum goes further across the
// plane of m than the one that is 1 wherever m pushes up and 0 elsewhere.
func (m *mixture) limit(a *aim, even float64) float64 {
	var furthest, start, end, size float64
	for _, u := range m.logits {
		furthest += max(u, 0)
		start += even * u
	}
	for k, part := range m.parts {
		end += part * a.sums[k]
		size += math.Abs(part)
	}
	if end <= furthest+closeEnough*size {
		return math.Inf(1)
	}
	return (furthest - start) / (end - start)
}
