package colour

import "math"

// inner is how many unknowns a bordered system has inside its border.
const inner = Bands - 1

// border is how many rows and columns stand around: one band, three sums.
const border = 4

// column is a column inside the border.
type column [inner]float64

// bordered is a symmetric system whose middle has a diagonal of its own and -1
// beside it:
//
//	| H  W | |x|   |r|
//	| Wᵀ C | |y| = |s|
type bordered struct {
	diagonal column
	wide     [border]column
	corner   [border][border]float64
}

// solve takes r and s and returns x and y: it eliminates the middle, solves for
// the border with the Schur complement C - Wᵀ H⁻¹ W, and goes back.
func (b *bordered) solve(r *column, s [border]float64) (x column, y [border]float64) {
	pivots := factored(&b.diagonal)
	x = *r
	pivots.solve(&x)
	reduced := b.wide
	system := b.corner
	for j := range reduced {
		pivots.solve(&reduced[j])
		s[j] -= inside(&b.wide[j], &x)
		for i := range border {
			system[i][j] -= inside(&b.wide[i], &reduced[j])
		}
	}
	y = gauss(system, s)
	for i := range x {
		x[i] -= reduced[0][i]*y[0] + reduced[1][i]*y[1] + reduced[2][i]*y[2] + reduced[3][i]*y[3]
	}
	return x, y
}

// pivots are one over those of the middle, which is tridiagonal.
type pivots column

// factored eliminates below the diagonal. A pivot of almost nothing is made
// small instead: the step is then a bad one, and whoever takes it will see.
func factored(diagonal *column) *pivots {
	var p pivots
	var before float64
	for i, d := range diagonal {
		d -= before
		if math.Abs(d) < 1e-12 {
			d = 1e-12
		}
		p[i] = 1 / d
		before = p[i]
	}
	return &p
}

// solve turns a right hand side into the solution.
func (p *pivots) solve(x *column) {
	for i := 1; i < inner; i++ {
		x[i] += x[i-1] * p[i-1]
	}
	x[inner-1] *= p[inner-1]
	for i := inner - 2; i >= 0; i-- {
		x[i] = (x[i] + x[i+1]) * p[i]
	}
}

func inside(a, b *column) float64 {
	var out float64
	for i := range a {
		out += a[i] * b[i]
	}
	return out
}

// gauss solves the border's own small system, with pivoting.
func gauss(a [border][border]float64, s [border]float64) [border]float64 {
	for c := range border {
		p := c
		for r := c + 1; r < border; r++ {
			if math.Abs(a[r][c]) > math.Abs(a[p][c]) {
				p = r
			}
		}
		a[c], a[p], s[c], s[p] = a[p], a[c], s[p], s[c]
		for r := c + 1; r < border; r++ {
			f := a[r][c] / a[c][c]
			for j := c; j < border; j++ {
				a[r][j] -= f * a[c][j]
			}
			s[r] -= f * s[c]
		}
	}
	for c := border - 1; c >= 0; c-- {
		for j := c + 1; j < border; j++ {
			s[c] -= a[c][j] * s[j]
		}
		s[c] /= a[c][c]
	}
	return s
}
