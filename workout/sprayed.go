package workout

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"coatwright/planner/library"
	"coatwright/planner/mix"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// sprayed is what leaves a gun: a material of the library, mixed as its note
// says, or as it comes in the can.
type sprayed struct {
	*library.Material
	parts []poured
	mixes int // the ways in which its shares are taken: the first with the middle of every range, then each combination of their ends
}

// poured is a part of a mix, and its share of the volume in each of the mixes.
type poured struct {
	*library.Material
	shares []q.Fraction
}

// mixedFor is a material of the library as an applicator sprays it.
func mixedFor(lib *library.Library, m *library.Material, applicator string) (sprayed, error) {
	if len(m.Mix) == 0 {
		return sprayed{m, []poured{{m, []q.Fraction{1}}}, 1}, nil
	}
	out := sprayed{Material: m}
	for _, p := range m.Mix {
		out.parts = append(out.parts, poured{Material: partOf(lib, m, p)})
	}
	for _, parts := range recipes(m, applicator) {
		shares, err := mix.Shares(parts)
		if err != nil {
			return sprayed{}, err
		}
		for i, share := range shares {
			out.parts[i].shares = append(out.parts[i].shares, share)
		}
		out.mixes++
	}
	return out, nil
}

// partOf is the material of a pour, which the notes call "base" when it is the
// one that the recipe belongs to.
func partOf(lib *library.Library, m *library.Material, p library.MixPart) *library.Material {
	if p.Part == "base" {
		return m
	}
	return lib.Materials[p.Part]
}

// recipes are the ways to mix a material: first with the middle of every range,
// then with each combination of their ends. Whatever goes up or down with each
// share is at its least and its most in one of them.
func recipes(m *library.Material, applicator string) [][]mix.Part {
	middle := make([]mix.Part, len(m.Mix))
	for i, p := range m.Mix {
		middle[i] = mix.Part{Name: p.Part, Parts: p.Parts, Of: p.Of, Share: shareFor(p, applicator).Middle()}
	}
	ends := [][]mix.Part{middle}
	for i, p := range m.Mix {
		r := shareFor(p, applicator)
		if r.Low == r.High {
			continue
		}
		var both [][]mix.Part
		for _, parts := range ends {
			for _, end := range []q.Fraction{r.Low, r.High} {
				at := slices.Clone(parts)
				at[i].Share = end
				both = append(both, at)
			}
		}
		ends = both
	}
	return append([][]mix.Part{middle}, ends...)
}

// shareFor is a pour's percentage for an applicator; zero for one in parts.
func shareFor(p library.MixPart, applicator string) q.Range[q.Fraction] {
	if r, ok := p.Value[applicator]; ok {
		return r
	}
	return p.Value[""]
}

// spannedBy is the least and the most of what each of the mixes comes to.
func spannedBy[Q q.Quantity](all []Q) q.Range[Q] {
	return q.Range[Q]{Low: slices.Min(all), High: slices.Max(all)}
}

// blended are the inputs of a mean over the parts: of each its share of the mix
// and what it holds, with its range where there is one.
func (s sprayed) blended(symbol string, holds func(*library.Material) (q.Value, *trace.Span)) []trace.Input {
	var inputs []trace.Input
	for _, p := range s.parts {
		recipe, note := fromNote("material/"+s.Slug, s.Standing), fromNote("material/"+p.Slug, p.Standing)
		share := trace.In("v", "share of the mix: "+lowered(p.Title), p.shares[0], recipe)
		share.Range = spanOf(spannedBy(p.shares))
		value, span := holds(p.Material)
		inputs = append(inputs, share, trace.Input{Symbol: symbol, Name: "of " + lowered(p.Title), Value: value, Range: span, Origin: note})
	}
	return inputs
}

