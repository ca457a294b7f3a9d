// Package quantity reads and shows numbers with units.
//
// A quantity is held in SI (kelvin, metre, kilogram, second) from the moment
// it is read; a unit exists only at the edges, in Parse and in the methods
// that show a value. Only what is shown is rounded.
package quantity

import (
	"fmt"
	"math"
	"time"

	"coatwright/nearest"
)

// Quantities in SI. Each is a float64 so that formulas read as printed.
type (
	Length        float64 // m
	Area          float64 // m2
	Volume        float64 // m3
	Mass          float64 // kg
	Time          float64 // s
	Temperature   float64 // K
	Pressure      float64 // Pa
	Speed         float64 // m/s
	Density       float64 // kg/m3
	Concentration float64 // kg/m3, the same number in g/L: solvent in a paint, vapour in air
	Fraction      float64 // 1; "35 %" is 0.35
	Spread        float64 // m2 of surface per m3 of liquid
	Flow          float64 // m3/s of liquid
	AirFlow       float64 // m3/s of air at the pressure of the room
	TimePerArea   float64 // s/m2
	SurfaceEnergy float64 // J/m2
	Gloss         float64 // gloss units at 60 degrees
	Grit          float64 // P-grade number of FEPA 43 / ISO 6344
	Difference    float64 // K between two temperatures
	Viscosity     float64 // m2/s, kinematic
	MolarEnergy   float64 // J/mol
	VapourYield   float64 // m3 of vapour from a m3 of liquid
	PerArea       float64 // pieces per m2
	Number        float64 // a count or a ratio
)

// Quantity is any of the types above.
type Quantity interface {
	~float64
	dimension() *dimension
}

func (Length) dimension() *dimension        { return length }
func (Area) dimension() *dimension          { return area }
func (Volume) dimension() *dimension        { return volume }
func (Mass) dimension() *dimension          { return mass }
func (Time) dimension() *dimension          { return duration }
func (Temperature) dimension() *dimension   { return temperature }
func (Pressure) dimension() *dimension      { return pressure }
func (Speed) dimension() *dimension         { return speed }
func (Density) dimension() *dimension       { return density }
func (Fraction) dimension() *dimension      { return fraction }
func (Spread) dimension() *dimension        { return spread }
func (Flow) dimension() *dimension          { return flow }
func (TimePerArea) dimension() *dimension   { return timePerArea }
func (SurfaceEnergy) dimension() *dimension { return surfaceEnergy }
func (Gloss) dimension() *dimension         { return gloss }
func (Grit) dimension() *dimension          { return grit }
func (Concentration) dimension() *dimension { return concentration }
func (AirFlow) dimension() *dimension       { return airFlow }
func (Difference) dimension() *dimension    { return difference }
func (Viscosity) dimension() *dimension     { return viscosity }
func (MolarEnergy) dimension() *dimension   { return molarEnergy }
func (VapourYield) dimension() *dimension   { return vapourYield }
func (PerArea) dimension() *dimension       { return perArea }
func (Number) dimension() *dimension        { return number }

// Millimetres returns l in mm.
func (l Length) Millimetres() float64 { return float64(l) * 1e3 }

// Micrometres returns l in um.
func (l Length) Micrometres() float64 { return float64(l) * 1e6 }

// Litres returns v in L.
func (v Volume) Litres() float64 { return float64(v) * 1e3 }

// Millilitres returns v in mL.
func (v Volume) Millilitres() float64 { return float64(v) * 1e6 }

// Grams returns m in g.
func (m Mass) Grams() float64 { return float64(m) * 1e3 }

// Minutes returns t in minutes.
func (t Time) Minutes() float64 { return float64(t) / 60 }

// String says t as a painter would: "33 s", "45 min", "2 h 20 min", "3 d 5 h".
func (t Time) String() string {
	if text := beyond(float64(t)); text != "" {
		return text
	}
	s := int(math.Round(float64(t)))
	switch m := int(math.Round(t.Minutes())); {
	case s < 120 && s%60 != 0:
		return fmt.Sprintf("%d s", s)
	case m < 60:
		return fmt.Sprintf("%d min", m)
	case m < 48*60 && m%60 == 0:
		return fmt.Sprintf("%d h", m/60)
	case m < 48*60:
		return fmt.Sprintf("%d h %d min", m/60, m%60)
	case m%(24*60) < 60:
		return fmt.Sprintf("%d d", m/(24*60))
	default:
		return fmt.Sprintf("%d d %d h", m/(24*60), m%(24*60)/60)
	}
}

// Duration returns t as a time.Duration, to the nearest second, and the
// longest Duration when t is too long for one.
func (t Time) Duration() time.Duration {
	if float64(t) >= math.MaxInt64/1e9 {
		return math.MaxInt64
	}
	return time.Duration(math.Round(float64(t))) * time.Second
}

// Celsius returns t in degrees Celsius.
func (t Temperature) Celsius() float64 { return float64(t) - 273.15 }

// Celsius makes a Temperature of degrees Celsius.
func Celsius(c float64) Temperature { return Temperature(c + 273.15) }

// Kilopascals returns p in kPa.
func (p Pressure) Kilopascals() float64 { return float64(p) / 1e3 }

// Percent returns f in percent.
func (f Fraction) Percent() float64 { return float64(f) * 100 }

// Range is a closed interval of quantities.
type Range[Q Quantity] struct{ Low, High Q }

// Middle returns the centre of r.
func (r Range[Q]) Middle() Q { return (r.Low + r.High) / 2 }

// Holds reports whether q lies in r.
func (r Range[Q]) Holds(q Q) bool { return q >= r.Low && q <= r.High }

// Meets returns what r and s have in common, and whether that is anything.
func (r Range[Q]) Meets(s Range[Q]) (Range[Q], bool) {
	m := Range[Q]{max(r.Low, s.Low), min(r.High, s.High)}
	return m, m.Low <= m.High
}

// IsZero reports whether r is the zero range, which stands for "not given".
func (r Range[Q]) IsZero() bool { return r == Range[Q]{} }

// Error says why a text is not a quantity.
type Error struct{ Found, Expected, Nearest string }

func (e *Error) Error() string {
	return fmt.Sprintf("found %q, expected %s%s", e.Found, e.Expected, nearest.Hint(e.Nearest))
}
