package colour

import "testing"

// BenchmarkPlan is all that a plan needs of a candy: from four colours as text
// to a strip of twelve coats, the nearest, its evenness and two sags.
func BenchmarkPlan(b *testing.B) {
	for b.Loop() {
		over, under := ground(b, "#c9ccd0"), ground(b, "#d8dade")
		work := coating(b, candy(b, "#b01020", over, coats(3)), under, coats(1))
		work.Strip(12)
		m := work.Nearest(swatch(b, "#980c1c").Colour.Lab(), 12)
		work.Evenness(m.Best, 0.10)
		work.Tolerance(m.Best, JustVisible)
		work.Tolerance(m.Best, PlainlyVisible)
		work.Sag(m.Best, 1.5)
		work.Sag(m.Best, 2)
	}
}

func BenchmarkStrip(b *testing.B) {
	work := redOverSilver(b)
	for b.Loop() {
		work.Strip(12)
	}
}

func BenchmarkStripFromSwatches(b *testing.B) {
	for b.Loop() {
		redOverSilver(b).Strip(12)
	}
}

func BenchmarkNearest(b *testing.B) {
	work, wanted := redOverSilver(b), swatch(b, "#980c1c").Colour.Lab()
	for b.Loop() {
		work.Nearest(wanted, 12)
	}
}

func BenchmarkTolerance(b *testing.B) {
	work := redOverSilver(b)
	for b.Loop() {
		work.Tolerance(3, JustVisible)
	}
}

func BenchmarkDifference(b *testing.B) {
	x, y := swatch(b, "#b01020").Colour.Lab(), swatch(b, "#980c1c").Colour.Lab()
	for b.Loop() {
		Difference(x, y)
	}
}

func BenchmarkSpectrum(b *testing.B) {
	for name, text := range map[string]string{"red": "#b01020", "silver": "#c9ccd0", "white": "#ffffff", "hard": "#0010ef"} {
		b.Run(name, func(b *testing.B) {
			s := swatch(b, text)
			for b.Loop() {
				s.Reflectance()
			}
		})
	}
	b.Run("none", func(b *testing.B) {
		s := SwatchOf(Lab{50, 120, 100}.XYZ())
		for b.Loop() {
			s.Reflectance()
		}
	})
}

func BenchmarkParse(b *testing.B) {
	for name, text := range map[string]string{"screen": "#b01020", "Lab": "L 35 a 55 b 30", "measured": every(10, "%d:%v", ",", func(nm float64) float64 { return nm / 1000 })} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				swatch(b, text)
			}
		})
	}
}

func BenchmarkScreen(b *testing.B) {
	on, beyond := swatch(b, "#b01020").Colour, Lab{33, 61, 46}.XYZ()
	b.Run("on", func(b *testing.B) {
		for b.Loop() {
			on.Screen()
		}
	})
	b.Run("beyond", func(b *testing.B) {
		for b.Loop() {
			beyond.Screen()
		}
	})
}
