package workout

import (
	"fmt"

	"coatwright/planner/mix"
	q "coatwright/quantity"
)

// table is the card: what to pour, exactly.
func (c mixCard) table() Table {
	t := Table{Title: "The card", Columns: []string{"Pour", "Pour in", "Cup at"}}
	if c.weighable() {
		t.Columns = append(t.Columns, "Weighs", "Scale at")
	}
	for i, p := range c.pours {
		row := []any{fmt.Sprintf("%d. %s, %s", i+1, c.title(p.Name), c.shareText(c.parts[i])), q.ValueOf(p.Volume), q.ValueOf(p.Mark)}
		if c.weighable() {
			row = append(row, q.ValueOf(p.Mass), q.ValueOf(p.MarkMass))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// shareText says what the recipe has of a part: "2 parts", "7.5 % of the base".
func (r recipe) shareText(p mix.Part) string {
	if p.Of == "" {
		return countedParts(p.Parts)
	}
	return fmt.Sprintf("%s of %s", metric(p.Share), r.name(p.Of))
}

// countedParts is a number of parts to three figures: "1 part", "2.2 parts".
func countedParts(x float64) string {
	text := metric(q.Number(x))
	if text == "1" {
		return "1 part"
	}
	return text + " parts"
}

// readTable is the card as cup and scale can show it, and what that may cost.
func (c mixCard) readTable() Table {
	t := Table{Title: "As cup and scale show it, and by how much a pour may then be off", Columns: []string{"Up to"}}
	columns := make([][]any, len(c.pours)) // of each pour
	for _, l := range c.lines {
		t.Columns = append(t.Columns, "Line, "+l.unit, "off, at most")
		for i, r := range mix.ByCup(c.pours, l.every) {
			columns[i] = append(columns[i], l.read(r.Mark), q.ValueOf(r.Worst))
		}
	}
	if readings := mix.ByScale(c.pours, c.scale); len(readings) > 0 {
		t.Columns = append(t.Columns, "Scale", "off, at most")
		for i, r := range readings {
			columns[i] = append(columns[i], onDisplay(r.Mark), q.ValueOf(r.Worst))
		}
	}
	for i, p := range c.pours {
		t.Rows = append(t.Rows, append([]any{fmt.Sprintf("%d. %s", i+1, c.title(p.Name))}, columns[i]...))
	}
	return t
}

// onDisplay is a mass as the display has it, to its last figure.
func onDisplay(m q.Mass) string { return plain(m.Grams()) + " g" }

// batchTable says when to mix each batch, from when the first is mixed.
func (c mixCard) batchTable() Table {
	t := Table{Title: "When to mix each batch, from the first on", Columns: []string{"Batch", "Mix at", "Use from", "Used up at"}}
	for i, b := range c.in.Batches {
		row := []any{fmt.Sprint(i + 1), b.Mix.String(), b.From.String(), b.Until.String()}
		if c.life > 0 {
			row = append(row, b.Dies.String())
		}
		t.Rows = append(t.Rows, row)
	}
	if c.life > 0 {
		t.Columns = append(t.Columns, "Pot life ends")
	}
	return t
}

// strengthTables say for each part that may be more or less what its ends make
// of the mix.
func (c mixCard) strengthTables(e *Entry) []Table {
	var tables []Table
	for _, p := range c.parts {
		if !ranging(p) {
			continue
		}
		s, err := mix.StrengthsOf(c.parts, p.Name)
		if err != nil {
			e.take("share-"+p.Name, err)
			continue
		}
		t := Table{Title: fmt.Sprintf("What more or less %s does", c.name(p.Name)), Columns: []string{"", "Share of " + c.name(p.Of), "Share of the whole mix"}}
		if c.material != nil {
			t.Columns = append(t.Columns, "Solids of the mix")
		}
		for _, end := range []struct {
			name string
			mix.Strength
		}{{"Least", s.Low}, {"As entered", s.Chosen}, {"Most", s.High}} {
			row := []any{end.name, q.ValueOf(end.Share), q.ValueOf(end.OfWhole)}
			if c.material != nil {
				row = append(row, q.ValueOf(end.Solids))
			}
			t.Rows = append(t.Rows, row)
		}
		tables = append(tables, t)
	}
	return tables
}
