package web

import (
	"encoding/xml"
	"fmt"
	"io"
	"strings"
	"testing"

	"golang.org/x/net/html"
	"pgregory.net/rapid"

	"coatwright/planner"
	"coatwright/planner/colour"
)

// sampleCandy is an invented candy in three coats, of which the swatch has three
// over a brighter silver; wanted is "" for none.
func sampleCandy(wanted string) planner.Candied {
	swatch := func(hex string) colour.Swatch { s, _ := colour.ParseSwatch(hex); return s }
	coat := planner.CandyFilm{Coats: 1, Build: 8e-6, Mix: planner.CandyMix{Share: 0.22, Solids: 0.15, Binder: 0.2}}
	film := coat
	film.Coats = 3
	c := planner.Candied{Looks: swatch("#0f6f6b"), Over: planner.CandyGround{Looks: swatch("#c9ccd0")}, Swatch: film,
		Ground: planner.CandyGround{Looks: swatch("#8a8d90")}, Coat: coat, Agreed: 3}
	if wanted != "" {
		lab := swatch(wanted).Colour.Lab()
		c.Wanted = &lab
	}
	return c
}

func sampleStrip(wanted string) planner.Strip {
	s, err := sampleCandy(wanted).Strip()
	if err != nil {
		panic(err)
	}
	s.Step, s.Title, s.Parts = "lay-candy", "Candy colour in binder", []string{"frame", "blade (2)"}
	return s
}

func sampleStrips() []planner.Strip {
	return []planner.Strip{sampleStrip("#0b4f4c"), {Step: "lay-candy-2", Title: "Candy", Missing: "The job does not say what the candy looks like (colours: candy)."}}
}

func shownStrip(wanted string) ShownStrip {
	s := sampleStrip(wanted)
	return ShownStrip{&s, 5, "agreed", func(key string) string { return "#" + key }}
}

// The swatch of the agreed coats has the sags, every one the wanted colour, and
// each is drawn in grey as well.
func TestPatches(t *testing.T) {
	s := shownStrip("#0b4f4c")
	coats := s.Shown()
	if len(coats) != 6 {
		t.Fatalf("%d coats are drawn, want the bare ground and 5", len(coats))
	}
	for _, c := range coats {
		patch := string(c.Patch)
		runs := 0
		if c.Agreed {
			runs = 2 * len(s.Sags)
		}
		if strings.Count(patch, `class="run"`) != runs || strings.Count(patch, `class="held"`) != 2 || !strings.Contains(patch, `fill="`+c.Hex+`"`) || c.Agreed != (c.Coats == 3) {
			t.Errorf("%d coats: %s", c.Coats, patch)
		}
	}
	if bare := string(shownStrip("").Shown()[0].Patch); strings.Contains(bare, "held") {
		t.Errorf("nobody wants a colour: %s", bare)
	}
}

// A grey is as light as its colour: L* of an 8-bit grey is off by at most 0.25.
func TestGreyIsAsLight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		hex := rapid.StringMatching(`#[0-9a-f]{6}`).Draw(t, "hex")
		l := lightnessOf(hex)
		if got := lightnessOf(greyOf(l)); got-l > 0.25 || l-got > 0.25 {
			t.Errorf("%s is %v light, its grey %v", hex, l, got)
		}
	})
}

// Whatever stands in a strip that was kept, the drawing is well-formed, and
// nothing but a colour becomes a fill.
func TestAnyPatchIsWellFormed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.StringMatching(`#[0-9a-f]{6}`), rapid.String())
		seen := planner.Seen{Hex: text.Draw(t, "hex"), L: rapid.Float64Range(0, 100).Draw(t, "L")}
		sag := planner.StripSag{Times: rapid.Float64Range(1, 3).Draw(t, "times"), Seen: seen}
		patch := string(patchSVG(seen, text.Draw(t, "wanted"), []planner.StripSag{sag}))
		for d := xml.NewDecoder(strings.NewReader(patch)); ; {
			token, err := d.Token()
			if err == io.EOF {
				break
			}
			if err != nil {
				t.Fatalf("%v in %s", err, patch)
			}
			if e, ok := token.(xml.StartElement); ok {
				for _, a := range e.Attr {
					if a.Name.Local == "fill" && !hexColour.MatchString(a.Value) {
						t.Errorf("a fill of %q", a.Value)
					}
				}
			}
		}
	})
}

// What the drawing says is also in the text of the page, with where it is
// explained.
func TestStripIsTold(t *testing.T) {
	text, links := "", map[string]bool{}
	for n := range render(t, samplePlanPage()).Descendants() {
		if n.Type == html.TextNode {
			text += " " + strings.TrimSpace(n.Data)
		}
		links[attr(n, "href")] = true
	}
	s := sampleStrip("#0b4f4c")
	for _, want := range []string{
		fmt.Sprintf("%.1f", s.Coats[3].Change), s.Coats[3].Hex, "agreed", "nearest", "An estimate: spray a",
		fmt.Sprintf("L* %.0f", s.Coats[2].L), "Nearest to the colour wanted, #0b4f4c", "A sag 2 times as thick", "The job does not say what the candy looks like",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the page", want)
		}
	}
	for _, key := range []string{"nearest", "left", "tolerance", "evenness", "sag-1", "sag-2", "depth"} {
		if !links["/plan/k3v9/how/lay-candy#"+key] {
			t.Errorf("nothing leads to the how of %s", key)
		}
	}
}

// The films are drawn in the colour that the agreed coats come to.
func TestCandyIsDrawnAsItLies(t *testing.T) {
	p := samplePlan()
	if got, want := laidColour(p, planner.Film{Step: "lay-candy", Colour: "#0f6f6b"}), p.Strips[0].Coats[3].Hex; got != want || got == "#0f6f6b" {
		t.Errorf("three coats over a dark silver are drawn as %s, want %s", got, want)
	}
	if got := laidColour(p, planner.Film{Step: "lay-effect", Colour: "#8a8d90"}); got != "#8a8d90" {
		t.Errorf("the silver is drawn as %s", got)
	}
}

// Three coats over its swatch's own ground look like the swatch.
func TestEffectSwatchIsTheCandys(t *testing.T) {
	if got := candySeen("#c9ccd0", "#0f6f6b", CandySwatch{"#c9ccd0", 3, true}); got[2] != "#0f6f6b" || got[0] == got[1] {
		t.Errorf("one, two and three coats look like %v", got)
	}
	if got := candySeen("#c9ccd0", "#0f6f6b", CandySwatch{}); got != [candySteps]string{"#0f6f6b", "#0f6f6b", "#0f6f6b"} {
		t.Errorf("a candy without a swatch looks like %v", got)
	}
}

func BenchmarkStripDrawing(b *testing.B) {
	s := shownStrip("#0b4f4c")
	for b.Loop() {
		s.Shown()
	}
}
