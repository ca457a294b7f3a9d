package quantity

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
)

// FuzzParse checks that any text is read as a number that can be reckoned with
// or refused with an *Error.
func FuzzParse(f *testing.F) {
	for _, c := range published {
		f.Add(c.in)
	}
	f.Add("5..10 %")
	f.Add("10..5 %")
	f.Add("5 to 10 min")
	f.Add("5–10 min")
	f.Add(strings.Repeat("9", 308) + " d")
	f.Fuzz(func(t *testing.T, s string) {
		length, err := Parse[Length](s)
		sound(t, s, float64(length), err)
		temperature, err := Parse[Temperature](s)
		sound(t, s, float64(temperature), err)
		difference, err := Parse[Difference](s)
		sound(t, s, float64(difference), err)
		r, err := ParseRange[Time](s)
		sound(t, s, float64(r.Low), err)
		sound(t, s, float64(r.High), err)
		if r.Low > r.High {
			t.Errorf("%q is read as %v, which runs backwards", s, r)
		}
	})
}

func sound(t *testing.T, s string, v float64, err error) {
	t.Helper()
	var e *Error
	if err != nil && !errors.As(err, &e) {
		t.Errorf("%q: %v is no *Error", s, err)
	}
	if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
		t.Errorf("%q is read as %v", s, v)
	}
}

// FuzzText checks that what is rewritten needs no rewriting, and that only
// foreign units are.
func FuzzText(f *testing.F) {
	for _, c := range texts {
		f.Add(c.metric)
		f.Add(c.us)
	}
	f.Add("00°F 20°F 000000") // each of these was found by fuzzing
	f.Add("700000000000000°C")
	f.Add("1" + strings.Repeat("0", 115) + " C")
	f.Fuzz(func(t *testing.T, text string) {
		settled(t, text)
		foreign(t, text)
	})
}

// FuzzHTML checks that tags and what is left out come through untouched.
func FuzzHTML(f *testing.F) {
	for _, page := range []string{
		"<p>Lay 15&nbsp;µm, <em>3 °C</em> above.</p>", `<a title="15 µm>">15 µm</a>`, "<!-- 15 µm -->", "<code>15 µm</code><pre>5 mm</pre>",
		"a < 5 mm &amp; &#169; &lt;", "<script>15 µm</scr", "</p", "<p title='", "5 m<sup>2</sup>",
	} {
		f.Add(page)
	}
	f.Fuzz(func(t *testing.T, page string) {
		if HTML(page, Metric.Text) != page {
			foreign(t, strings.ReplaceAll(page, "&", "°F")) // an entity may stand for any letter
		}
		before := pieces(page)
		after := pieces(HTML(page, US.Annotate))
		if !slices.Equal(tagsOf(before), tagsOf(after)) {
			t.Errorf("%q\nbecomes\n%q", page, after)
		}
		if again := HTML(HTML(page, US.Text), US.Text); again != HTML(page, US.Text) {
			t.Errorf("%q\nbecomes\n%q\nand again\n%q", page, HTML(page, US.Text), again)
		}
	})
}

// tagsOf are the tags of a page as they are written.
func tagsOf(page []piece) []string {
	var out []string
	for _, p := range page {
		out = append(out, p.tag)
	}
	return out
}
