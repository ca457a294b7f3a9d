package workout

import (
	"fmt"
	"strings"

	"coatwright/planner/library"
	"coatwright/planner/voc"
	q "coatwright/quantity"
)

// judge holds the mix against its kind of product and, in a table, against all.
func (v *vocOf) judge(a *Answer, words *library.Vocabulary) error {
	table := Table{Title: "Every kind of product: " + words.Law, Columns: []string{"Kind of product", "Limit", "It counts", "So it is"}}
	for _, c := range words.Categories {
		got, err := v.against(voc.Category{Name: fmt.Sprintf("the kind %q", spaced(c.Name)), Limit: c.Limit, Source: words.Law, Water: c.Water})
		if err != nil {
			return err
		}
		table.Rows = append(table.Rows, []any{
			capital(spaced(c.Name)) + ": " + c.Is, q.ValueOf(c.Limit), q.ShowRange(q.Metric, got.Counts), string(got.Verdict),
		})
		if c.Name == v.category {
			tell(a, got)
		}
	}
	if len(table.Rows) > 0 {
		a.Tables = append(a.Tables, table)
	}
	if a.Verdict == nil && len(a.Says) == 0 {
		a.Says = append(a.Says, "Nobody said what kind of product it is. The table has them all.")
	}
	return nil
}

// tell says how a mix stands against its kind. One below the limit gets no
// verdict: that would be a permission, which nobody here can give.
func tell(a *Answer, c voc.Comparison) {
	says := strings.TrimSuffix(c.Says(q.Metric), " "+voc.Defer)
	if c.Verdict == voc.Under {
		a.Says = append(a.Says, says)
		return
	}
	a.Verdict = &Verdict{"care", says}
}

// against holds all mixes against a category. Where they do not agree, the share
// that is poured decides.
func (v *vocOf) against(c voc.Category) (voc.Comparison, error) {
	var out voc.Comparison
	for i, l := range v.liquids {
		got, err := voc.Compare(l, c)
		switch {
		case err != nil:
			return voc.Comparison{}, err
		case i == 0:
			out = got
			continue
		case got.Verdict != out.Verdict:
			out.Verdict = voc.Unclear
		}
		out.Counts, out.Beyond = joined(out.Counts, got.Counts), joined(out.Beyond, got.Beyond)
	}
	return out, nil
}

// joined is the range that holds both.
func joined[Q q.Quantity](r, s q.Range[Q]) q.Range[Q] {
	return q.Range[Q]{Low: min(r.Low, s.Low), High: max(r.High, s.High)}
}
