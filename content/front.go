package content

import (
	"fmt"
	"maps"
	"slices"

	"coatwright/planner/library"
	q "coatwright/quantity"
	"coatwright/strictyaml"
)

// front reads front matter against the listed words and the slugs that exist.
type front struct {
	words *library.Vocabulary
	slugs map[string][]string // kind to the slugs of its notes
	facts []string            // facts, dryness states and film/<role>
}

func newFront(words *library.Vocabulary, slugs map[string][]string) *front {
	f := &front{words: words, slugs: slugs}
	f.facts = slices.Sorted(maps.Keys(words.Facts))
	f.facts = append(f.facts, wordNames(words.Dryness)...)
	for _, role := range f.roles() {
		f.facts = append(f.facts, "film/"+role)
	}
	return f
}

func wordNames(words []library.Word) []string {
	names := make([]string, len(words))
	for i, w := range words {
		names[i] = w.Name
	}
	return names
}

func (f *front) roles() []string {
	var roles []string
	for _, r := range f.words.Roles {
		roles = append(roles, r.Name)
	}
	return roles
}

func standingNames(standing []library.Standing) []string {
	var names []string
	for _, s := range standing {
		names = append(names, s.Name)
	}
	return names
}

// givable are the facts that a step may give or a surface may have: all but the
// dryness states, which only time gives, and the films, which only a step that
// lays one gives.
func (f *front) givable() []string { return slices.Sorted(maps.Keys(f.words.Facts)) }

func (f *front) slug(v *strictyaml.Value, kind string) string {
	return v.OneOf("the slug of a "+kind+" note", f.slugs[kind])
}

// slugList reads one slug or a list of them.
func (f *front) slugList(v *strictyaml.Value, kind string) []string {
	return v.WordOrWords("the slug of a "+kind+" note", f.slugs[kind])
}

func (f *front) cautions(v *strictyaml.Value) []string {
	return v.Words("the slug of a caution note", f.slugs["caution"])
}

// literal reads `fact` or `{fact: 240..400}`.
func (f *front) literal(v *strictyaml.Value, what string, allowed []string) library.Literal {
	if !v.IsMap() {
		fact := v.OneOf(what, allowed)
		f.checkNumber(v, fact, false)
		return library.Literal{Fact: fact}
	}
	m := v.Map()
	if len(m.Keys()) != 1 {
		v.Fail("one fact, such as keyed: 240..400", "")
		return library.Literal{}
	}
	return f.numbered(m, m.Keys()[0], what, allowed)
}

// numbered reads the entry `fact: 240..400` of m.
func (f *front) numbered(m *strictyaml.Map, key, what string, allowed []string) library.Literal {
	v := m.Get(key)
	if !slices.Contains(allowed, key) {
		m.Fail(key, what, nearestWord(key, allowed))
		return library.Literal{}
	}
	if !f.checkNumber(v, key, true) {
		return library.Literal{}
	}
	return library.Literal{Fact: key, Number: strictyaml.Range[q.Grit](v)}
}

// checkNumber reports a number where the fact carries none, or its lack.
func (f *front) checkNumber(v *strictyaml.Value, fact string, given bool) bool {
	known := f.words.Facts[fact]
	switch {
	case fact == "" || known == nil && !given || known != nil && known.Number == given:
		return true
	case given:
		v.Fail(fmt.Sprintf("no number: the fact %q carries none", fact), "")
	default:
		v.Fail(fmt.Sprintf("a range, such as {%s: 240..400}", fact), "")
	}
	return false
}

// needs reads a list of needs: `fact`, `{fact: "because"}`, `{keyed: 240..400}`
// or `{any: [fact, ...], because: "..."}`.
func (f *front) needs(v *strictyaml.Value) []library.Need {
	var needs []library.Need
	for _, item := range v.List() {
		needs = append(needs, f.need(item))
	}
	return needs
}