// standings says what the notes' figures rest on.
func (s sprayed) standings(words *library.Vocabulary) []string {
	var says []string
	seen := map[string]bool{}
	for _, p := range s.parts {
		if st := words.StandingOf(p.Standing); !seen[st.Name] && st.Is != "" {
			seen[st.Name] = true
			says = append(says, fmt.Sprintf("Standing of the notes' figures: %s. %s", spaced(st.Name), st.Is))
		}
	}
	return says
}

// spanned gives a figure its value, the first of all, and their range where they
// differ.
func spanned[Q q.Quantity](f trace.Figure, all []Q) trace.Figure {
	f.Value, f.Range = q.ValueOf(all[0]), spanOf(spannedBy(all))
	return f
}

// spanOf is a range to be shown; nil for one of no width.
func spanOf[Q q.Quantity](r q.Range[Q]) *trace.Span {
	if r.Low == r.High {
		return nil
	}
	return trace.SpanOf(r.Low, r.High)
}

// most is an input that may lie in a range, taken at its high end.
func most[Q q.Quantity](symbol, name string, r q.Range[Q], from trace.Origin) trace.Input {
	in := trace.In(symbol, name, r.High, from)
	in.Range = spanOf(r)
	return in
}

// taken is another figure as an input.
func taken(symbol, name string, f trace.Figure) trace.Input {
	return trace.Input{Symbol: symbol, Name: name, Value: f.Value, Range: f.Range, Origin: fromFigure(f.Key)}
}

// sprayedChoices are the materials of the library that fit: films by their role,
// in laying order, then what is used as it comes in the can.
func sprayedChoices(lib *library.Library, fit func(*library.Material) bool) []Choice {
	var out []Choice
	add := func(role, group string) {
		var of []*library.Material
		for m := range maps.Values(lib.Materials) {
			if m.Role == role && fit(m) {
				of = append(of, m)
			}
		}
		slices.SortFunc(of, func(a, b *library.Material) int {
			return cmp.Or(strings.Compare(a.Title, b.Title), strings.Compare(a.Slug, b.Slug))
		})
		for _, m := range of {
			out = append(out, Choice{m.Slug, m.Title, group})
		}
	}
	for _, r := range lib.Words.Roles {
		add(r.Name, capital(r.Name))
	}
	add("", "As it comes in the can")
	return out
}

// tellingMix is the choice whose recipe has the most parts, of several the one
// that is laid last: it shows most of what a sheet can say.
func tellingMix(lib *library.Library, choices []Choice) string {
	best, parts := "", -1
	for _, c := range choices {
		if m := lib.Materials[c.Value]; m != nil && len(m.Mix) >= parts && m.Role != "" {
			best, parts = c.Value, len(m.Mix)
		}
	}
	return best
}

// applicatorChoices are the tools that spray, the one with the largest cup first:
// most films are laid with it.
func applicatorChoices(lib *library.Library) []Choice {
	var tools []*library.Tool
	for t := range maps.Values(lib.Tools) {
		if t.Applicator != nil {
			tools = append(tools, t)
		}
	}
	slices.SortFunc(tools, func(a, b *library.Tool) int {
		return cmp.Or(cmp.Compare(b.Applicator.Cup, a.Applicator.Cup), strings.Compare(a.Slug, b.Slug))
	})
	var out []Choice
	for _, t := range tools {
		out = append(out, Choice{Value: t.Slug, Title: t.Title})
	}
	return out
}

// chosen is what will stand in a field of choices, before the fields are known:
// what was given, trimmed as it will be.
func chosen(e *Entry, key, def string) string {
	return cmp.Or(strings.TrimSpace(e.choice(key, def)), def)
}

// capital is text with a capital at its start.
func capital(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	if n == 0 {
		return text
	}
	return string(unicode.ToUpper(r)) + text[n:]
}

// lowered is a title in the middle of a sentence.
func lowered(title string) string {
	if len(title) > 1 && title[1] >= 'A' && title[1] <= 'Z' { // "HVLP gun"
		return title
	}
	return strings.ToLower(title[:min(1, len(title))]) + title[min(1, len(title)):]
}
