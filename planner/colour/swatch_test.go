package colour

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	q "coatwright/quantity"
)

func TestParseSwatch(t *testing.T) {
	red := Screen{192, 16, 32}.XYZ()
	for text, want := range map[string]XYZ{
		"#c01020":                     red,
		" #C01020 ":                   red,
		"L 52 a 10 b -30":             Lab{52, 10, -30}.XYZ(),
		"l 52, a 10, b -30":           Lab{52, 10, -30}.XYZ(),
		"L* 52.5 a* 10.25 b* −30.125": Lab{52.5, 10.25, -30.125}.XYZ(),
		"L=52; a=+10; b=-30":          Lab{52, 10, -30}.XYZ(),
		"L52a10b-30":                  Lab{52, 10, -30}.XYZ(),
		"400:0.5, 420:0.5, 440:0.5, 460:0.5, 480:0.5, 500:0.5, 520:0.5, 540:0.5, 560:0.5, 580:0.5, 600:0.5, 620:0.5, 640:0.5, 660:0.5, 680:0.5": flat(0.5).XYZ(),
	} {
		got, err := ParseSwatch(text)
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		nearXYZ(t, text, got.Colour, want, 1e-9)
	}
}

func TestParseSwatchRefuses(t *testing.T) {
	for text, want := range map[string]string{
		"c9ccd0":              `found "c9ccd0", expected a colour of a screen such as "#c9ccd0": red, green and blue with two digits each; did you mean "#c9ccd0"?`,
		"123456":              `found "123456", expected a colour of a screen such as "#c9ccd0": red, green and blue with two digits each; did you mean "#123456"?`,
		"#abc":                `found "#abc", expected a colour of a screen such as "#c9ccd0": red, green and blue with two digits each; did you mean "#aabbcc"?`,
		"#c9ccdg":             `found "#c9ccdg", expected a colour of a screen such as "#c9ccd0": red, green and blue with two digits each`,
		"L 52 a 10":           `found "L 52 a 10", expected a colour such as "L 52 a 10 b -30", each with its letter and a point for decimals`,
		"L 52,5 a 10 b -30":   `found "L 52,5 a 10 b -30", expected a colour such as "L 52 a 10 b -30", each with its letter and a point for decimals`,
		"L 152 a 10 b -30":    `found "L 152 a 10 b -30", expected a lightness L of 0 to 100; of a metallic take the angle at which it does not glare`,
		"L 52 a 999 b -30":    `found "L 52 a 999 b -30", expected an a and a b of a surface: seldom beyond 100 either way`,
		"L 50 a 120 b 100":    `found "L 50 a 120 b 100", expected a colour that a surface can have in daylight; did you mean "L 50 a 85 b 71"?`,
		"cherry":              `found "cherry", expected a colour such as "#c9ccd0" or "L 52 a 10 b -30", or a measured reflectance such as "400:0.05, 410:0.06" and on to 700`,
		"":                    `found "", expected a colour such as "#c9ccd0" or "L 52 a 10 b -30", or a measured reflectance such as "400:0.05, 410:0.06" and on to 700`,
		"400:0.05, 410:0.06":  `found "400:0.05, 410:0.06", expected readings from 420 nm or less to 680 nm or more, such as every 10 nm from 400 to 700`,
		"400:5, 410:6":        `found "400:5", expected a share of 0 to 1; did you mean "400:5 %"?`,
		"400:0,05, 410:0.06":  `found "05", expected a reading of a wavelength in nm and a share, such as "400:0.05" or "400: 5 %"`,
		"0.4:0.05, 0.41:0.06": `found "0.4:0.05", expected a wavelength in nm first, 200 to 2500, such as "400:0.05" or "400: 5 %"`,
		"400:x":               `found "400:x", expected a share after the wavelength, with a point for decimals, such as "400:0.05" or "400: 5 %"`,
		"400:-0.1":            `found "400:-0.1", expected a share of 0 to 1 or of 0 to 100 %, such as "400:0.05" or "400: 5 %"`,
		"400:NaN":             `found "400:NaN", expected a share of 0 to 1 or of 0 to 100 %, such as "400:0.05" or "400: 5 %"`,
		"400:120 %":           `found "400:120 %", expected a share of 0 to 1 or of 0 to 100 %, such as "400:0.05" or "400: 5 %"`,
		"410:0.5, 400:0.5":    `found "410:0.5, 400:0.5", expected wavelengths that rise; 400 nm comes after 410 nm`,
		"400:0.5, 400:0.5":    `found "400:0.5, 400:0.5", expected wavelengths that rise; 400 nm comes after 400 nm`,
		"400:0.5, 700:0.5":    `found "400:0.5, 700:0.5", expected a reading at least every 20 nm; none between 400 and 700 nm`,
	} {
		_, err := ParseSwatch(text)
		if err == nil || err.Error() != want {
			t.Errorf("ParseSwatch(%q) refuses with\n\t%v\nwant\n\t%s", text, err, want)
		}
	}
}

// What an error offers instead must itself be read.
func TestOffersAreGood(t *testing.T) {
	for _, text := range []string{"c9ccd0", "#abc", "ABC", "L 50 a 120 b 100", "L 30 a 60 b -128", "L 97.5 a -80 b 90", "L 99 a 40 b 0", "L 1 a -30 b 0"} {
		_, err := ParseSwatch(text)
		var e *q.Error
		if !errors.As(err, &e) || e.Nearest == "" {
			t.Errorf("%q is refused with %v", text, err)
			continue
		}
		if _, err := ParseSwatch(e.Nearest); err != nil {
			t.Errorf("%q is offered for %q, and refused: %v", e.Nearest, text, err)
		}
	}
}

