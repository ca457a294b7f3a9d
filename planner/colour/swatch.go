package colour

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	q "coatwright/quantity"
)

// Swatch is a colour as somebody gave it.
type Swatch struct {
	Colour   XYZ
	Measured *Spectrum // what an instrument read; nil where only the colour is known
}

// SwatchOf is a swatch of which only the colour is known.
func SwatchOf(c XYZ) Swatch { return Swatch{Colour: c} }

// SwatchMeasured is a swatch of which an instrument read the reflectance.
func SwatchMeasured(s Spectrum) Swatch { return Swatch{s.XYZ(), &s} }

// Reflectance returns the spectrum of s: as measured, or the smoothest that
// looks so. Off is how far it looks from s: 0, save for a colour that no surface
// has, which gets a greyer one.
func (s Swatch) Reflectance() (r Spectrum, off DeltaE) {
	if s.Measured != nil {
		return *s.Measured, 0
	}
	r, reached := smoothest(&aim{observer().weights, s.Colour.sums()})
	if reached < 1 {
		off = Difference(r.XYZ().Lab(), s.Colour.Lab())
	}
	return r, off
}

// ParseSwatch reads a colour: of a screen as "#c9ccd0", in CIELAB (D65, 2°) as
// "L 52 a 10 b -30", or as measured in the way that ParseReflectance reads. The
// error is a *quantity.Error.
func ParseSwatch(text string) (Swatch, error) {
	trimmed := strings.TrimSpace(text)
	switch {
	case strings.HasPrefix(trimmed, "#") && !strings.Contains(trimmed, "\n"), bareHex.MatchString(trimmed):
		c, err := ParseScreen(trimmed)
		return SwatchOf(c.XYZ()), err
	case strings.HasPrefix(strings.ToLower(trimmed), "l"):
		c, err := ParseLab(trimmed)
		return SwatchOf(c.XYZ()), err
	case strings.ContainsAny(trimmed, ":\n"):
		s, err := ParseReflectance(trimmed)
		return SwatchMeasured(s), err
	}
	return Swatch{}, refused(text, `a colour such as "#c9ccd0" or "L 52 a 10 b -30", or a measured reflectance such as "400:0.05, 410:0.06" and on to 700`, "")
}

var (
	fullHex  = regexp.MustCompile(`^#[0-9a-fA-F]{6}$`)
	shortHex = regexp.MustCompile(`^#?[0-9a-fA-F]{3}$`)
	bareHex  = regexp.MustCompile(`^([0-9a-fA-F]{3}|[0-9a-fA-F]{6})$`)
)

// ParseScreen reads "#c9ccd0". The error is a *quantity.Error.
func ParseScreen(text string) (Screen, error) {
	trimmed := strings.TrimSpace(text)
	if !fullHex.MatchString(trimmed) {
		return Screen{}, refused(text, `a colour of a screen such as "#c9ccd0": red, green and blue with two digits each`, nearestHex(trimmed))
	}
	n, err := strconv.ParseUint(trimmed[1:], 16, 32)
	if err != nil {
		return Screen{}, refused(text, `a colour of a screen such as "#c9ccd0"`, "")
	}
	return Screen{uint8(n >> 16), uint8(n >> 8), uint8(n)}, nil
}

// nearestHex is what was meant without the #, or by the short form.
func nearestHex(text string) string {
	digits := strings.TrimPrefix(text, "#")
	switch {
	case shortHex.MatchString(text):
		return fmt.Sprintf("#%[1]c%[1]c%[2]c%[2]c%[3]c%[3]c", digits[0], digits[1], digits[2])
	case bareHex.MatchString(text):
		return "#" + text
	}
	return ""
}

// labText is L, a and b in that order, each with or without *, = or : and with
// a minus from a keyboard or a typesetter.
var labText = regexp.MustCompile(`(?i)^L` + labValue + `a` + labValue + `b` + labValue + `$`)

const (
	labValue   = `\*?\s*[=:]?\s*([-+−]?\d+(?:\.\d+)?)[\s,;]*`
	labExample = `a colour such as "L 52 a 10 b -30"`
)

// ParseLab reads a colour of a surface as "L 52 a 10 b -30", as an instrument
// gives it for D65 and 2°. The error is a *quantity.Error.
func ParseLab(text string) (Lab, error) {
	parts := labText.FindStringSubmatch(strings.TrimSpace(text))
	if parts == nil {
		return Lab{}, refused(text, labExample+", each with its letter and a point for decimals", "")
	}
	var v [3]float64
	for i, part := range parts[1:] {
		x, err := strconv.ParseFloat(strings.Replace(part, "−", "-", 1), 64)
		if err != nil {
			return Lab{}, refused(text, labExample, "")
		}
		v[i] = x
	}
	c := Lab{v[0], v[1], v[2]}
	if c.L < 0 || c.L > 100 {
		return Lab{}, refused(text, "a lightness L of 0 to 100; of a metallic take the angle at which it does not glare", "")
	}
	if c.Chroma() > 200 {
		return Lab{}, refused(text, "an a and a b of a surface: seldom beyond 100 either way", "")
	}
	return c, c.hasSurface(text)
}

// hasSurface is the error for a colour that no surface has, nil for others. It
// offers the purest that one has, of the same lightness and hue.
func (c Lab) hasSurface(text string) error {
	has := func(c Lab) bool {
		_, off := SwatchOf(c.XYZ()).Reflectance()
		return off == 0
	}
	if has(c) {
		return nil
	}
	low, high := 0.0, 1.0
	for range 7 {
		if middle := (low + high) / 2; has(c.faded(middle)) {
			low = middle
		} else {
			high = middle
		}
	}
	near := c.faded(low)
	return refused(text, "a colour that a surface can have in daylight",
		fmt.Sprintf("L %g a %d b %d", near.L, int(near.A), int(near.B)))
}

// refused makes the error for a text, of which it shows the beginning.
func refused(text, expected, nearest string) error {
	const shown = 60
	if r := []rune(text); len(r) > shown {
		text = string(r[:shown]) + "…"
	}
	return &q.Error{Found: text, Expected: expected, Nearest: nearest}
}
