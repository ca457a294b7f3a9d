package colour

import (
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// Worked by hand: 30 parts of concentrate with 15 % solids on 100 of binder with
// 30 % leave 34.5 parts of film; 50 parts leave 37.5. Half as much again of
// concentrate and more, but not five thirds of the colour.
func TestStrength(t *testing.T) {
	gun, airbrush := Strength(0.30, 0.15, 0.30), Strength(0.50, 0.15, 0.30)
	near(t, "gun", float64(gun), 30/34.5, 1e-12)
	near(t, "airbrush", float64(airbrush), 50/37.5, 1e-12)
	near(t, "ratio", float64(airbrush/gun), 1.5333, 1e-4)
	near(t, "dye without solids", float64(Strength(0.5, 0, 0.3)/Strength(0.3, 0, 0.3)), 5.0/3, 1e-12)
	near(t, "none", float64(Strength(0, 0.15, 0.30)), 0, 0)
}

func anyFilm(t *rapid.T) Film {
	return Film{
		Coats:    q.Number(rapid.IntRange(1, 12).Draw(t, "coats")),
		Build:    q.Length(rapid.Float64Range(2*um, 40*um).Draw(t, "build")),
		Strength: q.Number(rapid.Float64Range(0.1, 3).Draw(t, "strength")),
	}
}

// Twice the coats, twice the build and twice the strength are one and the same.
func TestDepth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, ref := anyFilm(t), anyFilm(t)
		once := float64(f.Depth(ref))
		near(t, "coats", float64(Film{2 * f.Coats, f.Build, f.Strength}.Depth(ref)), 2*once, 1e-12*once)
		near(t, "build", float64(Film{f.Coats, 2 * f.Build, f.Strength}.Depth(ref)), 2*once, 1e-12*once)
		near(t, "strength", float64(Film{f.Coats, f.Build, 2 * f.Strength}.Depth(ref)), 2*once, 1e-12*once)
		near(t, "of itself", float64(f.Depth(f)), 1, 1e-12)
	})
}
