package content

import (
	"regexp"

	"coatwright/planner/library"
	q "coatwright/quantity"
	"coatwright/strictyaml"
)

// vapour reads {lel: 1.2 %, yield: 180 L/L}.
func vapour(v *strictyaml.Value) library.Vapour {
	if v == nil {
		return library.Vapour{}
	}
	m := v.Map()
	out := library.Vapour{
		LEL:   within(m.Need("lel"), q.Range[q.Fraction]{Low: 0.001, High: 0.2}, "a lower explosive limit from 0.1 to 20 %"),
		Yield: within(m.Need("yield"), q.Range[q.VapourYield]{Low: 50, High: 1000}, "a vapour of 50 to 1000 L/L"),
	}
	m.Close()
	return out
}

// hiding reads {ratio: 92 %, at: 15 um}.
func hiding(v *strictyaml.Value) library.Hiding {
	if v == nil {
		return library.Hiding{}
	}
	m := v.Map()
	out := library.Hiding{
		Ratio: within(m.Need("ratio"), q.Range[q.Fraction]{Low: 0.01, High: 0.9999}, "a contrast ratio from 1 to 99.99 %"),
		At:    strictyaml.Quantity[q.Length](m.Need("at")),
	}
	m.Close()
	return out
}

var hexColour = regexp.MustCompile(`^#[0-9a-fA-F]{6}$`)

// swatch reads {over: "#c9cbcd", coats: 3}.
func swatch(v *strictyaml.Value) library.Swatch {
	if v == nil {
		return library.Swatch{}
	}
	m := v.Map()
	over := m.Need("over")
	out := library.Swatch{Over: over.Text(), Coats: m.Need("coats").Int(1, 12)}
	if over != nil && !hexColour.MatchString(out.Over) {
		over.Fail(`a colour such as "#c9cbcd", in quotes`, "")
	}
	m.Close()
	return out
}

// forced reads {air: yes, heat: 60 C, because: ...}; without heat there is to be
// none.
func forced(v *strictyaml.Value) library.Forced {
	if v == nil {
		return library.Forced{}
	}
	m := v.Map()
	out := library.Forced{
		Air:     m.Need("air").Bool(),
		Heat:    strictyaml.Quantity[q.Temperature](m.Get("heat")),
		Because: m.Need("because").Text(),
	}
	m.Close()
	return out
}

// wear reads {piece: sheet, fixed: 1, per-area: 3 /m2}.
func wear(v *strictyaml.Value) library.Wear {
	if v == nil {
		return library.Wear{}
	}
	m := v.Map()
	out := library.Wear{Piece: m.Need("piece").Text(), Fixed: m.Get("fixed").Number(), PerArea: strictyaml.Quantity[q.PerArea](m.Get("per-area"))}
	m.Close()
	return out
}

// marks reads the graduations of a cup: {mL: [{up-to: 50 mL, every: 1 mL}], fl oz: [...]}.
func marks(v *strictyaml.Value) library.Marks {
	if v == nil {
		return library.Marks{}
	}
	m := v.Map()
	out := library.Marks{Millilitres: markList(m.Need("mL")), Ounces: markList(m.Need("fl oz"))}
	m.Close()
	return out
}

func markList(v *strictyaml.Value) []library.Mark {
	var out []library.Mark
	for _, item := range v.List() {
		m := item.Map()
		mark := library.Mark{UpTo: strictyaml.Quantity[q.Volume](m.Need("up-to")), Every: strictyaml.Quantity[q.Volume](m.Need("every"))}
		m.Close()
		if len(out) > 0 && mark.UpTo <= out[len(out)-1].UpTo {
			item.Fail("marks in rising order", "")
		}
		if mark.Every <= 0 {
			item.Fail("lines that stand apart", "")
		}
		out = append(out, mark)
	}
	return out
}

// within reads a quantity that must lie in a range.
func within[Q q.Quantity](v *strictyaml.Value, r q.Range[Q], expected string) Q {
	x := strictyaml.Quantity[Q](v)
	if v != nil && !r.Holds(x) {
		v.Fail(expected, "")
	}
	return x
}
