// Package quote owns what a plan costs with a shop's rates: it turns a plan's
// materials, pieces, hands and booth into the lines of a bill.
package quote

import (
	"errors"
	"maps"
	"slices"

	"coatwright/planner/cost"
	"coatwright/planner/library"
	q "coatwright/quantity"
	"coatwright/strictyaml"
)

// Rates are what a shop charges. A price of "" in its currency is one that the
// shop has not set.
type Rates struct {
	cost.Terms
	Labour    cost.Price            // "48 EUR/h"
	Booth     cost.Price            // while films are laid
	Materials map[string]cost.Price // by slug: "42 EUR/L"
	Pieces    map[string]cost.Price // by the tool's slug: "0.90 EUR"
}

// ParseRates reads a document of rates. Slugs are checked against lib. The error
// is a strictyaml.Problems.
//
//	currency: EUR
//	labour: 48 EUR/h
//	booth: 15 EUR/h
//	overhead: 12 %
//	mark-up: 20 %
//	tax: 21 %
//	materials: {pearl: 96 EUR/L}
//	pieces: {abrasive-paper: 0.90 EUR}
func ParseRates(file string, document []byte, lib *library.Library) (*Rates, error) {
	m, doc := strictyaml.Read(file, document, 0)
	if len(m.Keys()) == 0 && len(doc.Problems()) > 0 {
		return nil, doc.Problems().Err()
	}
	r := &Rates{Terms: cost.Terms{
		Currency: parsed(m.Need("currency"), cost.ParseCurrency),
		Overhead: parsed(m.Get("overhead"), cost.ParsePercent),
		MarkUp:   parsed(m.Get("mark-up"), cost.ParsePercent),
		Tax:      parsed(m.Get("tax"), cost.ParsePercent),
	}}
	r.Labour = r.price(m.Get("labour"), perHour)
	r.Booth = r.price(m.Get("booth"), perHour)
	r.Materials = r.prices(m, "materials", "material", slices.Sorted(maps.Keys(lib.Materials)), perVolume)
	r.Pieces = r.prices(m, "pieces", "tool", slices.Sorted(maps.Keys(lib.Tools)), perPiece)
	m.Close()
	if err := doc.Problems().Err(); err != nil {
		return nil, err
	}
	return r, nil
}

// measure is what a price must be for.
type measure struct{ kind, example string }

var (
	perHour   = measure{q.ValueOf(q.Time(0)).Of, "48 EUR/h"}
	perVolume = measure{q.ValueOf(q.Volume(0)).Of, "42 EUR/L"}
	perPiece  = measure{q.ValueOf(q.Number(0)).Of, "0.90 EUR"}
)

// price reads a price in the currency of r for a measure.
func (r *Rates) price(v *strictyaml.Value, of measure) cost.Price {
	if v == nil {
		return cost.Price{}
	}
	p := parsed(v, cost.ParsePrice)
	switch {
	case p == cost.Price{}: // reported
	case p.Per.Of != of.kind:
		v.Fail("a price such as "+of.example, "")
	case p.Money.Currency != r.Currency && r.Currency != "":
		v.Fail("a price in "+string(r.Currency), "")
	}
	return p
}

// prices reads prices by slug.
func (r *Rates) prices(m *strictyaml.Map, key, kind string, slugs []string, of measure) map[string]cost.Price {
	out := map[string]cost.Price{}
	v := m.Get(key)
	if v == nil {
		return out
	}
	all := v.Map()
	for _, slug := range all.Keys() {
		price := all.Get(slug)
		if !slices.Contains(slugs, slug) {
			all.Fail(slug, "the slug of a "+kind+" note", nearestOf(slug, slugs))
			continue
		}
		out[slug] = r.price(price, of)
	}
	return out
}

// parsed reads a scalar by a parser whose errors are *q.Error.
func parsed[T any](v *strictyaml.Value, parse func(string) (T, error)) T {
	var zero T
	text := v.Text()
	if text == "" {
		return zero
	}
	x, err := parse(text)
	var wrong *q.Error
	if errors.As(err, &wrong) {
		v.Fail(wrong.Expected, wrong.Nearest)
	} else if err != nil {
		v.Fail(err.Error(), "")
	}
	return x
}
