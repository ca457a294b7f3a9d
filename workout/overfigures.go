package workout

import (
	"fmt"
	"slices"

	"coatwright/planner/mix"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// tables are what is in the cup, and the ways to mend it.
func (c cupful) tables() []Table {
	tables := []Table{c.thereTable()}
	least, exact := c.fix.Least, c.fix.Exact
	if least != nil && len(least.Add) > 0 {
		tables = append(tables, c.pourTable(c.leastTitle(), least.Out, least.Add))
	}
	if least != nil && least.Cups > 1 {
		tables = append(tables, c.pourTable(fmt.Sprintf("Or all of it, parted evenly into %d cups: into each", least.Cups), 0, least.Each))
	}
	if exact != nil && len(exact.Add) > 0 && !c.alike() {
		tables = append(tables, c.pourTable("Just as the recipe has it", exact.Out, exact.Add))
	}
	return tables
}

// leastTitle is the title of the least remedy.
func (c cupful) leastTitle() string {
	switch {
	case c.fix.Verdict == mix.PourOn:
		return "Pour on"
	case c.alike():
		return "What mends it, just as the recipe has it"
	}
	return "The least that mends it"
}

// alike reports whether the least is what the recipe has, too.
func (c cupful) alike() bool {
	return c.fix.Exact != nil && slices.Equal(c.fix.Least.Add, c.fix.Exact.Add)
}

// pourTable is what to pour on in one cup, out of which something was taken first.
func (c cupful) pourTable(title string, out q.Volume, pours []mix.Pour) Table {
	t := Table{Title: title, Columns: []string{"Pour on", "This much", "Cup at"}}
	if c.weighable() {
		t.Columns = append(t.Columns, "Weighs", "Scale at")
	}
	row := func(what string, v, mark q.Volume, m, markMass q.Mass) {
		cells := []any{what, q.ValueOf(v), q.ValueOf(mark)}
		if c.weighable() {
			cells = append(cells, onDisplay(rounded(m)), onDisplay(rounded(markMass)))
		}
		t.Rows = append(t.Rows, cells)
	}
	if stays := c.inIt() - out; out > 0 {
		row("First take out, well stirred", out, stays, c.mass(out), c.mass(stays))
	}
	for _, p := range pours {
		row(c.title(p.Name), p.Volume, p.Mark, p.Mass, p.MarkMass)
	}
	return t
}

// mass is that of so much of what is in the cup.
func (c cupful) mass(v q.Volume) q.Mass {
	var all q.Mass
	for i, p := range c.parts {
		all += q.Mass(float64(c.poured[i]) * float64(p.Density))
	}
	return all * q.Mass(v/c.inIt())
}

// rounded is a mass to a tenth of a gram, which is as fine as mixing scales show.
func rounded(m q.Mass) q.Mass { return q.RoundTo(m, 1e-4) }

// thereTable is what is in the cup beside what the recipe has of it.
func (c cupful) thereTable() Table {
	t := Table{Title: "What is in the cup", Columns: []string{"Part", "In it", "That is", "The recipe has"}}
	for i, p := range c.parts {
		title, that, has := c.title(p.Name), c.partsOf(i), countedParts(p.Parts)
		if p.Of != "" {
			title += ", share of " + c.name(p.Of)
			that, has = c.shareOf(i, c.place(p.Of)), metric(p.Share)
			if ranging(p) {
				has = q.ShowRange(q.Metric, p.Range)
			}
		}
		t.Rows = append(t.Rows, []any{title, q.ValueOf(c.poured[i]), that, has})
	}
	return t
}

// partsOf is how many parts there are of part i, the first that goes in parts
// being as the recipe has it.
func (c cupful) partsOf(i int) string {
	first := slices.IndexFunc(c.parts, func(p mix.Part) bool { return p.Of == "" && p.Parts > 0 })
	if c.poured[first] == 0 {
		return ""
	}
	return countedParts(float64(c.poured[i]/c.poured[first]) * c.parts[first].Parts)
}

// shareOf says what share part i in the cup is of another.
func (c cupful) shareOf(i, of int) string {
	if c.poured[of] == 0 {
		return "none of it is in"
	}
	return metric(q.Fraction(c.poured[i] / c.poured[of]))
}

func (c cupful) figures(e *Entry) []trace.Figure {
	var out []trace.Figure
	if least := c.fix.Least; least != nil {
		out = append(out, c.endFigure("total-least", "In the cup, with the least poured on", least.Total))
		if least.Out > 0 {
			out = append(out, c.outFigure(least))
		}
	}
	if exact := c.fix.Exact; exact != nil {
		out = append(out, c.endFigure("total-exact", "In the cup, just as the recipe has it", exact.Total))
	}
	rooms, err := mix.Rooms(c.parts, c.poured)
	e.take("of", err)
	for _, r := range rooms {
		out = append(out, c.roomFigure(r))
	}
	if c.life > 0 {
		out = append(out, c.lifeFigure())
	}
	if len(out) == 0 {
		out = append(out, c.endFigure("total", "In the cup", c.inIt()))
	}
	return out
}

func (c cupful) endFigure(key, name string, total q.Volume) trace.Figure {
	return trace.Figure{
		Key: key, Name: name, Value: q.ValueOf(total), Formula: mix.CorrectFormula,
		Inputs: append(append(c.pouredInputs(), c.ratioInputs()...), trace.In("", "parts may be off by", c.off, entered("off"))),
	}
}

// pouredInputs are what is in the cup of each part.
func (c cupful) pouredInputs() []trace.Input {
	var inputs []trace.Input
	for i, p := range c.parts {
		inputs = append(inputs, trace.In("poured", c.name(p.Name), c.poured[i], entered("in-"+p.Name)))
	}
	return inputs
}

func (c cupful) outFigure(r *mix.Remedy) trace.Figure {
	return trace.Figure{
		Key: "out", Name: "To take out first", Value: q.ValueOf(r.Out), Formula: mix.CorrectFormula,
		Inputs:  append(c.pouredInputs(), trace.In("cup", "what it holds", c.holds, entered("holds"))),
		Remarks: []string{"Only of what is well stirred: else you take out one part and not the mix."},
	}
}

// roomFigure is how much of a part that may be more or less may still go in.
func (c cupful) roomFigure(r mix.Room) trace.Figure {
	of := c.place(r.Of)
	f := trace.Figure{
		Key: "room-" + r.Name, Name: capital(c.name(r.Name)) + " that may still go in", Value: q.ValueOf(r.Room), Formula: mix.RoomFormula,
		Inputs: []trace.Input{
			trace.In("V", c.name(r.Name)+" in the cup", c.poured[c.place(r.Name)], entered("in-"+r.Name)),
			trace.In("V of the other part", c.name(r.Of)+" in the cup", c.poured[of], entered("in-"+r.Of)),
			c.ratioInput(c.parts[c.place(r.Name)]),
		},
	}
	switch {
	case r.Over:
		f.Remarks = []string{fmt.Sprintf("There is too much of it: %s of %s, and the recipe has %s.", metric(r.Share), c.name(r.Of), q.ShowRange(q.Metric, r.Range))}
	case r.Short > 0:
		f.Remarks = []string{fmt.Sprintf("%s of it must go in at the least.", metric(r.Short))}
	}
	return f
}
