package cost

import (
	"strings"

	"coatwright/nearest"
	q "coatwright/quantity"
)

// Currency is a code of ISO 4217: "EUR".
type Currency string

// codes are those of ISO 4217 that money is paid in, as of 2026, from memory; the
// digits behind each group are those that its currencies have behind the point.
var codes, coins = currencies(map[int]string{
	0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF",
	2: "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP CRC CUP CVE CZK " +
		"DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD " +
		"KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP " +
		"PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH " +
		"USD UYU UZS VED VES WST XCD XCG YER ZAR ZMW ZWG",
	3: "BHD IQD JOD KWD LYD OMR TND",
})

// currencies lists the codes, and what digits each has.
func currencies(byDigits map[int]string) (codes []string, digits map[Currency]int) {
	digits = map[Currency]int{}
	for n := range 4 {
		for _, code := range strings.Fields(byDigits[n]) {
			codes = append(codes, code)
			digits[Currency(code)] = n
		}
	}
	return codes, digits
}

// Digits returns how many digits c's smallest coin has behind the point: 2 for cents.
func (c Currency) Digits() int { return coins[c] }

// known reports whether c is in ISO 4217.
func (c Currency) known() bool { _, known := coins[c]; return known }

// ParseCurrency reads a currency's code: "EUR". The error is a *q.Error.
func ParseCurrency(s string) (Currency, error) {
	if c := Currency(s); c.known() {
		return c, nil
	}
	return "", &q.Error{Found: s, Expected: `the code of a currency such as "EUR"`, Nearest: nearest.To(s, codes)}
}
