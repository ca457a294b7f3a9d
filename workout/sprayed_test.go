package workout

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

// poundPerGallon is 1 lb/US gal in kg/m3 (NIST SP 811).
const poundPerGallon = 0.45359237 / 3.785411784e-3

func only[Q q.Quantity](v Q) q.Range[Q] { return q.Range[Q]{Low: v, High: v} }

// thinned is a library of two materials: a paint, and the thinner that goes into
// it as a share of the paint.
func thinned(paint, thinner library.Material, share q.Range[q.Fraction]) *library.Library {
	paint.Slug, paint.Title, paint.Role = "paint", "Paint", "film"
	thinner.Slug, thinner.Title = "thinner", "Thinner"
	paint.Mix = []library.MixPart{
		{Part: "base", Parts: 100},
		{Part: "thinner", Of: "base", Value: map[string]q.Range[q.Fraction]{"": share, "brush": only[q.Fraction](1)}},
	}
	return &library.Library{
		Materials: map[string]*library.Material{"paint": &paint, "thinner": &thinner},
		Tools: map[string]*library.Tool{
			"brush":  {Slug: "brush", Title: "Air brush", Applicator: &library.Applicator{Cup: 10e-6}},
			"gun":    {Slug: "gun", Title: "Spray gun", Applicator: &library.Applicator{Cup: 600e-6}},
			"hammer": {Slug: "hammer", Title: "Hammer"},
		},
		Words: &library.Vocabulary{
			Roles: []library.Role{{Name: "film"}}, Law: "a law",
			Categories: []library.Category{{Name: "top-coat", Limit: 420, Is: "Colour."}, {Name: "cleaner", Limit: 200, Water: true, Is: "Cleans."}},
		},
	}
}

// Worked by hand: 100 parts with 10 to 30 %; the middle is 120 parts, the ends
// are 110 and 130.
func TestMixedFor(t *testing.T) {
	lib := thinned(library.Material{}, library.Material{}, q.Range[q.Fraction]{Low: 0.1, High: 0.3})
	s, err := mixedFor(lib, lib.Materials["paint"], "gun")
	if err != nil {
		t.Fatal(err)
	}
	want := []q.Fraction{100.0 / 120, 100.0 / 110, 100.0 / 130}
	if len(s.parts) != 2 || s.mixes != len(want) {
		t.Fatalf("%d parts, %d mixes, want 2 and %d", len(s.parts), s.mixes, len(want))
	}
	for i, w := range want {
		wantNear(t, "share of paint", float64(s.parts[0].shares[i]), float64(w), 1e-12)
		wantNear(t, "share of thinner", float64(s.parts[1].shares[i]), float64(1-w), 1e-12)
	}
	if s, err = mixedFor(lib, lib.Materials["paint"], "brush"); err != nil || s.parts[0].shares[0] != 0.5 {
		t.Errorf("for the brush: %v, %v, want half of each", s.parts, err)
	}
	if s, err = mixedFor(lib, lib.Materials["thinner"], ""); err != nil || s.parts[0].shares[0] != 1 || s.mixes != 1 {
		t.Errorf("as it comes: %v, %v, want all of it", s.parts, err)
	}
	lib.Materials["paint"].Mix = nil
	lib.Materials["paint"].Mix = []library.MixPart{{Part: "base"}}
	if _, err = mixedFor(lib, lib.Materials["paint"], ""); err == nil {
		t.Error("a mix of nothing is not refused")
	}
}

func TestChoicesOfWhatIsSprayed(t *testing.T) {
	lib := thinned(library.Material{}, library.Material{}, only[q.Fraction](0.1))
	all := sprayedChoices(lib, func(*library.Material) bool { return true })
	want := []Choice{{"paint", "Paint", "Film"}, {"thinner", "Thinner", "As it comes in the can"}}
	if diff := cmp.Diff(want, all); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if got := tellingMix(lib, all); got != "paint" {
		t.Errorf("the sheet starts with %q, want the paint", got)
	}
	if got := sprayedChoices(lib, func(m *library.Material) bool { return m.Slug == "thinner" }); len(got) != 1 || tellingMix(lib, got) != "" {
		t.Errorf("choices %v, want only the thinner, which is no mix to start with", got)
	}
	want = []Choice{{Value: "gun", Title: "Spray gun"}, {Value: "brush", Title: "Air brush"}}
	if diff := cmp.Diff(want, applicatorChoices(lib)); diff != "" {
		t.Errorf("applicators (-want +got):\n%s", diff)
	}
}

func TestWordsInSentences(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{capital("äther"), "Äther"}, {capital(""), ""},
		{lowered("Paint stripper"), "paint stripper"}, {lowered("HVLP gun"), "HVLP gun"}, {lowered(""), ""}, {lowered("A"), "a"},
		{spaced("special-finish"), "special finish"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
