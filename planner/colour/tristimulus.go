package colour

import (
	"math"

	"coatwright/planner/trace"
)

// XYZFormula is how a spectrum becomes a colour.
var XYZFormula = trace.Formula{
	Text:   "X = k Σ R(λ) S(λ) x̄(λ) Δλ, Y and Z alike; k = 100 / Σ S(λ) ȳ(λ) Δλ",
	Source: "CIE 15:2004, Colorimetry; CIE 1931 observer (2°), illuminant D65",
	Note:   "background/how-colour-is-measured",
}

// LabFormula is how a colour is placed by lightness and hue.
var LabFormula = trace.Formula{
	Text:   "L* = 116 f(Y/Yn) - 16; a* = 500 (f(X/Xn) - f(Y/Yn)); b* = 200 (f(Y/Yn) - f(Z/Zn)); f(t) = t^(1/3), below (24/116)³ (841/108) t + 16/116",
	Source: "CIE 15:2004, Colorimetry",
	Note:   "background/how-colour-is-measured",
}

// XYZ is a colour as the CIE's tristimulus values: what reflects everything has
// a Y of 100.
type XYZ struct{ X, Y, Z float64 }

// Lab is a colour in CIELAB: lightness 0 to 100, A from green to red, B from
// blue to yellow, against the white of D65.
type Lab struct{ L, A, B float64 }

// White is what reflects everything, in daylight: X 95.043, Y 100, Z 108.880.
func White() XYZ { return observer().white }

// XYZ returns the colour of a reflectance.
func (s Spectrum) XYZ() XYZ { return observer().see(s) }

// sums are X, Y and Z in their order.
func (c XYZ) sums() [3]float64 { return [3]float64{c.X, c.Y, c.Z} }

// Lab returns c in CIELAB.
func (c XYZ) Lab() Lab {
	white := observer().white
	x, y, z := cubeRoot(c.X/white.X), cubeRoot(c.Y/white.Y), cubeRoot(c.Z/white.Z)
	return Lab{116*y - 16, 500 * (x - y), 200 * (y - z)}
}

// XYZ is the way back from CIELAB.
func (c Lab) XYZ() XYZ {
	white := observer().white
	y := (c.L + 16) / 116
	return XYZ{white.X * cube(y+c.A/500), white.Y * cube(y), white.Z * cube(y-c.B/200)}
}

// Chroma is how far c is from grey.
func (c Lab) Chroma() float64 { return math.Hypot(c.A, c.B) }

// Hue is the angle of c from red towards yellow, in degrees, 0 or
// more and less than 360.
func (c Lab) Hue() float64 {
	return math.Mod(math.Atan2(c.B, c.A)*180/math.Pi+360, 360)
}

// knee is where CIELAB goes from a straight line to a cube root; CIE 15:2004.
const knee = 24.0 / 116

func cubeRoot(t float64) float64 {
	if t > knee*knee*knee {
		return math.Cbrt(t)
	}
	return 841.0/108*t + 16.0/116
}

func cube(f float64) float64 {
	if f > knee {
		return f * f * f
	}
	return 108.0 / 841 * (f - 16.0/116)
}
