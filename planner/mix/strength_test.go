package mix

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// Worked by hand. 30 % for a gun and 50 % for an airbrush, 2.5 to 10 % thinner:
// common practice, no published source.
func TestPercentOfOneAndOfTheWhole(t *testing.T) {
	for _, c := range []struct{ ofOne, others, ofWhole float64 }{
		{0.10, 0, 0.10 / 1.10}, // 10 % of the paint is 9.1 % of the mix
		{0.25, 0, 0.20},
		{1, 0, 0.50},
		{0.30, 0.10, 0.30 / 1.40},
		{0.30, 0.05, 0.30 / 1.35},
		{0.50, 0.025, 0.50 / 1.525},
		{0.10, 0.50, 0.0625}, // 2 : 1 + 10 % of the 2
		{0, 0.3, 0},
	} {
		whole, err := OfWhole(q.Fraction(c.ofOne), q.Fraction(c.others))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "of the whole", float64(whole), c.ofWhole, 1e-12)
		one, err := OfOne(q.Fraction(c.ofWhole), q.Fraction(c.others))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "of the one", float64(one), c.ofOne, 1e-12)
	}
}

// Published: MIL-HDBK-1110 7.3.3 allows 4 fl oz of tint to a gallon of paint;
// worked by hand, 3.125 % of the paint and 3.03 % of the mix.
func TestTintOfAGallon(t *testing.T) {
	whole, err := OfWhole(4*ounce/usGallon, 0)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "tint", float64(whole), 4.0/132, 1e-12)
}

func TestPercentRefuses(t *testing.T) {
	_, err := OfOne(1, 0.1)
	if want := "found 100 % of the whole; expected less than 100 %, as the whole has another part in it"; err == nil || err.Error() != want {
		t.Errorf("OfOne refuses with %v, want %s", err, want)
	}
	if _, err := OfOne(0.1, -1); err == nil {
		t.Error("others below nothing are no error")
	}
	if _, err := OfWhole(-0.1, 0); err == nil {
		t.Error("a share below nothing is no error")
	}
	if _, err := ByMass(0.1, 0, 1000); err == nil {
		t.Error("a part without a density is no error")
	}
	if _, err := ByVolume(0.1, 1000, 0); err == nil {
		t.Error("a whole without a density is no error")
	}
}

// Published: 3 to 1 by volume is 2.3 to 1 by weight (TM 10-8110-201-14&P, 5-14),
// printed to two figures. The densities are those that make it so.
func TestByMass(t *testing.T) {
	byMass, err := ByMass(1.0/3, 1000, 1000*2.3/3)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "solidifier of base by mass", float64(byMass), 1/2.3, 1e-12)
	// Worked by hand: 10 % of a thinner of 0.85 kg/L in a paint of 1.25.
	byMass, err = ByMass(0.10, 850, 1250)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "thinner by mass", float64(byMass), 0.068, 1e-12)
}

func TestPercentProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := q.Fraction(rapid.Float64Range(0, 5).Draw(t, "share"))
		others := q.Fraction(rapid.Float64Range(0, 5).Draw(t, "others"))
		whole, err1 := OfWhole(s, others)
		back, err2 := OfOne(whole, others)
		part := q.Density(rapid.Float64Range(600, 3000).Draw(t, "density"))
		of := q.Density(rapid.Float64Range(600, 3000).Draw(t, "density of the other"))
		mass, err3 := ByMass(s, part, of)
		volume, err4 := ByVolume(mass, part, of)
		shares, err5 := Shares([]Part{{Name: "one", Parts: 1}, {Name: "part", Of: "one", Share: s}, {Name: "rest", Of: "one", Share: others}})
		for _, err := range []error{err1, err2, err3, err4, err5} {
			if err != nil {
				t.Fatal(err)
			}
		}
		near(t, "there and back", float64(back), float64(s), 1e-9)
		near(t, "by mass and back", float64(volume), float64(s), 1e-12)
		near(t, "as Shares has it", float64(whole), float64(shares[1]), 1e-9)
	})
}