func TestErrorsShowTheBeginning(t *testing.T) {
	_, err := ParseSwatch(strings.Repeat("ä", 1000))
	if err == nil || len([]rune(err.Error())) > 300 || !strings.Contains(err.Error(), "…") {
		t.Errorf("the error is %v", err)
	}
}

// every is a reading every so many nm from 380 to 780, written by a format.
func every(nm int, format, between string, share func(nm float64) float64) string {
	var out []string
	for x := 380; x <= 780; x += nm {
		out = append(out, fmt.Sprintf(format, x, share(float64(x))))
	}
	return strings.Join(out, between)
}

func TestParseReflectance(t *testing.T) {
	rising := func(nm float64) float64 { return (nm - 380) / 400 }
	percent := func(nm float64) float64 { return 100 * rising(nm) }
	for name, text := range map[string]string{
		"pairs":             every(10, "%d:%v", ", ", rising),
		"semicolons":        every(10, "%d:%v", "; ", rising),
		"by 5 nm":           every(5, "%d:%v", ",", rising),
		"by 20 nm":          every(20, "%d:%v", ",", rising),
		"percent":           every(10, "%d: %v %%", ", ", percent),
		"with units":        every(10, "%d nm: %v%%", ", ", percent),
		"units glued on":    every(10, "%dnm %v", ", ", rising),
		"lines":             every(10, "%d,%v", "\n", rising),
		"lines, titles":     "nm,R\n" + every(10, "%d,%v", "\r\n", rising) + "\n",
		"lines, title in %": "# from the test card\nwavelength;R [%]\n\n" + every(10, "%d;%v", "\n", percent),
		"tabs":              every(10, "%d\t%v", "\n", rising),
		"more than is seen": "300:0, 340:0, " + every(20, "%d:%v", ",", rising) + ", 1100:1",
	} {
		got, err := ParseReflectance(text)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for band, share := range got {
			near(t, name, share, rising(nanometres(band)), 1e-12)
		}
	}
}

// Beyond its ends a reading stays as it was last: CIE 15:2004.
func TestReflectanceStaysBeyondItsEnds(t *testing.T) {
	text := every(10, "%d:%v", ",", func(nm float64) float64 { return nm / 1000 })
	text = text[strings.Index(text, "420:"):strings.Index(text, ",690:")]
	got, err := ParseReflectance(text)
	if err != nil {
		t.Fatal(err)
	}
	for band, share := range got {
		near(t, "share", share, min(max(nanometres(band), 420), 680)/1000, 1e-12)
	}
}

// FuzzParseSwatch checks that any text is a colour that a surface can have, or
// is refused with a *quantity.Error of a bounded length.
func FuzzParseSwatch(f *testing.F) {
	for _, text := range []string{"#c9ccd0", "#abc", "L 52 a 10 b -30", "L* 52 a* 10 b* −30", "l99a200b0", "400:0.05, 410:0.06",
		every(20, "%d:%v", ",", func(float64) float64 { return 0.5 }), "nm,R %\n" + every(20, "%d,%v", "\n", func(float64) float64 { return 50 })} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ParseSwatch(text)
		if err != nil {
			var e *q.Error
			if !errors.As(err, &e) || len([]rune(e.Found)) > 61 {
				t.Errorf("%q is refused with %v", text, err)
			}
			return
		}
		r, off := s.Reflectance()
		if off != 0 {
			t.Errorf("%q is off by %v", text, off)
		}
		checkSmoothest(t, s.Colour, r, off)
	})
}

// FuzzParseReflectance checks that any text is a share at each band, or is
// refused with a *quantity.Error.
func FuzzParseReflectance(f *testing.F) {
	for _, format := range []string{"%d:%v", "%d nm: %v %%", "%d,%v"} {
		for _, between := range []string{",", "\n", ";"} {
			f.Add(every(20, format, between, func(nm float64) float64 { return nm / 1000 }))
		}
	}
	f.Add("380:0, 1e3:1")
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ParseReflectance(text)
		var e *q.Error
		if err != nil && !errors.As(err, &e) {
			t.Errorf("%q is refused with %v", text, err)
		}
		for band, share := range s {
			if !(share >= 0 && share <= 1) || math.IsNaN(share) {
				t.Errorf("%q reflects %v at band %d", text, share, band)
			}
		}
	})
}

// FuzzParseLab and FuzzParseScreen check that what is read is what stands there.
func FuzzParseLab(f *testing.F) {
	f.Add("L 52 a 10 b -30")
	f.Add("L*=52.5, a*=+10, b*=−30.125")
	f.Fuzz(func(t *testing.T, text string) {
		c, err := ParseLab(text)
		if err != nil {
			return
		}
		again, err := ParseLab(fmt.Sprintf("L %v a %v b %v", c.L, c.A, c.B))
		if err != nil || again != c {
			t.Errorf("%q is %+v, which is read as %+v, %v", text, c, again, err)
		}
	})
}

func FuzzParseScreen(f *testing.F) {
	f.Add("#c9ccd0")
	f.Add("#FFF")
	f.Fuzz(func(t *testing.T, text string) {
		c, err := ParseScreen(text)
		if err == nil && c.String() != strings.ToLower(strings.TrimSpace(text)) {
			t.Errorf("%q is read as %v", text, c)
		}
	})
}
