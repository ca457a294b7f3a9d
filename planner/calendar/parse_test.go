package calendar

import (
	"errors"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// hours reads hours that must be right.
func hours(tb testing.TB, s string) Hours {
	tb.Helper()
	h, err := ParseHours(s)
	if err != nil {
		tb.Fatal(err)
	}
	return h
}

func TestParseHours(t *testing.T) {
	for _, c := range []struct {
		in, want string
		longest  time.Duration
	}{
		{"Mon-Fri 08:00-17:00", "Mon-Fri 08:00-17:00", 9 * time.Hour},
		{"Mon-Thu 07:30-12:00 12:30-16:00; Fri 07:30-13:00", "Mon-Thu 07:30-12:00 12:30-16:00; Fri 07:30-13:00", 5*time.Hour + 30*time.Minute},
		{"Sat,Sun 9:00-12:00", "Sat-Sun 09:00-12:00", 3 * time.Hour},
		{"sunday, MON – tue 8:00 - 12:00, 13:00–17:00", "Mon-Tue,Sun 08:00-12:00 13:00-17:00", 4 * time.Hour},
		{"Wed 13:00-17:00 08:00-12:00", "Wed 08:00-12:00 13:00-17:00", 4 * time.Hour},
		{"Wed 12:00-17:00 08:00-12:00", "Wed 08:00-17:00", 9 * time.Hour},
		{"Wed 12:00-17:00; Mon,Wed,Fri 08:00-12:00", "Mon,Fri 08:00-12:00; Wed 08:00-17:00", 9 * time.Hour},
		{"Mon 22:00-24:00; Tue 00:00-06:00", "Mon 22:00-24:00; Tue 00:00-06:00", 8 * time.Hour},
		{"Sun 22:00-24:00; Mon 00:00-06:00 12:00-13:00", "Mon 00:00-06:00 12:00-13:00; Sun 22:00-24:00", 8 * time.Hour},
		{"Fri-Mon 10:00-11:00", "Mon,Fri-Sun 10:00-11:00", time.Hour},
		{"Mon-Sun 00:00-24:00", "Mon-Sun 00:00-24:00", forever},
	} {
		h := hours(t, c.in)
		if got := h.String(); got != c.want {
			t.Errorf("ParseHours(%q) = %q, want %q", c.in, got, c.want)
		}
		if got := h.Longest(); got != c.longest {
			t.Errorf("ParseHours(%q).Longest() = %v, want %v", c.in, got, c.longest)
		}
	}
	if got := (Hours{}).String(); got != "" {
		t.Errorf("zero Hours = %q, want none", got)
	}
}

func TestParseHoursErrors(t *testing.T) {
	const (
		days  = "a day from Mon to Sun; days as Sat,Sun and ranges as Mon-Fri"
		both  = "days and then hours, as in Mon-Fri 08:00-17:00"
		pair  = "an opening and a closing time, as in 08:00-17:00"
		clock = "a time of day from 00:00 to 24:00, as in 07:30"
		later = "a closing time after the opening time; work over midnight is written as a span to 24:00 and one from 00:00 of the next day"
	)
	for _, c := range []struct {
		in   string
		want HoursError
	}{
		{"", HoursError{Found: "", Expected: both}},
		{"Mon-Fri", HoursError{Found: "Mon-Fri", Expected: both}},
		{"08:00-17:00", HoursError{Found: "08:00-17:00", Expected: both}},
		{"Mon-Fri 08:00-17:00;", HoursError{Found: "", Expected: both}},
		{"Mno-Fri 08:00-17:00", HoursError{Found: "Mno", Expected: days, Nearest: "Mon"}},
		{"Mon-Thurs 08:00-17:00", HoursError{Found: "Thurs", Expected: days, Nearest: "Thu"}},
		{"Mon,Wensday 08:00-17:00", HoursError{Found: "Wensday", Expected: days, Nearest: "Wednesday"}},
		{"weekdays 08:00-17:00", HoursError{Found: "weekdays", Expected: days}},
		{"Mon Tue 08:00-17:00", HoursError{Found: "Mon Tue", Expected: days}},
		{"Mon 08:00", HoursError{Found: "08:00", Expected: pair}},
		{"Mon 8-17", HoursError{Found: "8", Expected: clock}},
		{"Mon 08:00-24:01", HoursError{Found: "24:01", Expected: clock}},
		{"Mon 08:00-12:60", HoursError{Found: "12:60", Expected: clock}},
		{"Mon 08:00-12:5", HoursError{Found: "12:5", Expected: clock}},
		{"Mon 08:00-+9:00", HoursError{Found: "+9:00", Expected: clock}},
		{"Mon 17:00-08:00", HoursError{Found: "17:00-08:00", Expected: later}},
		{"Mon 08:00-08:00", HoursError{Found: "08:00-08:00", Expected: later}},
		{"Mon-Wed 08:00-12:00; Tue 11:00-15:00", HoursError{
			Found: "Tue 11:00-15:00", Expected: "spans that do not overlap, after Tue 08:00-12:00"}},
	} {
		_, err := ParseHours(c.in)
		var got *HoursError
		if !errors.As(err, &got) {
			t.Errorf("ParseHours(%q) = %v, want a *HoursError", c.in, err)
			continue
		}
		if diff := cmp.Diff(c.want, *got); diff != "" {
			t.Errorf("ParseHours(%q) (-want +got):\n%s", c.in, diff)
		}
	}
}

func FuzzParseHours(f *testing.F) {
	for _, s := range []string{
		"Mon-Fri 08:00-17:00", "Mon-Thu 07:30-12:00 12:30-16:00; Fri 07:30-13:00", "Sat,Sun 9:00-12:00",
		"Sun 22:00-24:00; Mon 00:00-06:00", "Mon-Sun 00:00-24:00", "Fri-Mon 0:00-0:01", "Mno 8-", ";;", "Mon 08:00-17:00, – ",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		h, err := ParseHours(s)
		if err != nil {
			var he *HoursError
			if !errors.As(err, &he) || he.Expected == "" {
				t.Fatalf("ParseHours(%q) = %v, want a *HoursError with what is expected", s, err)
			}
			return
		}
		again, err := ParseHours(h.String())
		if err != nil {
			t.Fatalf("ParseHours(%q) gives %q, which does not read: %v", s, h, err)
		}
		if diff := cmp.Diff(h, again, cmp.AllowUnexported(Hours{}, span{})); diff != "" {
			t.Fatalf("%q read again (-first +again):\n%s", h, diff)
		}
		if l := h.Longest(); l < time.Minute {
			t.Fatalf("ParseHours(%q).Longest() = %v, want a minute or more", s, l)
		}
	})
}
