package area

import "math"

// aroundEllipse is the perimeter of an ellipse of semi-axes a and b, in m.
// Source: Gauss, as in Almkvist and Berndt, American Mathematical Monthly 95
// (1988) 585-608: 2 π/M(a, b) · (a² - Σ 2ⁿ⁻¹ cₙ²), M the arithmetic-geometric
// mean, c₀² = a² - b², cₙ₊₁ = (aₙ - bₙ)/2. Each step doubles the digits.
func aroundEllipse(a, b float64) float64 {
	sum, weight := a*a-(a*a-b*b)/2, 0.5
	for range 60 { // 5 steps do for any ellipse; a sliver takes a few more
		c := (a - b) / 2
		a, b = (a+b)/2, math.Sqrt(a*b)
		weight *= 2
		sum -= weight * c * c
		if math.Abs(c) <= 1e-9*a {
			break
		}
	}
	return 2 * math.Pi / a * sum
}

// integral of f from low to high by Simpson's rule over n pairs of strips.
func integral(f func(x float64) float64, low, high float64, n int) float64 {
	h := (high - low) / float64(2*n)
	sum := f(low) + f(high)
	for i := 1; i < 2*n; i++ {
		sum += float64(2+2*(i%2)) * f(low+float64(i)*h)
	}
	return sum * h / 3
}
