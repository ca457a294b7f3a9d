package cost

import (
	"fmt"
	"math"

	q "coatwright/quantity"
)

// Span is what something likely takes, and the least and the most.
type Span[Q q.Quantity] struct{ Low, Likely, High Q }

// Exactly is a span of no width.
func Exactly[Q q.Quantity](v Q) Span[Q] { return Span[Q]{v, v, v} }

// end is one of the three.
type end int

const (
	low end = iota
	likely
	high
)

// at is one of the three.
func (s Span[Q]) at(e end) Q { return [...]Q{s.Low, s.Likely, s.High}[e] }

// check refuses what nobody can take.
func (s Span[Q]) check() error {
	if !(s.Low >= 0 && s.Low <= s.Likely && s.Likely <= s.High) || math.IsInf(float64(s.High), 1) {
		return fmt.Errorf("found from %g over %g to %g; expected 0 or more, the least first and the most last", float64(s.Low), float64(s.Likely), float64(s.High))
	}
	return nil
}

// Item is something that a job takes: Used, Bought, Pieces or Hours.
type Item interface {
	name() string
	lines(end) ([]Line, error)
}

// Used is a liquid that is charged by what is used of it.
type Used struct {
	What   string
	Volume Span[q.Volume]
	Price  Price // "38 EUR/L"
}

func (u Used) name() string { return u.What }

func (u Used) lines(at end) ([]Line, error) {
	v := u.Volume.at(at)
	if err := u.Price.isPer(q.ValueOf(v)); err != nil {
		return nil, err
	}
	return []Line{{What: u.What, Kind: Material, Quantity: q.ValueOf(v), Price: u.Price}}, u.Volume.check()
}

// Bought is a liquid of which whole cans are charged: those that cover it for the
// least money.
type Bought struct {
	What   string
	Volume Span[q.Volume]
	Cans   []Can
}

func (b Bought) name() string { return b.What }

func (b Bought) lines(at end) ([]Line, error) {
	if err := b.Volume.check(); err != nil {
		return nil, err
	}
	stacks, err := Cheapest(b.Volume.at(at), b.Cans)
	if err != nil {
		return nil, err
	}
	var out []Line
	for _, s := range stacks {
		out = append(out, Line{
			What: b.What, Kind: Material, Quantity: q.ValueOf(q.Number(s.Count)), Piece: "can", Holds: q.ValueOf(s.Can.Size), Price: each(s.Can.Price),
		})
	}
	return out, nil
}

// Pieces is what a job wears out or uses up by the piece: a fixed number, and more by
// the area. A piece that is begun is charged.
type Pieces struct {
	What    string
	Piece   string // "sheet", "roll"
	Fixed   q.Number
	PerArea q.PerArea
	Area    q.Area
	Price   Price // of one: "1.20 EUR"
}

func (p Pieces) name() string { return p.What }

func (p Pieces) lines(end) ([]Line, error) {
	n := float64(p.Fixed) + float64(p.PerArea)*float64(p.Area)
	if !(n >= 0) || math.IsInf(n, 1) {
		return nil, fmt.Errorf("found %g pieces; expected 0 or more", n)
	}
	count := q.ValueOf(whole(n))
	if err := p.Price.isPer(count); err != nil {
		return nil, err
	}
	return []Line{{What: p.What, Kind: Consumable, Quantity: count, Piece: p.Piece, Price: p.Price}}, nil
}

// Hours is time that is charged: of hands, or of a booth.
type Hours struct {
	What string
	Kind Kind // Work or Booth
	Time Span[q.Time]
	Rate Price // "45 EUR/h"
}

func (h Hours) name() string { return h.What }

func (h Hours) lines(at end) ([]Line, error) {
	t := h.Time.at(at)
	if err := h.Rate.isPer(q.ValueOf(t)); err != nil {
		return nil, err
	}
	return []Line{{What: h.What, Kind: h.Kind, Quantity: q.ValueOf(t), Price: h.Rate}}, h.Time.check()
}

// sliver is the share of a measure that the arithmetic may leave over.
const sliver = 1e-9

// whole is how many whole pieces x takes.
func whole(x float64) q.Number {
	return q.Number(math.Ceil(x * (1 - sliver)))
}
