package air

import (
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// The Magnus formula (17.62, 243.12 C; WMO guide, from memory) is a second way
// to the dew point.
func TestDewPointAgreesWithMagnus(t *testing.T) {
	for _, c := range []struct{ celsius, percent, want float64 }{
		{23, 50, 12.01}, {20, 85, 17.40}, {25, 60, 16.69}, {30, 70, 23.93},
	} {
		a := Air{Temperature: q.Celsius(c.celsius), Humidity: q.Fraction(c.percent / 100)}
		near(t, "dew point", a.DewPoint().Celsius(), c.want, 0.1)
	}
}

// Carrier's equation worked independently with vapour pressures by Magnus,
// which are 0.3 % below ours: water at 27 C, air at 28 C and 60 %.
func TestEvaporationOfWarmWater(t *testing.T) {
	const gramsPerHour = 1e3 * 3600
	for _, c := range []struct{ speed, want float64 }{ // m/s, g/(m2 h)
		{0, 170.2}, {0.1, 185.1}, {0.5, 244.9},
	} {
		a := Air{Temperature: q.Celsius(28), Humidity: 0.6, Speed: q.Speed(c.speed)}
		near(t, "evaporation", gramsPerHour*a.EvaporationFrom(q.Celsius(27)), c.want, 0.005*c.want)
	}
}

// A second equation for free water, g = (25 + 19 v)(xs - x) in kg/(m2 h)
// (engineeringtoolbox.com, evaporation from water surfaces), gives up to a
// quarter more in workshop air: two published equations are no nearer than that.
func TestEvaporationAgainstSecondEquation(t *testing.T) {
	for _, c := range []struct{ surface, celsius, percent, speed float64 }{
		{25, 25, 50, 0.5}, {27, 28, 60, 0.1}, {20, 23, 50, 1}, {16, 23, 50, 3},
	} {
		a := Air{Temperature: q.Celsius(c.celsius), Humidity: q.Fraction(c.percent / 100), Speed: q.Speed(c.speed)}
		full := Air{Temperature: q.Celsius(c.surface), Humidity: 1}
		want := (25 + 19*c.speed) * (full.HumidityRatio() - a.HumidityRatio()) / 3600
		near(t, "evaporation by the two equations", a.EvaporationFrom(full.Temperature)/want, 0.9, 0.15)
	}
}

// On a surface below the dew point water settles, and at the dew point nothing
// moves.
func TestWaterSettlesBelowDewPoint(t *testing.T) {
	a := Air{Temperature: q.Celsius(20), Humidity: 0.7, Speed: 0.2}
	if got := a.EvaporationFrom(a.DewPoint() - 1); got >= 0 {
		t.Errorf("EvaporationFrom 1 K below the dew point = %g, want below 0", got)
	}
	near(t, "EvaporationFrom the dew point", a.EvaporationFrom(a.DewPoint()), 0, 1e-12)
}

// The SI bracket against the published inch-pound one: W in lb/(h ft2), v in
// ft/min, p in inHg, Y in Btu/lb (ASHRAE Transactions 104(1A), 1998).
func TestMassTransferAgreesWithInchPounds(t *testing.T) {
	const (
		poundsPerHourFoot2 = 0.45359237 / 3600 / (0.3048 * 0.3048) // kg/(m2 s)
		btuPerPound        = 2326.0                                // J/kg
		inchOfMercury      = 3386.389                              // Pa
		footPerMinute      = 0.3048 / 60                           // m/s
	)
	for _, v := range []float64{0, 0.1, 1, 3} {
		want := (95 + 0.425*v/footPerMinute) * poundsPerHourFoot2 * btuPerPound / inchOfMercury
		near(t, "MassTransfer", MassTransfer(q.Speed(v)), want, 0.006*want)
	}
}

// The SI bracket against a metric one, W = (42.6 + 37.6 v)(pw - pa)/Y in
// kg/(m2 h), mmHg and kJ/kg (physicsforums.com/threads/242677).
func TestMassTransferAgreesWithMillimetresOfMercury(t *testing.T) {
	const millimetreOfMercury = 133.322 // Pa
	for _, v := range []float64{0, 0.1, 1, 3} {
		want := (42.6 + 37.6*v) * 1e3 / 3600 / millimetreOfMercury
		near(t, "MassTransfer", MassTransfer(q.Speed(v)), want, 0.004*want)
	}
}

// A small fan dries three to four times faster than a still room: common
// practice, no published source.
func TestFanAgainstStillRoom(t *testing.T) {
	still := Air{Temperature: q.Celsius(23), Humidity: 0.5, Speed: 0.1}
	moving := still
	moving.Speed = 3
	if r := moving.Evaporation() / still.Evaporation(); r < 3 || r > 4 {
		t.Errorf("3 m/s dries %.2f times as fast as 0.1 m/s, want 3 to 4", r)
	}
}

func TestSaturatedAirTakesNothing(t *testing.T) {
	for _, humidity := range []q.Fraction{1, 1.05} {
		a := Air{Temperature: q.Celsius(23), Humidity: humidity, Speed: 1}
		if got := a.Evaporation(); got != 0 {
			t.Errorf("Evaporation at humidity %v = %g, want 0", humidity, got)
		}
		if got := a.WetBulb(); got != a.Temperature {
			t.Errorf("WetBulb at humidity %v = %v, want %v", humidity, got, a.Temperature)
		}
	}
}

func TestDryestAir(t *testing.T) {
	a := Air{Temperature: q.Celsius(23)}
	near(t, "dew point of air without water", float64(a.DewPoint()), float64(coldest), 1e-6)
}

// At the triple point ice, water and vapour are in balance at 611.657 Pa
// (IAPWS, from memory).
func TestCurvesMeetAtTriplePoint(t *testing.T) {
	near(t, "over ice", float64(overIce(triplePoint)), 611.657, 0.01)
	near(t, "over water", float64(OverWater(triplePoint)), 611.657, 0.01)
}

func anyAir(t *rapid.T) Air {
	return Air{
		Temperature: q.Celsius(rapid.Float64Range(-10, 60).Draw(t, "celsius")),
		Humidity:    q.Fraction(rapid.Float64Range(0.01, 0.99).Draw(t, "humidity")),
		Pressure:    q.Pressure(rapid.Float64Range(70e3, 105e3).Draw(t, "pressure")),
	}
}

func TestDewPointBelowWetBulbBelowDryBulb(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := anyAir(t)
		if dew, wet := a.DewPoint(), a.WetBulb(); !(dew < wet && wet < a.Temperature) {
			t.Errorf("dew point %v, wet bulb %v, dry bulb %v", dew, wet, a.Temperature)
		}
	})
}

func TestVapourIsSaturatedAtDewPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := anyAir(t)
		got, want := SaturationPressure(a.DewPoint()), a.VapourPressure()
		if r := float64(got / want); r < 1-1e-6 || r > 1+1e-6 {
			t.Errorf("saturation at the dew point is %v Pa, vapour pressure %v Pa", got, want)
		}
	})
}

func BenchmarkWetBulb(b *testing.B) {
	a := Air{Temperature: q.Celsius(21), Humidity: 0.55}
	for b.Loop() {
		a.WetBulb()
	}
}
