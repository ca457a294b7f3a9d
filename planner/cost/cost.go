// Package cost owns what a job costs and what is asked for it.
//
// Money is decimal from the text it is read from to the line it stands in. Every
// line is rounded to the currency's smallest coin, half to even, and every sum is
// of rounded lines, so that whoever gets the bill can add it up. An amount of paint
// or of time is a measure and no money; it is turned into a decimal once.
package cost

import (
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// The formulas of a bill, in its order.
var (
	LineFormula = trace.Formula{
		Text:   "amount = quantity × price, to the smallest coin, half to even",
		Source: "definition",
		Note:   "background/what-a-quote-is-made-of",
	}
	OverheadFormula = trace.Formula{
		Text:   "overhead = rate × cost of the lines",
		Source: "common practice, no published source",
		Note:   "background/what-a-quote-is-made-of",
	}
	MarkUpFormula = trace.Formula{
		Text:   "mark-up = rate × (cost of the lines + overhead)",
		Source: "definition of a mark-up on cost; the margin on the price is then rate/(1 + rate)",
		Note:   "background/what-a-quote-is-made-of",
	}
	TaxFormula = trace.Formula{
		Text:   "tax = rate × (cost of the lines + overhead + mark-up)",
		Source: "definition of a tax on the net price",
		Note:   "background/what-a-quote-is-made-of",
	}
)

// Kind is what a line is for.
type Kind string

// The kinds.
const (
	Material   Kind = "material"
	Consumable Kind = "consumable"
	Work       Kind = "work"
	Booth      Kind = "booth"
)

// Line is one line of a bill.
type Line struct {
	What     string  `json:"what"`
	Kind     Kind    `json:"kind"`
	Quantity q.Value `json:"quantity"` // a volume, a time, or a number of pieces
	Piece    string  `json:"piece"`    // what a piece is, of a number: "can", "sheet"
	Holds    q.Value `json:"holds"`    // what a piece holds, of a can
	Price    Price   `json:"price"`
	Amount   Money   `json:"amount"`
}

// Addition is a rate on what stands above it in a bill.
type Addition struct {
	Rate   Percent `json:"rate"`
	On     Money   `json:"on"`
	Amount Money   `json:"amount"`
}

// Bill is a job's price with all that it is made of. Net is Cost, Overhead and MarkUp
// together, Total is Net and Tax.
type Bill struct {
	Lines    []Line   `json:"lines"`
	Cost     Money    `json:"cost"` // the sum of Lines
	Overhead Addition `json:"overhead"`
	MarkUp   Addition `json:"markup"`
	Net      Money    `json:"net"`
	Tax      Addition `json:"tax"`
	Total    Money    `json:"total"`
}

// Quote is a bill for what a job likely takes, and for the least and the most.
type Quote struct {
	Low    Bill `json:"low"`
	Likely Bill `json:"likely"`
	High   Bill `json:"high"`
}

// Terms is what is added to the cost of a job.
type Terms struct {
	Currency Currency
	Overhead Percent // on the cost of the lines
	MarkUp   Percent // on cost and overhead; not a margin on the price, see MarginOf
	Tax      Percent // on the net price
}
