package quote

import (
	"fmt"

	"coatwright/nearest"
	"coatwright/planner"
	"coatwright/planner/cost"
	"coatwright/planner/library"
	q "coatwright/quantity"
)

func nearestOf(found string, words []string) string { return nearest.To(found, words) }

// Quote is what is asked for a plan.
type Quote struct {
	cost.Quote
	Unpriced []Unpriced `json:"unpriced"` // what the plan takes and the rates have no price for
}

// Unpriced is something without a price.
type Unpriced struct {
	Note  string `json:"note"` // "material/pearl", "tool/abrasive-paper"; "" for hands and booth
	Title string `json:"title"`
}

// Of reckons a plan with a shop's rates. What has no price is no part of the sum,
// and is named.
func Of(p *planner.Plan, r *Rates, lib *library.Library) (*Quote, error) {
	out := &Quote{Unpriced: []Unpriced{}}
	var items []cost.Item
	for _, t := range takes(p) {
		price, ok := r.Materials[t.slug]
		if !ok {
			out.Unpriced = append(out.Unpriced, Unpriced{"material/" + t.slug, t.title})
			continue
		}
		items = append(items, cost.Used{What: t.title, Volume: t.volume, Price: price})
	}
	for _, w := range p.Worn {
		price, ok := r.Pieces[w.Tool]
		if !ok {
			out.Unpriced = append(out.Unpriced, Unpriced{"tool/" + w.Tool, w.Title})
			continue
		}
		items = append(items, cost.Pieces{What: w.Title, Piece: w.Piece, Fixed: q.Number(w.Count), Price: price})
	}
	for _, h := range []struct {
		what string
		kind cost.Kind
		rate cost.Price
		time cost.Span[q.Time]
	}{{"Hands", cost.Work, r.Labour, hands(p, lib)}, {"Booth, while films are laid", cost.Booth, r.Booth, cost.Exactly(booth(p))}} {
		if h.rate == (cost.Price{}) {
			out.Unpriced = append(out.Unpriced, Unpriced{"", h.what})
			continue
		}
		items = append(items, cost.Hours{What: h.what, Kind: h.kind, Time: h.time, Rate: h.rate})
	}
	var err error
	if out.Quote, err = cost.Asked(items, r.Terms); err != nil {
		return nil, fmt.Errorf("quote: %w", err)
	}
	return out, nil
}

// taken is how much of a material a plan takes.
type taken struct {
	slug, title string
	volume      cost.Span[q.Volume]
}

// takes is what a plan's materials come to: likely what is poured, at least what
// the mixes need at their best, at most what is to be had ready.
func takes(p *planner.Plan) []taken {
	least := map[string]float64{}
	for _, s := range p.Steps {
		if s.Mix != nil && s.Mix.TotalML > 0 {
			for _, l := range s.Mix.Lines {
				least[l.Material] += l.ML * min(s.Mix.Times(), s.Mix.LowML/s.Mix.TotalML)
			}
		}
		for _, u := range s.Uses {
			if len(u.Note) > len("material/") && u.ML > 0 {
				least[u.Note[len("material/"):]] += u.ML
			}
		}
	}
	var out []taken
	for _, m := range p.Materials {
		if m.ML <= 0 {
			continue
		}
		out = append(out, taken{m.Material, m.Title, cost.Span[q.Volume]{
			Low: q.Volume(min(least[m.Material], m.ML) * 1e-6), Likely: q.Volume(m.ML * 1e-6), High: q.Volume(max(m.BuyML, m.ML) * 1e-6)}})
	}
	return out
}

// hands is the hands-on time, as far off as times in step notes may be.
func hands(p *planner.Plan, lib *library.Library) cost.Span[q.Time] {
	t, off := q.Time(p.Totals.WorkMin*60), lib.Words.StandingOf(lib.Words.StepTimes).Time
	return cost.Span[q.Time]{Low: t * q.Time(off.Low), Likely: t, High: t * q.Time(off.High)}
}

// booth is how long films are laid, waits between coats counted in.
func booth(p *planner.Plan) q.Time {
	var sum q.Time
	for _, s := range p.Steps {
		if s.Coats > 0 {
			sum += q.Time(s.End.Sub(s.Start).Seconds())
		}
	}
	return sum
}

// Price sets what the materials of a plan cost, and all of it, in the plan
// itself: the likely sums.
func Price(p *planner.Plan, r *Rates, lib *library.Library) error {
	quote, err := Of(p, r, lib)
	if err != nil {
		return err
	}
	money := func(m cost.Money) *planner.Cost {
		return &planner.Cost{Amount: m.Amount.String(), Currency: string(m.Currency)}
	}
	for _, l := range quote.Likely.Lines {
		for i := range p.Materials {
			if l.Kind == cost.Material && p.Materials[i].Title == l.What {
				p.Materials[i].Cost = money(l.Amount)
			}
		}
	}
	p.Totals.Cost = money(quote.Likely.Total)
	return nil
}
