package colour

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// What a measured reflectance must have. Beyond 420 and 680 nm the eye sees so
// little that the last value may stand for the rest, as CIE 15:2004 recommends;
// instruments read every 10 or 20 nm.
const (
	shortest = 420.0 // nm, at or below which it must begin
	longest  = 680.0 // nm, at or beyond which it must end
	widest   = 20.0  // nm between two readings
)

const readingExample = `"400:0.05" or "400: 5 %"`

// ParseReflectance reads what an instrument read of a surface without its gloss:
// pairs of nm and share such as "400:0.05, 410:0.06", or a line for each such as
// "400,0.05", with a line of titles or without. A share may be in percent: with
// a % behind it, or in the titles. Between readings it goes straight, beyond
// them it stays. The error is a *quantity.Error.
func ParseReflectance(text string) (Spectrum, error) {
	lines, percent := readingTexts(text)
	readings := make([]reading, 0, len(lines))
	for _, line := range lines {
		r, err := parseReading(line, percent)
		if err != nil {
			return Spectrum{}, err
		}
		readings = append(readings, r)
	}
	if err := complete(text, readings); err != nil {
		return Spectrum{}, err
	}
	return resampled(readings), nil
}

// reading is a share of light at a wavelength.
type reading struct{ nm, share float64 }

// readingTexts parts a text into its readings, and says whether its titles have
// a %.
func readingTexts(text string) (out []string, percent bool) {
	isEnd := func(r rune) bool { return r == ',' || r == ';' }
	inLines := strings.Contains(strings.TrimSpace(text), "\n")
	if inLines {
		isEnd = func(r rune) bool { return r == '\n' }
	}
	for _, part := range strings.FieldsFunc(text, isEnd) {
		part = strings.TrimSpace(part)
		if part == "" || strings.HasPrefix(part, "#") {
			continue
		}
		if inLines && len(out) == 0 && !strings.ContainsAny(part[:1], "+-.0123456789") {
			percent = percent || strings.Contains(part, "%")
			continue
		}
		out = append(out, part)
	}
	return out, percent
}

// parseReading reads "400:0.05", "400 nm 5 %" or "400,0.05".
func parseReading(text string, percent bool) (reading, error) {
	shown := text
	if cut, found := strings.CutSuffix(text, "%"); found {
		text, percent = cut, true
	}
	fields := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(":=,; \t\r", r) })
	if len(fields) == 3 && fields[1] == "nm" {
		fields = []string{fields[0], fields[2]}
	}
	if len(fields) != 2 {
		return reading{}, refused(shown, "a reading of a wavelength in nm and a share, such as "+readingExample, "")
	}
	nm, err := strconv.ParseFloat(strings.TrimSuffix(fields[0], "nm"), 64)
	if err != nil || !(nm >= 200 && nm <= 2500) {
		return reading{}, refused(shown, "a wavelength in nm first, 200 to 2500, such as "+readingExample, "")
	}
	share, err := strconv.ParseFloat(fields[1], 64)
	if err != nil {
		return reading{}, refused(shown, "a share after the wavelength, with a point for decimals, such as "+readingExample, "")
	}
	if !percent && share > 1 && share <= 100 {
		return reading{}, refused(shown, "a share of 0 to 1", fmt.Sprintf("%g:%g %%", nm, share))
	}
	if percent {
		share /= 100
	}
	if !(share >= 0 && share <= 1) {
		return reading{}, refused(shown, "a share of 0 to 1 or of 0 to 100 %, such as "+readingExample, "")
	}
	return reading{nm, share}, nil
}

// complete is the error for readings that leave out what the eye sees.
func complete(text string, r []reading) error {
	for i := 1; i < len(r); i++ {
		if r[i].nm <= r[i-1].nm {
			return refused(text, fmt.Sprintf("wavelengths that rise; %g nm comes after %g nm", r[i].nm, r[i-1].nm), "")
		}
	}
	last := len(r) - 1
	if last < 0 || r[0].nm > shortest || r[last].nm < longest {
		return refused(text, fmt.Sprintf("readings from %g nm or less to %g nm or more, such as every 10 nm from 400 to 700", shortest, longest), "")
	}
	for i := 1; i < len(r); i++ {
		if gap := r[i].nm - r[i-1].nm; gap > widest && r[i].nm > nanometres(0) && r[i-1].nm < nanometres(Bands-1) {
			return refused(text, fmt.Sprintf("a reading at least every %g nm; none between %g and %g nm", widest, r[i-1].nm, r[i].nm), "")
		}
	}
	return nil
}

// resampled is the readings at the bands of a Spectrum.
func resampled(r []reading) Spectrum {
	var s Spectrum
	after := 0
	for band := range s {
		nm := nanometres(band)
		for after < len(r) && r[after].nm <= nm {
			after++
		}
		low, high := r[max(after-1, 0)], r[min(after, len(r)-1)]
		s[band] = low.share
		if high.nm > low.nm {
			part := math.Max(0, (nm-low.nm)/(high.nm-low.nm))
			s[band] += part * (high.share - low.share)
		}
	}
	return s
}
