// Package trace owns how a figure came about: its formula, what went into it,
// and where that came from. Whatever computes a figure that somebody will
// measure by also says this of it, so that it can be checked by hand.
package trace

import q "coatwright/quantity"

// Figure is a number with its how. Nothing in it is rounded.
type Figure struct {
	Key     string   `json:"key"`  // names it among the figures of one step or page: "wet-film"
	Name    string   `json:"name"` // "Wet film of one coat"
	Value   q.Value  `json:"value"`
	Range   *Span    `json:"range"` // what it may turn out; null where it is exact
	Formula          // zero for a figure taken as it stands
	Inputs  []Input  `json:"inputs"`
	Remarks []string `json:"remarks"`
}

// Formula is how a figure is computed. The package that computes it keeps its
// formula beside the function, so that the two are read together.
type Formula struct {
	Text   string `json:"formula"` // "WFT = DFT / VS"
	Source string `json:"source"`  // a standard, a handbook, "common practice, no published source"
	Note   string `json:"note"`    // the note that explains it: "background/film-build"
}

// Span is the ends of a range.
type Span struct {
	Low  q.Value `json:"low"`
	High q.Value `json:"high"`
}

// Input is a number that went into a figure.
type Input struct {
	Symbol string  `json:"symbol"` // as in the formula
	Name   string  `json:"name"`
	Value  q.Value `json:"value"`
	Range  *Span   `json:"range"`
	Origin Origin  `json:"origin"`
}

// Origin is where an input came from.
type Origin struct {
	From     From   `json:"from"`
	At       string `json:"at"`       // FromNote: "material/pearl"; FromJob, FromRoom and FromShop: the key of the job; FromFigure and FromEntry: its key
	Standing string `json:"standing"` // FromNote: what the note says that its figures rest on
}

// From is the kind of an origin.
type From string

// The origins.
const (
	FromNote    From = "note"    // a note's front matter
	FromCan     From = "can"     // the data sheet of a can of the shop's own
	FromJob     From = "job"     // what the job says
	FromRoom    From = "room"    // what was entered of the room
	FromShop    From = "shop"    // what was entered of the shop
	FromDefault From = "default" // nobody said, and this is what is taken
	FromSource  From = "source"  // a constant that the formula's source gives
	FromFigure  From = "figure"  // another figure
	FromEntry   From = "entry"   // what was entered on the same page
)

// In is an input of a known value.
func In[Q q.Quantity](symbol, name string, v Q, from Origin) Input {
	return Input{Symbol: symbol, Name: name, Value: q.ValueOf(v), Origin: from}
}

// InRange is an input that may lie anywhere in a range; its middle is used.
func InRange[Q q.Quantity](symbol, name string, r q.Range[Q], from Origin) Input {
	in := In(symbol, name, r.Middle(), from)
	if r.Low != r.High {
		in.Range = SpanOf(r.Low, r.High)
	}
	return in
}

// SpanOf is the range from low to high.
func SpanOf[Q q.Quantity](low, high Q) *Span { return &Span{q.ValueOf(low), q.ValueOf(high)} }