// candyOf is a candy for an applicator; the solids are made up.
func candyOf(share q.Fraction, r q.Range[q.Fraction]) []Part {
	return []Part{
		{Name: "binder", Parts: 100, Solids: 0.30},
		{Name: "concentrate", Of: "binder", Share: share, Range: r, Solids: 0.15},
		{Name: "thinner", Of: "binder", Share: 0.10},
	}
}

// Up to 50 % for an airbrush: common practice, no published source. The solids
// that follow are worked by hand.
func TestStrengthsOf(t *testing.T) {
	got, err := StrengthsOf(candyOf(0.40, q.Range[q.Fraction]{Low: 0.30, High: 0.50}), "concentrate")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		got  Strength
		want float64
	}{{"low", got.Low, 0.30}, {"chosen", got.Chosen, 0.40}, {"high", got.High, 0.50}} {
		near(t, c.name, float64(c.got.Share), c.want, 1e-12)
		near(t, c.name+" of the whole", float64(c.got.OfWhole), c.want/(1.1+c.want), 1e-12)
		near(t, c.name+" solids", float64(c.got.Solids), (0.30+0.15*c.want)/(1.1+c.want), 1e-12)
	}
	one, err := StrengthsOf(candyOf(0.30, q.Range[q.Fraction]{}), "concentrate")
	if err != nil {
		t.Fatal(err)
	}
	if one.Low != one.Chosen || one.High != one.Chosen {
		t.Errorf("a part without a range has the strengths %+v", one)
	}
	for name, want := range map[string]string{
		"concentrat": `found "concentrat"; expected a part of the mix: binder, concentrate, thinner; did you mean "concentrate"?`,
		"binder":     `part 1 of the mix, "binder": it goes in parts; expected a part that is a share of another`,
	} {
		if _, err := StrengthsOf(candyOf(0.30, q.Range[q.Fraction]{}), name); err == nil || err.Error() != want {
			t.Errorf("StrengthsOf refuses with\n\t%v\nwant\n\t%s", err, want)
		}
	}
}

func TestWithShare(t *testing.T) {
	parts := candyOf(0.30, q.Range[q.Fraction]{Low: 0.30, High: 0.50})
	stronger, err := WithShare(parts, "concentrate", 0.50)
	if err != nil {
		t.Fatal(err)
	}
	if stronger[1].Share != 0.50 || parts[1].Share != 0.30 {
		t.Errorf("WithShare gives %v and leaves %v", stronger[1].Share, parts[1].Share)
	}
	for _, c := range []struct {
		name  string
		share q.Fraction
		want  string
	}{
		{"concentrate", 0.60, `part 2 of the mix, "concentrate": found 60 % of binder; expected 30 to 50 %: at most 50 %`},
		{"concentrate", -1, `part 2 of the mix, "concentrate": found -1; expected a share of binder, 0 or more`},
		{"binder", 0.10, `part 1 of the mix, "binder": found a share of no part; expected the name of the part that it is a share of`},
		{"thiner", 0.10, `found "thiner"; expected a part of the mix: binder, concentrate, thinner; did you mean "thinner"?`},
	} {
		if _, err := WithShare(parts, c.name, c.share); err == nil || err.Error() != c.want {
			t.Errorf("WithShare refuses with\n\t%v\nwant\n\t%s", err, c.want)
		}
	}
}

// A thinner share of 5 to 10 %: common practice, no published source.
func TestOutside(t *testing.T) {
	thinned := func(share q.Fraction) []Part {
		return []Part{{Name: "base", Parts: 1}, {Name: "thinner", Of: "base", Share: share, Range: q.Range[q.Fraction]{Low: 0.05, High: 0.10}}}
	}
	for _, c := range []struct {
		share q.Fraction
		want  []Stray
	}{
		{0.05, nil},
		{0.10, nil},
		{0.12, []Stray{{"thinner", 0.10, "found 12 % of base; expected 5 to 10 %: at most 10 %"}}},
		{0.025, []Stray{{"thinner", 0.05, "found 2.5 % of base; expected 5 to 10 %: at least 5 %"}}},
	} {
		if diff := cmp.Diff(c.want, Outside(thinned(c.share))); diff != "" {
			t.Errorf("Outside at %v (-want +got):\n%s", c.share, diff)
		}
	}
}

