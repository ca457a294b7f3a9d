package cost

import (
	"fmt"

	"github.com/govalues/decimal"

	q "coatwright/quantity"
)

// Money is an amount of a currency.
type Money struct {
	Amount   decimal.Decimal `json:"amount"`
	Currency Currency        `json:"currency"`
}

// String writes m as ParseMoney reads it: "12.50 EUR".
func (m Money) String() string { return m.Amount.String() + " " + string(m.Currency) }

// Price is money for a unit of a measure, or for a piece.
type Price struct {
	Money Money   `json:"money"`
	Unit  string  `json:"unit"` // "L", "h"; empty for a piece
	Per   q.Value `json:"per"`  // how much a unit is
}

// String writes p as ParsePrice reads it: "45 EUR/h".
func (p Price) String() string {
	if p.Unit == "" {
		return p.Money.String()
	}
	return p.Money.String() + "/" + p.Unit
}

// each is the price of a piece.
func each(m Money) Price { return Price{Money: m, Per: q.ValueOf(q.Number(1))} }

// isPer refuses a price that is for another measure than v.
func (p Price) isPer(v q.Value) error {
	if p.Per.Of == v.Of && p.Per.SI > 0 {
		return nil
	}
	example := map[string]string{"volume": "38 EUR/L", "time": "45 EUR/h", "number": "1.20 EUR"}[v.Of]
	return fmt.Errorf("found a price of %q; expected one for a %s, such as %q", p, v.Of, example)
}

// Percent is a rate of a bill, in parts of a hundred.
type Percent struct {
	Points decimal.Decimal `json:"percent"`
}

// String writes p as ParsePercent reads it: "19 %".
func (p Percent) String() string { return p.Points.String() + " %" }
