package colour

import (
	"math"

	"coatwright/planner/trace"
)

// DifferenceFormula is how far two colours are apart.
var DifferenceFormula = trace.Formula{
	Text:   "ΔE00 = √((ΔL'/SL)² + (ΔC'/SC)² + (ΔH'/SH)² + RT (ΔC'/SC)(ΔH'/SH))",
	Source: "Sharma, Wu & Dalal, The CIEDE2000 color-difference formula, Color Research and Application 30 (2005) 21-30",
	Note:   "background/how-colour-is-measured",
}

// DeltaE is a difference of two colours in units of CIEDE2000.
type DeltaE float64

const (
	// JustVisible is the least difference that an eye sees on two faces side by
	// side. Common practice; 0.8 was what half of 175 observers saw of ceramic
	// discs (Paravina et al., Color difference thresholds in dentistry, 2015).
	JustVisible DeltaE = 1.0

	// PlainlyVisible is what most people see. Mahy, Van Eycken & Oosterlinck
	// (Color Research and Application 19 (1994) 105-121, pages from memory)
	// found 2.3 units of CIELAB to be just noticeable; half of 13 observers
	// accepted up to 2.25 units of CIEDE2000 (Ghinea et al., Journal of
	// Dentistry 38s (2010) e57-e64).
	PlainlyVisible DeltaE = 2.3
)

// Difference returns the CIEDE2000 difference of a and b, with kL, kC and kH of
// 1. The equations are numbered as in Sharma, Wu & Dalal (2005).
func Difference(a, b Lab) DeltaE {
	c7 := pow7((a.Chroma() + b.Chroma()) / 2)
	g := 0.5 * (1 - math.Sqrt(c7/(c7+pow7(25)))) // (4)
	a, b = Lab{a.L, (1 + g) * a.A, a.B}, Lab{b.L, (1 + g) * b.A, b.B}
	c1, c2 := a.Chroma(), b.Chroma()
	h1, h2 := a.Hue(), b.Hue()

	dL, dC := b.L-a.L, c2-c1                                 // (8), (9)
	dH := 2 * math.Sqrt(c1*c2) * sine(turn(h1, h2, c1*c2)/2) // (10), (11)
	l, c, h := (a.L+b.L)/2, (c1+c2)/2, meanHue(h1, h2, c1*c2)

	t := 1 - 0.17*cosine(h-30) + 0.24*cosine(2*h) + 0.32*cosine(3*h+6) - 0.20*cosine(4*h-63) // (15)
	sL := 1 + 0.015*(l-50)*(l-50)/math.Sqrt(20+(l-50)*(l-50))                                // (18)
	sC, sH := 1+0.045*c, 1+0.015*c*t                                                         // (19), (20)
	turned := 30 * math.Exp(-(h-275)/25*(h-275)/25)                                          // (16)
	c7 = pow7(c)
	rT := -sine(2*turned) * 2 * math.Sqrt(c7/(c7+pow7(25))) // (17), (21)

	dL, dC, dH = dL/sL, dC/sC, dH/sH
	return DeltaE(math.Sqrt(max(0, dL*dL+dC*dC+dH*dH+rT*dC*dH))) // (22)
}

// turn is the difference of two hues the short way round, none where one of
// the colours is grey. (10)
func turn(h1, h2, chromas float64) float64 {
	switch d := h2 - h1; {
	case chromas == 0:
		return 0
	case d > 180:
		return d - 360
	case d < -180:
		return d + 360
	default:
		return d
	}
}

// meanHue is the hue halfway between two, the other's where one is grey. (14)
func meanHue(h1, h2, chromas float64) float64 {
	switch sum := h1 + h2; {
	case chromas == 0:
		return sum
	case math.Abs(h1-h2) <= 180:
		return sum / 2
	case sum < 360:
		return (sum + 360) / 2
	default:
		return (sum - 360) / 2
	}
}

func pow7(x float64) float64 {
	cubed := x * x * x
	return cubed * cubed * x
}

func sine(degrees float64) float64   { return math.Sin(degrees * math.Pi / 180) }
func cosine(degrees float64) float64 { return math.Cos(degrees * math.Pi / 180) }
