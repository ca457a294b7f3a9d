package cost

import (
	"fmt"
	"regexp"
	"strings"

	"github.com/govalues/decimal"

	"coatwright/nearest"
	q "coatwright/quantity"
)

// Bounds of what is read: beyond them somebody mistyped.
var (
	mostMoney   = decimal.MustNew(1_000_000_000, 0)
	mostPercent = decimal.Thousand
)

// mostPlaces is how many digits a price may have behind the point: a price per mL
// has more than the currency's coins.
const mostPlaces = 6

// plain is a number as it is read, pointed is one with a decimal comma, which is
// refused: in some countries "1,250" is a thousand and more.
var (
	plain   = regexp.MustCompile(`^[0-9]{1,12}(\.[0-9]{1,12})?$`)
	pointed = regexp.MustCompile(`^[0-9]{1,12},[0-9]{1,2}$`)
)

// ParseMoney reads an amount of money: "12.50 EUR", "EUR 12.50", "€ 12.50". It may
// have no more digits behind the point than the currency has coins for. The error is
// a *q.Error.
func ParseMoney(s string) (Money, error) {
	m, err := parseMoney(s, s, "", `money with the code of its currency, such as "12.50 EUR"`)
	if err != nil {
		return Money{}, err
	}
	if digits := m.Currency.Digits(); m.Amount.MinScale() > digits {
		return Money{}, &q.Error{Found: s, Expected: fmt.Sprintf("%s with no more than %d digits behind the point", m.Currency, digits)}
	}
	m.Amount = m.Amount.Rescale(m.Currency.Digits())
	return m, nil
}

// ParsePrice reads a price of a volume, of a time or of a piece: "38 EUR/L",
// "45 EUR/h", "1.20 EUR". The error is a *q.Error.
func ParsePrice(s string) (Price, error) {
	amount, unit, divided := strings.Cut(s, "/")
	m, err := parseMoney(s, amount, s[len(amount):], `a price such as "38 EUR/L", "45 EUR/h" or "1.20 EUR"`)
	if err != nil {
		return Price{}, err
	}
	if m.Amount.MinScale() > mostPlaces {
		return Price{}, &q.Error{Found: s, Expected: fmt.Sprintf("a price with no more than %d digits behind the point", mostPlaces)}
	}
	if !divided {
		return each(m), nil
	}
	unit = strings.TrimSpace(unit)
	volume, notVolume := q.Parse[q.Volume]("1 " + unit)
	time, notTime := q.Parse[q.Time]("1 " + unit)
	switch {
	case notVolume == nil:
		return Price{m, unit, q.ValueOf(volume)}, nil
	case notTime == nil:
		return Price{m, unit, q.ValueOf(time)}, nil
	}
	return Price{}, &q.Error{Found: s, Expected: `a price for a unit of volume or of time, such as "38 EUR/L" or "45 EUR/h"`}
}

// ParsePercent reads a rate: "19 %". The error is a *q.Error.
func ParsePercent(s string) (Percent, error) {
	number, signed := strings.CutSuffix(strings.TrimSpace(s), "%")
	number = strings.TrimSpace(number)
	const expected = `a percentage from 0 to 1000 such as "19 %"`
	if !signed || !plain.MatchString(number) {
		return Percent{}, &q.Error{Found: s, Expected: expected, Nearest: corrected(number, " %")}
	}
	d, err := decimal.Parse(number)
	if err != nil || d.Cmp(mostPercent) > 0 {
		return Percent{}, &q.Error{Found: s, Expected: expected}
	}
	return Percent{Points: d}, nil
}

// parseMoney reads text, which with after behind it is the whole that was found.
func parseMoney(found, text, after, expected string) (Money, error) {
	refuse := func(near string) (Money, error) {
		return Money{}, &q.Error{Found: found, Expected: expected, Nearest: near}
	}
	number, code := parted(text)
	if !Currency(code).known() {
		if code = nearest.To(code, codes); code == "" || !plain.MatchString(number) {
			return refuse("")
		}
		return refuse(number + " " + code + after)
	}
	if !plain.MatchString(number) {
		return refuse(corrected(number, " "+code+after))
	}
	d, err := decimal.Parse(number)
	if err != nil || d.Cmp(mostMoney) > 0 {
		expected = fmt.Sprintf("no more than %s %s", mostMoney, code)
		return refuse("")
	}
	return Money{d, Currency(code)}, nil
}

// corrected is number with a decimal point for a comma and after behind it; "" where
// that does not make it a number.
func corrected(number, after string) string {
	if pointed.MatchString(number) {
		number = strings.Replace(number, ",", ".", 1)
	}
	if !plain.MatchString(number) {
		return ""
	}
	return number + after
}

// euro is the one sign that stands for a single currency.
const euro = "€"

// parted finds the number and the code of a currency in s, whichever comes first.
func parted(s string) (number, code string) {
	s = strings.TrimSpace(strings.Replace(s, euro, " EUR ", 1))
	digit := strings.IndexAny(s, "0123456789")
	switch {
	case digit < 0:
		return "", s
	case digit > 0:
		return strings.TrimSpace(s[digit:]), strings.TrimSpace(s[:digit])
	}
	end := strings.LastIndexAny(s, "0123456789") + 1
	return strings.TrimSpace(s[:end]), strings.TrimSpace(s[end:])
}
