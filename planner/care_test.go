package planner_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"coatwright/planner"
)

// TestCareTable keeps, for each example job, which steps come and go with the
// level of care. It is read as a master would read it: needs stay, wants go.
func TestCareTable(t *testing.T) {
	lib := builtIn(t)
	levels := []string{"show", "daily", "rough"}
	var table bytes.Buffer
	for _, c := range []struct{ name, document string }{
		{"touring frame, candy, satin", strings.Replace(frame(t), "care: show\n", "", 1)},
		{"polypropylene panel, solid, matt", combination("raw-polypropylene", "solid-colour", "matt", "two-pack", "hvlp-gun", "0.3 m2", "")},
		{"gelcoat panel, pearl, gloss", combination("gelcoat", "pearl-over-solid-ground", "gloss", "two-pack", "hvlp-gun", "0.6 m2", "")},
	} {
		fmt.Fprintf(&table, "%s\n", c.name)
		rows, has := []string{}, map[string][]int{}
		for i, level := range levels {
			p := plan(t, c.document+"care: "+level+"\n", lib)
			for _, row := range rowsOf(p) {
				if has[row] == nil {
					has[row] = make([]int, len(levels))
					rows = append(rows, row)
				}
				has[row][i]++
			}
			fmt.Fprintf(&table, "  %-6s %2d steps, %4.0f min of work, %3.0f min of rework at risk\n", level, len(p.Steps), p.Totals.WorkMin, p.Totals.RiskMin)
		}
		for _, row := range rows {
			n := has[row]
			if n[0] == n[1] && n[1] == n[2] {
				continue
			}
			fmt.Fprintf(&table, "  %-60s show %d  daily %d  rough %d\n", row, n[0], n[1], n[2])
			if n[0] < n[1] || n[1] < n[2] {
				t.Errorf("%s: %s is done more often with less care", c.name, row)
			}
		}
	}
	golden(t, "testdata/care.golden", table.Bytes())
}

// rowsOf names the steps of a plan by what they are and which film they serve.
func rowsOf(p *planner.Plan) []string {
	var rows []string
	for _, s := range p.Steps {
		row := s.Title
		if s.For != "" {
			row += ", for the " + s.For
		} else if len(s.Films) > 0 {
			row += ", of " + s.Films[0]
		}
		rows = append(rows, row)
	}
	return rows
}
