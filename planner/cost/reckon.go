package cost

import (
	"fmt"

	"github.com/govalues/decimal"
)

// reckoner reckons in one currency. After an error everything is zero.
type reckoner struct {
	currency Currency
	err      error
}

// mostReckoned is the largest amount that keeps all its coins in 19 digits.
var mostReckoned = decimal.MustNew(1_000_000_000_000_000, 0)

// line is what a line comes to.
func (r *reckoner) line(l Line) Money {
	price := l.Price.Money
	if price.Currency != r.currency {
		r.refuse(fmt.Errorf("found a price in %s; expected %s, the currency of the quote", price.Currency, r.currency))
	}
	if price.Amount.IsNeg() {
		r.refuse(fmt.Errorf("found a price of %s; expected 0 or more", price))
	}
	units, err := decimal.NewFromFloat64(l.Quantity.SI / l.Price.Per.SI)
	r.refuse(err)
	// A measure is a binary fraction near to the decimal one that was meant; ten
	// digits behind the point take away what is only in the binary one.
	amount, err := units.Round(10).Mul(price.Amount)
	r.refuse(err)
	return r.coins(amount)
}

// sum adds up.
func (r *reckoner) sum(amounts ...Money) Money {
	total := decimal.Zero
	for _, a := range amounts {
		var err error
		total, err = total.Add(a.Amount)
		r.refuse(err)
	}
	return r.coins(total)
}

// on is a rate on an amount.
func (r *reckoner) on(m Money, rate Percent) Addition {
	if rate.Points.IsNeg() {
		r.refuse(fmt.Errorf("found a rate of %s; expected 0 %% or more", rate))
	}
	part, err := m.Amount.Mul(rate.Points)
	r.refuse(err)
	part, err = part.Quo(decimal.Hundred)
	r.refuse(err)
	return Addition{rate, m, r.coins(part)}
}

// coins rounds to the currency's smallest coin, half to even.
func (r *reckoner) coins(amount decimal.Decimal) Money {
	if amount.Cmp(mostReckoned) > 0 {
		r.refuse(fmt.Errorf("found %s %s; expected no more than %s", amount.Round(0), r.currency, mostReckoned))
	}
	if r.err != nil {
		return Money{Currency: r.currency}
	}
	return Money{amount.Rescale(r.currency.Digits()), r.currency}
}

// refuse keeps the first error.
func (r *reckoner) refuse(err error) {
	if r.err == nil {
		r.err = err
	}
}
