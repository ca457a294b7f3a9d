package quantity

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestParseSpace(t *testing.T) {
	for _, s := range []string{"15um", " 15 um ", "15\tum", "+15 um", "15.0 um", "015 um", "15 µm", "15 μm"} {
		if got, err := Parse[Length](s); err != nil || !near(float64(got), 15e-6) {
			t.Errorf("Parse(%q) = %v, %v, want 15 um", s, got, err)
		}
	}
}

func TestParseErrors(t *testing.T) {
	const lengths = "a length in one of: um, µm, mil, mm, cm, m, in, ft"
	const times = "a time in one of: s, min, h, d"
	for _, c := range []struct {
		in   string
		read func(string) (float64, error)
		want Error
	}{
		{"", read[Length], Error{"", `a length such as "15 um"`, ""}},
		{"um", read[Length], Error{"um", `a length such as "15 um"`, ""}},
		{"1.2.3 um", read[Length], Error{"1.2.3 um", `a length such as "15 um"`, ""}},
		{"15", read[Length], Error{"15", lengths, ""}},
		{"15 UM", read[Length], Error{"15 UM", lengths, "15 um"}},
		{"15 umm", read[Length], Error{"15 umm", lengths, "15 um"}},
		{"15milk", read[Length], Error{"15milk", lengths, "15mil"}},
		{"1e3 m", read[Length], Error{"1e3 m", lengths, ""}},
		{"15,5 um", read[Length], Error{"15,5 um", `a length such as "15 um"`, ""}},
		{"-5 min", read[Time], Error{"-5 min", `a time of zero or more, such as "20 min"`, ""}},
		{"20 mins", read[Time], Error{"20 mins", times, "20 min"}},
		{"20 weeks", read[Time], Error{"20 weeks", times, ""}},
		{"NaN min", read[Time], Error{"NaN min", `a time such as "20 min"`, ""}},
		{"-274 C", read[Temperature], Error{"-274 C", `a temperature of zero or more, such as "23 C"`, ""}},
		{"23 c", read[Temperature], Error{"23 c", "a temperature in one of: C, °C, K, F, °F", "23 C"}},
		{"85 gu", read[Gloss], Error{"85 gu", "a gloss at 60 degrees in one of: GU, no unit", "85 GU"}},
		{"P320", read[Grit], Error{"P320", `a P-grit number such as "320"`, ""}},
	} {
		_, err := c.read(c.in)
		var got *Error
		if !errors.As(err, &got) {
			t.Errorf("Parse(%q): error %v, want an *Error", c.in, err)
			continue
		}
		if diff := cmp.Diff(c.want, *got); diff != "" {
			t.Errorf("Parse(%q) (-want +got):\n%s", c.in, diff)
		}
	}
}

func TestErrorText(t *testing.T) {
	_, err := Parse[Time]("20 mins")
	want := `found "20 mins", expected a time in one of: s, min, h, d; did you mean "20 min"?`
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
}