func (f *front) need(v *strictyaml.Value) library.Need {
	if !v.IsMap() {
		return library.Need{Any: []library.Literal{f.literal(v, "a fact", f.facts)}}
	}
	m := v.Map()
	if any := m.Get("any"); any != nil {
		n := library.Need{Because: m.Get("because").Text()}
		for _, item := range any.List() {
			n.Any = append(n.Any, f.literal(item, "a fact", f.facts))
		}
		m.Close()
		if len(n.Any) == 0 {
			any.Fail("at least one fact in the list", "")
		}
		return n
	}
	if len(m.Keys()) != 1 {
		v.Fail(`one fact, or any: [facts] with a because`, "")
		return library.Need{}
	}
	key := m.Keys()[0]
	if fact := f.words.Facts[key]; fact != nil && fact.Number {
		return library.Need{Any: []library.Literal{f.numbered(m, key, "a fact", f.facts)}}
	}
	if !slices.Contains(f.facts, key) {
		m.Fail(key, "a fact", nearestWord(key, f.facts))
		return library.Need{}
	}
	return library.Need{Any: []library.Literal{{Fact: key}}, Because: m.Get(key).Text()}
}

// wants reads a list of `{fact: 40 min, because: "..."}`.
func (f *front) wants(v *strictyaml.Value) []library.Want {
	var wants []library.Want
	for _, item := range v.List() {
		m := item.Map()
		w := library.Want{Because: m.Need("because").Text(), PerArea: strictyaml.Quantity[q.TimePerArea](m.Get("per-area"))}
		for _, key := range m.Keys() {
			if key == "because" || key == "per-area" {
				continue
			}
			saves := m.Get(key)
			if !slices.Contains(f.givable(), key) {
				m.Fail(key, "a fact", nearestWord(key, f.givable()))
			} else if w.Fact != "" {
				m.Fail(key, "one fact in each want", "")
			}
			w.Fact, w.Saves = key, strictyaml.Quantity[q.Time](saves)
		}
		if w.Fact == "" && w.Because != "" {
			item.Fail("a fact and what it saves, such as smooth: 40 min", "")
		}
		wants = append(wants, w)
	}
	return wants
}

func (f *front) literals(v *strictyaml.Value) []library.Literal {
	var out []library.Literal
	for _, item := range v.List() {
		out = append(out, f.literal(item, "a fact", f.givable()))
	}
	return out
}

func (f *front) factNames(v *strictyaml.Value) []string { return v.Words("a fact", f.givable()) }

func (f *front) condition(v *strictyaml.Value) library.Condition {
	if v == nil {
		return library.Condition{}
	}
	m := v.Map()
	traits := wordNames(f.words.Traits)
	c := library.Condition{
		Traits:     m.Get("trait").Words("a trait", traits),
		NotTraits:  m.Get("not-trait").Words("a trait", traits),
		Systems:    m.Get("system").Words("a system", wordNames(f.words.Systems)),
		Applicator: m.Get("applicator").Words("the slug of a tool note", f.slugs["tool"]),
		Forms:      m.Get("form").Words("a form", wordNames(f.words.Forms)),
		Masks:      m.Get("mask").Words("how the edge is made", wordNames(f.words.Masks)),
		Polarity:   m.Get("polarity").Words("how the mask lies", []string{library.Negative, library.Positive}),
		On:         m.Get("on").OneOf(`what lies uppermost`, append([]string{"substrate", "film"}, f.roles()...)),
	}
	m.Close()
	return c
}

// drying reads {in: 20 min, by: evaporation, closes: 48 h}.
func (f *front) drying(v *strictyaml.Value) library.Drying {
	if v == nil {
		return library.Drying{}
	}
	m := v.Map()
	d := library.Drying{
		In:     strictyaml.Quantity[q.Time](m.Need("in")),
		By:     m.Need("by").OneOf("what paces it", wordNames(f.words.Pacing)),
		Closes: strictyaml.Quantity[q.Time](m.Get("closes")),
	}
	m.Close()
	if d.Closes != 0 && d.Closes <= d.In {
		v.Fail("a window that closes after it opens", "")
	}
	return d
}
