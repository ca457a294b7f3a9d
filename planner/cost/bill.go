package cost

import (
	"fmt"

	"github.com/govalues/decimal"
)

// MarginOf returns the share of the net price that a mark-up on cost comes to: one
// of 25 % is a margin of 20 %.
func MarginOf(markUp Percent) (Percent, error) {
	whole, err := markUp.Points.Add(decimal.Hundred)
	if err != nil {
		return Percent{}, err
	}
	part, err := markUp.Points.Mul(decimal.Hundred)
	if err != nil {
		return Percent{}, err
	}
	margin, err := part.Quo(whole)
	return Percent{margin.Trim(0)}, err
}

// Asked returns what to ask for items on terms. All prices must be in the currency
// of terms.
func Asked(items []Item, terms Terms) (Quote, error) {
	var bills [3]Bill
	for _, at := range []end{low, likely, high} {
		b, err := billOf(items, terms, at)
		if err != nil {
			return Quote{}, err
		}
		bills[at] = b
	}
	return Quote{bills[low], bills[likely], bills[high]}, nil
}

// billOf is the bill at one end of what items take.
func billOf(items []Item, terms Terms, at end) (Bill, error) {
	if !terms.Currency.known() {
		return Bill{}, fmt.Errorf("found the currency %q; expected one such as \"EUR\"", terms.Currency)
	}
	var b Bill
	r := reckoner{currency: terms.Currency}
	for _, item := range items {
		lines, err := item.lines(at)
		if err != nil {
			return Bill{}, fmt.Errorf("%s: %w", item.name(), err)
		}
		for _, l := range lines {
			l.Amount = r.line(l)
			b.Lines = append(b.Lines, l)
		}
		if r.err != nil {
			return Bill{}, fmt.Errorf("%s: %w", item.name(), r.err)
		}
	}
	b.Cost = r.sum(amounts(b.Lines)...)
	b.Overhead = r.on(b.Cost, terms.Overhead)
	b.MarkUp = r.on(r.sum(b.Cost, b.Overhead.Amount), terms.MarkUp)
	b.Net = r.sum(b.Cost, b.Overhead.Amount, b.MarkUp.Amount)
	b.Tax = r.on(b.Net, terms.Tax)
	b.Total = r.sum(b.Net, b.Tax.Amount)
	return b, r.err
}

func amounts(lines []Line) []Money {
	out := make([]Money, len(lines))
	for i, l := range lines {
		out[i] = l.Amount
	}
	return out
}
