package workout

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// roomSheets are those about air and what dries in it.
var roomSheets = []*Sheet{airSheet, psychrometerSheet, dryingSheet, bakeSheet, roomSheet, weatherSheet}

// checkFinite is checkSane for sheets with figures that may lie below zero: a
// difference to the dew point.
func checkFinite(t interface{ Errorf(string, ...any) }, p *Page) {
	if (p.Answer == nil) != (len(p.Problems) > 0) {
		t.Errorf("%s %v: answered %v with the problems %v", p.Slug, p.Values, p.Answer != nil, p.Problems)
	}
	if p.Answer == nil {
		return
	}
	value := func(what string, v q.Value) {
		if math.IsNaN(v.SI) || math.IsInf(v.SI, 0) || v.Of == "" || v.SI < 0 && v.Of != "difference of temperatures" {
			t.Errorf("%s %v: %s is %v", p.Slug, p.Values, what, v)
		}
	}
	for _, f := range p.Answer.Figures {
		value(f.Key, f.Value)
		if r := f.Range; r != nil {
			value(f.Key, r.Low)
			value(f.Key, r.High)
			if !(r.Low.SI <= f.Value.SI*(1+1e-9)+1e-9 && f.Value.SI <= r.High.SI*(1+1e-9)+1e-9) {
				t.Errorf("%s %v: %s is %v, outside its range of %v to %v", p.Slug, p.Values, f.Key, f.Value, r.Low, r.High)
			}
		}
		for _, in := range f.Inputs {
			value(f.Key+", "+in.Name, in.Value)
			if in.Origin.From == trace.FromFigure && !hasFigure(p, in.Origin.At) {
				t.Errorf("%s %v: %s of %s comes from the figure %q, which is not there", p.Slug, p.Values, in.Name, f.Key, in.Origin.At)
			}
		}
	}
	for _, table := range p.Answer.Tables {
		for _, row := range table.Rows {
			if len(row) != len(table.Columns) {
				t.Errorf("%s: a row of %q has %d cells for %d columns", p.Slug, table.Title, len(row), len(table.Columns))
			}
			for _, cell := range row {
				if v, is := cell.(q.Value); is {
					value(table.Title, v)
				}
			}
		}
	}
	if c := p.Answer.Chart; c != nil {
		for _, row := range c.Times {
			for _, v := range row {
				if v != nil {
					value(c.Title, *v)
				}
			}
		}
	}
}

// Whatever is typed in, the answer is sane or each problem is told.
func TestAnyRoomIsAnsweredOrTold(t *testing.T) {
	lib := builtIn(t)
	for _, s := range roomSheets {
		t.Run(s.Slug, func(t *testing.T) {
			answers := 0
			rapid.Check(t, func(t *rapid.T) {
				given := map[string]string{}
				look := func(key string) (string, bool) { text, ok := given[key]; return text, ok }
				for _, f := range s.Fill(lib, look).Fields {
					if len(f.Choices) > 0 && rapid.Bool().Draw(t, f.Key+": chosen") {
						given[f.Key] = rapid.SampledFrom(f.Choices).Draw(t, f.Key).Value
					}
				}
				for _, f := range s.Fill(lib, look).Fields { // those that the choices ask for
					if !f.Lines && len(f.Choices) == 0 && rapid.IntRange(0, 2).Draw(t, f.Key+": touched") == 0 {
						given[f.Key] = anyEntry(t, f)
					}
				}
				p := s.Fill(lib, look)
				checkFinite(t, p)
				if p.Answer != nil {
					answers++
				}
			})
			if answers < 10 {
				t.Errorf("only %d entries were answered", answers)
			}
		})
	}
}

// Every choice of every field is answered as it first comes.
func TestEveryRoomChoice(t *testing.T) {
	lib := builtIn(t)
	for _, s := range roomSheets {
		for _, f := range s.Fill(lib, defaults).Fields {
			for _, c := range f.Choices {
				if f.Key == "wick" {
					continue // a frozen wick wants other readings
				}
				if p := filledIn(t, s, lib, f.Key, c.Value); p.Answer == nil {
					t.Errorf("%s, %s %q: %v", s.Slug, f.Key, c.Value, p.Problems)
				} else {
					checkFinite(t, p)
				}
			}
		}
	}
}

func BenchmarkRoomSheets(b *testing.B) {
	lib := builtIn(b)
	for _, s := range roomSheets {
		b.Run(s.Slug, func(b *testing.B) {
			for b.Loop() {
				if s.Fill(lib, defaults).Answer == nil {
					b.Fatal("no answer")
				}
			}
		})
	}
}
