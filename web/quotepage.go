package web

import (
	"coatwright/planner"
	"coatwright/planner/cost"
	"coatwright/planner/quote"
	"coatwright/planner/trace"
)

// QuotePage is what is asked for a plan, and the shop's rates to be set.
type QuotePage struct {
	Frame
	ID       string
	Plan     *planner.Plan
	Quote    *quote.Quote      // nil before the shop has set rates
	Values   map[string]string // of the fields, by name
	Problems map[string]string // likewise
	Titles   map[string]string
}

func (QuotePage) template() string { return "quote" }

// RateField is a field of the rates.
type RateField struct {
	Name, Label, Hint string
	Note              string // of what is priced; "" for none
	Value, Problem    string
}

// Terms are the fields that every quote needs.
func (p QuotePage) Terms() []RateField {
	return p.filled([]RateField{
		{Name: "currency", Label: "Currency", Hint: "its code: EUR, USD"},
		{Name: "labour", Label: "Hands", Hint: "48 EUR/h"},
		{Name: "booth", Label: "Booth", Hint: "15 EUR/h, while films are laid"},
		{Name: "overhead", Label: "Overhead", Hint: "12 %, on all of the lines"},
		{Name: "mark-up", Label: "Mark-up", Hint: "20 %, on cost and overhead"},
		{Name: "tax", Label: "Tax", Hint: "21 %, on the net price"},
	})
}

// Prices are the fields for what this plan takes.
func (p QuotePage) Prices() []RateField {
	var out []RateField
	for _, m := range p.Plan.Materials {
		if m.ML > 0 {
			out = append(out, RateField{Name: "materials." + m.Material, Label: m.Title, Hint: "42 EUR/L", Note: "material/" + m.Material})
		}
	}
	for _, w := range p.Plan.Worn {
		out = append(out, RateField{Name: "pieces." + w.Tool, Label: w.Title, Hint: "0.90 EUR a " + w.Piece, Note: "tool/" + w.Tool})
	}
	return p.filled(out)
}

func (p QuotePage) filled(fields []RateField) []RateField {
	for i, f := range fields {
		fields[i].Value, fields[i].Problem = p.Values[f.Name], p.Problems[f.Name]
	}
	return fields
}

// BillRow is a line of the bill with what it may turn out.
type BillRow struct {
	cost.Line
	Low, High cost.Money
}

// Rows are the lines of the likely bill.
func (p QuotePage) Rows() []BillRow {
	var rows []BillRow
	for i, l := range p.Quote.Likely.Lines {
		row := BillRow{Line: l, Low: l.Amount, High: l.Amount}
		if low, high := p.Quote.Low.Lines, p.Quote.High.Lines; len(low) == len(p.Quote.Likely.Lines) && len(high) == len(low) {
			row.Low, row.High = low[i].Amount, high[i].Amount
		}
		rows = append(rows, row)
	}
	return rows
}

// Formulas are how the sums come about.
func (QuotePage) Formulas() []trace.Formula {
	return []trace.Formula{cost.LineFormula, cost.OverheadFormula, cost.MarkUpFormula, cost.TaxFormula}
}