// Worked by hand: 5 to 15 % of 200 mL are 10 to 30 mL.
func TestRooms(t *testing.T) {
	for _, c := range []struct {
		thinner, share, short, room float64
		over                        bool
	}{
		{0, 0, 10, 30, false},
		{10, 0.05, 0, 20, false},
		{20, 0.10, 0, 10, false},
		{30, 0.15, 0, 0, false},
		{31, 0.155, 0, 0, true},
	} {
		got, err := Rooms(clear, volumes(200, 100, c.thinner))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "share", float64(got[0].Share), c.share, 1e-12)
		near(t, "short", got[0].Short.Millilitres(), c.short, 1e-9)
		near(t, "room", got[0].Room.Millilitres(), c.room, 1e-9)
		if got[0].Over != c.over {
			t.Errorf("%v mL: over %v, want %v", c.thinner, got[0].Over, c.over)
		}
	}
	if got, err := Rooms(clear, volumes(0, 100, 0)); err != nil || got != nil {
		t.Errorf("rooms without a base: %+v, %v", got, err)
	}
	for _, poured := range [][]q.Volume{volumes(1, 2), volumes(0, 0, 0)} {
		if _, err := Rooms(clear, poured); err == nil {
			t.Errorf("rooms of %v are no error", poured)
		}
	}
	bare := []Part{{Name: "base", Density: 1000, Parts: 1}, {Name: "thinner", Of: "base", ByMass: true, Range: q.Range[q.Fraction]{High: 0.2}}}
	_, err := Rooms(bare, volumes(1, 0))
	if want := `part 2 of the mix, "thinner": found densities of 0 and 1000 kg/m3; expected both above 0, to go between mass and volume`; err == nil || err.Error() != want {
		t.Errorf("Rooms refuses with\n\t%v\nwant\n\t%s", err, want)
	}
	bare = []Part{{Name: "base", Parts: 1, ByMass: true}, {Name: "thinner", Of: "base", Share: 0.1, ByMass: true, Range: q.Range[q.Fraction]{High: 0.2}}}
	_, err = Rooms(bare, volumes(1, 0))
	if want := `part 1 of the mix, "base": found no density of "base"; expected one, to go from parts by mass to parts by volume`; err == nil || err.Error() != want {
		t.Errorf("Rooms refuses with\n\t%v\nwant\n\t%s", err, want)
	}
}

// Adding what a part is short of brings it to the low end of its range, and
// adding all its room to the high end, by volume or by mass.
func TestRoomsFill(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := anyMix(t)
		poured := anyPoured(t, parts)
		rooms, err := Rooms(parts, poured)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range rooms {
			i, _ := find(parts, r.Name)
			of, _ := find(parts, r.Of)
			shareAt := func(v q.Volume) float64 {
				share := v / poured[of]
				if parts[i].ByMass {
					share *= q.Volume(parts[i].Density / parts[of].Density)
				}
				return float64(share)
			}
			near(t, "now", shareAt(poured[i]), float64(r.Share), 1e-9)
			if r.Short > 0 {
				near(t, "at the low end", shareAt(poured[i]+r.Short), float64(r.Range.Low), 1e-9)
			}
			if r.Room > 0 {
				near(t, "at the high end", shareAt(poured[i]+r.Room), float64(r.Range.High), 1e-9)
			}
			if r.Over && (r.Room > 0 || r.Short > 0) || r.Short > r.Room {
				t.Errorf("%+v contradicts itself", r)
			}
		}
	})
}
