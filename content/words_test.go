package content

import (
	"io/fs"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

func TestReadWords(t *testing.T) {
	src, err := fs.ReadFile(small(t), wordsFile)
	if err != nil {
		t.Fatal(err)
	}
	got, problems := readWords(wordsFile, src)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	want := &library.Vocabulary{
		Facts: map[string]*library.Fact{
			"clean":     {Name: "clean", Of: library.Surface, Fresh: true, Is: "Nothing lies on it.", Else: "It peels."},
			"keyed":     {Name: "keyed", Of: library.Surface, Number: true, Is: "It carries a scratch.", Else: "It slides off."},
			"smooth":    {Name: "smooth", Of: library.Surface, Is: "A hand feels nothing.", Else: "A nib grows."},
			"mixed":     {Name: "mixed", Of: library.Bench, Is: "The mix stands ready.", Else: "It spits."},
			"gun-clean": {Name: "gun-clean", Of: library.Bench, AtStart: library.Always, Is: "Nothing is left in the gun.", Else: "Specks."},
			"waxed":     {Name: "waxed", Of: library.Part, Is: "It shines by wax.", Else: "Nothing."},
			"masked":    {Name: "masked", Of: library.Part, Is: "Film lies round it.", Else: "It has no edge."},
		},
		Dryness: []library.Word{{Name: "dry-to-recoat", Is: "The next film goes on."}, {Name: "cured", Is: "It will not get harder."}},
		Traits:  []library.Word{{Name: "metal", Is: "Bare metal."}, {Name: "plastic", Is: "A polymer."}},
		Roles:   []library.Role{{Name: "ground", Is: "The colour."}, {Name: "art", Local: true, Is: "Lettering."}, {Name: "clear", Is: "The last film."}},
		Phases:  []library.Word{{Name: "clean", Is: "Take dirt off."}, {Name: "strip", Is: "Take paint off."}, {Name: "abrade", Is: "Scratch."}, {Name: "coat", Is: "Lay a film."}},
		Systems: []library.Word{{Name: "waterborne", Is: "Water carries it."}, {Name: "none", Is: "Not a coating."}},
		Forms:   []library.Word{{Name: "tube", Is: "A rod."}, {Name: "panel", Is: "A face."}},
		Pacing:  []library.Word{{Name: "evaporation", Is: "Water leaving."}, {Name: "cure", Is: "A reaction."}},
		Care:    []library.Care{{Name: "daily", Factor: 1, Is: "Good-looking."}},
		Masks:   []library.Word{{Name: "cut-film", Is: "Film cut to the shape."}, {Name: "free", Is: "No mask."}},
		Standing: []library.Standing{
			{Name: "published", Time: shares(0.9, 1.2), Amount: shares(0.97, 1.05), Is: "Printed somewhere."},
			{Name: "starting-value", Time: shares(0.75, 1.6), Amount: shares(0.9, 1.2), Is: "A figure to start from."},
		},
		StepTimes: "starting-value",
		Limits:    library.Limits{Coats: 3, Thick: "It cracks.", Parts: 0.04, Percentage: 0.004},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func shares(low, high q.Fraction) q.Range[q.Fraction] {
	return q.Range[q.Fraction]{Low: low, High: high}
}

// Every listed word of the built-in library says what it means, and every
// fact, trait, role and mask is used by a note: one that is not is a word too
// many.
func TestBuiltInWords(t *testing.T) {
	p := load(t, BuiltIn(), nil).Planner()
	used := usedWords(p)
	for name, f := range p.Words.Facts {
		if f.Is == "" || f.Else == "" {
			t.Errorf("the fact %q does not say what it is, or what goes wrong without it", name)
		}
		if !used[name] {
			t.Errorf("the fact %q is used by no note", name)
		}
	}
	for _, w := range slices.Concat(p.Words.Dryness, p.Words.Traits, p.Words.Phases, p.Words.Systems, p.Words.Forms, p.Words.Pacing, p.Words.Masks) {
		if w.Is == "" {
			t.Errorf("the word %q does not say what it means", w.Name)
		}
	}
	for _, w := range slices.Concat(p.Words.Traits, p.Words.Masks) {
		if !used[w.Name] {
			t.Errorf("the trait or mask %q is used by no note", w.Name)
		}
	}
	for _, r := range p.Words.Roles {
		if r.Is == "" || !used[r.Name] {
			t.Errorf("the role %q does not say what it is for, or no step lays it", r.Name)
		}
	}
}

// usedWords is every fact, trait and role that a note's front matter names, and
// every mask that a step asks for.
func usedWords(p *library.Library) map[string]bool {
	used := map[string]bool{}
	use := func(names ...string) {
		for _, n := range names {
			used[n] = true
		}
	}
	needs := func(needs []library.Need, wants []library.Want, c library.Condition) {
		for _, n := range needs {
			for _, l := range n.Any {
				use(l.Fact)
			}
		}
		for _, w := range wants {
			use(w.Fact)
		}
		use(c.Traits...)
		use(c.NotTraits...)
		use(c.Masks...)
	}
	over := func(rules []library.Over) {
		for _, r := range rules {
			use(r.Trait, r.Needs.Fact)
		}
	}
	for _, s := range p.Steps {
		needs(s.Needs, s.Wants, s.OnlyIf)
		use(s.Spoils...)
		use(s.Lays)
		for _, g := range s.Gives {
			use(g.Fact)
		}
	}
	for _, m := range p.Materials {
		needs(m.Needs, m.Wants, m.OnlyIf)
		over(m.Over)
		use(m.Traits...)
		use(m.Gives...)
		use(m.Spoils...)
	}
	for _, s := range p.Substrates {
		use(s.Traits...)
		for _, f := range s.Facts {
			use(f.Fact)
		}
	}
	for _, t := range p.Tools {
		if t.Tape != nil {
			needs(t.Tape.Needs, nil, library.Condition{})
			over(t.Tape.Over)
		}
	}
	for _, f := range p.Finishes {
		needs(nil, f.Wants, library.Condition{})
		use(f.Ends...)
	}
	return used
}

// TestEveryNoteIsLinked: a note that no other leads to is found by nobody who
// does not know its name.
func TestEveryNoteIsLinked(t *testing.T) {
	lib, err := Load(BuiltIn(), nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range lib.Notes() {
		if len(lib.MentionedBy(n.Path())) == 0 {
			t.Errorf("no note links to %s", n.Path())
		}
	}
}
