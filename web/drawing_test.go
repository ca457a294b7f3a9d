package web

import (
	"flag"
	"html/template"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"coatwright/planner"
	q "coatwright/quantity"
	"coatwright/workout"
)

var update = flag.Bool("update", false, "write the golden files anew")

// overPoured is a cup with too much in it, and what is poured on.
var overPoured = &workout.Card{There: 310e-6, Holds: 600e-6, Pours: []workout.CardPour{{Name: "Base", Mark: 330e-6}, {Name: "Thinner", Mark: 352e-6}}}

// TestDrawings compares each drawing with a file that can be opened and looked
// at.
func TestDrawings(t *testing.T) {
	p := samplePlan()
	tests := map[string]template.HTML{
		"stack.svg":       StackSVG(p, "frame", q.Metric),
		"timeline.svg":    TimelineSVG(p),
		"cup.svg":         cupSVG(mixLevels(p.Steps[3].Mix, q.Metric), 0),
		"over-poured.svg": cupSVG(cardLevels(overPoured, q.US), float64(overPoured.Holds)),
		"candy.svg":       effectSwatch([]string{"effect", "candy"}, []string{"#8a8d90", "#0f6f6b"}, CandySwatch{Over: "#c9ccd0", Coats: 3, Flat: true}),
		"coat.svg":        shownStrip("#0b4f4c").Shown()[3].Patch,
		"pearl.svg":       effectSwatch([]string{"ground", "effect"}, []string{"#202020", "#e8e2d4"}, CandySwatch{}),
		"satin.svg":       finishSwatch(35),
	}
	for name, got := range tests {
		t.Run(name, func(t *testing.T) { likeFile(t, name, got) })
	}
}

// likeFile compares a drawing with the golden file of that name.
func likeFile(t *testing.T, name string, got template.HTML) {
	t.Helper()
	file := filepath.Join("testdata", name)
	text := strings.ReplaceAll(string(got), "><", ">\n<") + "\n"
	if *update {
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), text); diff != "" {
		t.Errorf("%s (-want +got):\n%s", name, diff)
	}
}

func TestNothingToDraw(t *testing.T) {
	empty := &planner.Plan{}
	for name, got := range map[string]template.HTML{
		"stack": StackSVG(empty, "frame", q.Metric), "timeline": TimelineSVG(empty),
		"no mix": cupSVG(mixLevels(nil, q.Metric), 0), "mix of nothing": cupSVG(mixLevels(&planner.Mix{}, q.Metric), 0),
		"card of nothing": cupSVG(cardLevels(&workout.Card{}, q.Metric), 0),
	} {
		if got != "" {
			t.Errorf("%s: drew %q", name, got)
		}
	}
}

var anyFilms = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) planner.Film {
	return planner.Film{
		Step: "s", Title: "Film", Parts: []string{"part"}, Coats: rapid.IntRange(1, 6).Draw(t, "coats"),
		DryUm: float64(rapid.IntRange(0, 400).Draw(t, "um")),
		Role:  rapid.SampledFrom([]string{"prime", "effect", "candy", "clear"}).Draw(t, "role"),
	}
}), 1, 12)

// TestBands: films lie on each other without gap or overlap, bottom first, and
// a thicker film is never drawn thinner.
func TestBands(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		films := anyFilms.Draw(t, "films")
		bands := layBands(films)
		for i, b := range bands {
			if b.h < bandLowest || b.w <= 0 {
				t.Fatalf("film %d is %v wide and %v high", i, b.w, b.h)
			}
			if i > 0 && bands[i-1].y != b.bottom() {
				t.Fatalf("film %d ends at %v, the one below begins at %v", i, b.bottom(), bands[i-1].y)
			}
			for k, other := range bands {
				if b.DryUm < other.DryUm && b.h > other.h {
					t.Fatalf("film %d of %v um is drawn higher than film %d of %v um", i, b.DryUm, k, other.DryUm)
				}
			}
		}
		drawn := string(StackSVG(&planner.Plan{Films: films}, "part", q.Metric))
		for _, f := range films {
			if want := coats(f.Coats) + " · " + amount(f.DryUm) + " µm</text>"; !strings.Contains(drawn, want) {
				t.Fatalf("%q is not in the drawing", want)
			}
		}
	})
}

// TestHatchStaysInside: no hatch line leaves its rectangle.
func TestHatchStaysInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rectangle{
			rapid.Float64Range(0, 50).Draw(t, "x"), rapid.Float64Range(0, 50).Draw(t, "y"),
			rapid.Float64Range(1, 200).Draw(t, "w"), rapid.Float64Range(1, 200).Draw(t, "h"),
		}
		for _, data := range []string{hatch(r, 5), flecks(rectangle{r.x, r.y, r.w + 12, r.h + 6}, 20, 0)} {
			outer := rectangle{r.x, r.y, r.w + 12, r.h + 6}
			for _, p := range points(t, data) {
				if p[0] < outer.x-0.1 || p[0] > outer.x+outer.w+0.1 || p[1] < outer.y-0.1 || p[1] > outer.bottom()+0.1 {
					t.Fatalf("%v is outside of %v", p, outer)
				}
			}
		}
	})
}

// TestTimelineLabels: no two labels overlap, none stands above its time, and
// every step has one.
func TestTimelineLabels(t *testing.T) {
	p := samplePlan()
	tl := newTimeline(p)
	named := map[int]bool{}
	for _, d := range tl.days() {
		tl.label(&d)
		for i, l := range d.labels {
			named[l.step] = true
			if l.y < l.at {
				t.Errorf("label of step %d stands at %v, above its start at %v", l.step, l.y, l.at)
			}
			if i > 0 && l.y < d.labels[i-1].y+timeLine {
				t.Errorf("labels of steps %d and %d overlap", d.labels[i-1].step, l.step)
			}
			if l.y > d.offTop {
				t.Errorf("label of step %d stands in the hours off", l.step)
			}
		}
	}
	if len(named) != len(p.Steps) {
		t.Errorf("%d of %d steps are named", len(named), len(p.Steps))
	}
}

// TestTimelineIsExact: an instant in working hours stands where its minutes say.
func TestTimelineIsExact(t *testing.T) {
	tl := newTimeline(samplePlan())
	d := tl.days()[0]
	if got, want := d.y(at(1, 9, 30))-d.y(at(1, 8, 0)), 1.5*hourHeight; got != want {
		t.Errorf("an hour and a half is %v high, want %v", got, want)
	}
	if got := len(tl.days()); got != 3 {
		t.Errorf("%d days are drawn, want the 3 with work", got)
	}
}
