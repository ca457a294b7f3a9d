package calendar

import (
	"errors"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// shift is a slot as it is written in these tests: "Tue 08:00-08:30".
func shift(s Slot) string { return s.Start.Format("Mon 15:04") + s.End.Format("-15:04") }

// From Tuesday 08:00, one painter, unless the case says otherwise.
func TestSchedule(t *testing.T) {
	const h, m = time.Hour, time.Minute
	for _, c := range []struct {
		name     string
		hours    string
		painters int
		start    string
		acts     []Activity
		want     []string
	}{
		{name: "one after another", acts: []Activity{
			{ID: "wash", Work: 30 * m}, {ID: "scuff", Work: h}, {ID: "wipe", Work: 10 * m},
		}, want: []string{"Tue 08:00-08:30", "Tue 08:30-09:30", "Tue 09:30-09:40"}},

		{name: "two painters", painters: 2, acts: []Activity{
			{ID: "wash", Work: 30 * m}, {ID: "scuff", Work: h}, {ID: "wipe", Work: 10 * m},
		}, want: []string{"Tue 08:00-08:30", "Tue 08:00-09:00", "Tue 08:30-08:40"}},

		{name: "work fills a wait, and what does not fit comes after", acts: []Activity{
			{ID: "coat 1", Work: 30 * m},
			{ID: "coat 2", Work: 30 * m, Lags: []Lag{{After: 0, Min: h}}},
			{ID: "long", Work: 70 * m},
			{ID: "short", Work: 50 * m},
		}, want: []string{"Tue 08:00-08:30", "Tue 09:30-10:00", "Tue 10:00-11:10", "Tue 08:30-09:20"}},

		{name: "waits run overnight, work does not", acts: []Activity{
			{ID: "fill", Work: 8*h + 30*m},
			{ID: "sand", Work: h, Lags: []Lag{{After: 0, Min: 12 * h}}},
		}, want: []string{"Tue 08:00-16:30", "Wed 08:00-09:00"}},

		{name: "no work over a break", hours: "Mon-Fri 08:00-12:00 13:00-17:00", acts: []Activity{
			{ID: "sand", Work: 3 * h}, {ID: "coat", Work: 90 * m},
		}, want: []string{"Tue 08:00-11:00", "Tue 13:00-14:30"}},

		{name: "over a weekend", start: "2026-12-04 16:00", acts: []Activity{
			{ID: "coat", Work: h}, {ID: "sand", Work: h, Lags: []Lag{{After: 0, Min: 2 * h}}},
		}, want: []string{"Fri 16:00-17:00", "Mon 08:00-09:00"}},

		{name: "work over midnight", hours: "Tue 20:00-24:00; Wed 00:00-04:00", acts: []Activity{
			{ID: "coat", Work: 6 * h},
		}, want: []string{"Tue 20:00-02:00"}},

		{name: "no work, no hours", acts: []Activity{
			{ID: "coat", Work: h}, {ID: "cured", Lags: []Lag{{After: 0, Min: 12 * h}}},
		}, want: []string{"Tue 08:00-09:00", "Tue 21:00-21:00"}},

		{name: "a clear to unmask within 4 h waits for the morning", start: "2026-12-01 16:30", acts: []Activity{
			{ID: "clear", Work: 30 * m},
			{ID: "unmask", Work: 15 * m, Lags: []Lag{{After: 0, Min: 30 * m, Max: 4 * h}}},
		}, want: []string{"Wed 08:00-08:30", "Wed 09:00-09:15"}},

		{name: "a window pulls a chain along", start: "2026-12-01 15:00", acts: []Activity{
			{ID: "mix", Work: 15 * m},
			{ID: "coat 1", Work: 30 * m, Lags: []Lag{{After: 0, Max: 2 * h}}},
			{ID: "coat 2", Work: 30 * m, Lags: []Lag{{After: 1, Min: 2 * h, Max: 4 * h}}},
		}, want: []string{"Wed 08:00-08:15", "Wed 08:15-08:45", "Wed 10:45-11:15"}},

		{name: "a window keeps long work out", acts: []Activity{
			{ID: "coat", Work: h},
			{ID: "other part", Work: 5 * h},
			{ID: "level", Work: h, Lags: []Lag{{After: 0, Max: 2 * h}}},
		}, want: []string{"Tue 08:00-09:00", "Tue 10:00-15:00", "Tue 09:00-10:00"}},

		{name: "work keeps its place when the night is the reason", start: "2026-12-01 16:00", acts: []Activity{
			{ID: "clear", Work: 30 * m},
			{ID: "other part", Work: 3 * h},
			{ID: "unmask", Work: 15 * m, Lags: []Lag{{After: 0, Min: 45 * m, Max: 4 * h}}},
		}, want: []string{"Wed 08:00-08:30", "Wed 08:30-11:30", "Wed 11:30-11:45"}},

		{name: "two cannot both go first", painters: 2, acts: []Activity{
			{ID: "other part", Work: 2 * h},
			{ID: "coat", Work: h},
			{ID: "unmask", Work: h, Lags: []Lag{{After: 1, Max: 30 * m}}},
			{ID: "clean", Work: h, Lags: []Lag{{After: 1, Max: 30 * m}}},
		}, want: []string{"Tue 08:00-10:00", "Tue 08:30-09:30", "Tue 09:30-10:30", "Tue 10:00-11:00"}},

		{name: "a mix is made just in time, in the wait", acts: []Activity{
			{ID: "coat 1", Work: 30 * m},
			{ID: "mix", Work: 15 * m, Float: true},
			{ID: "coat 2", Work: 30 * m, Lags: []Lag{{After: 0, Min: 2 * h}, {After: 1, Min: 10 * m}}},
		}, want: []string{"Tue 08:00-08:30", "Tue 10:05-10:20", "Tue 10:30-11:00"}},

		{name: "a mix goes to the day of its coat", start: "2026-12-01 16:00", acts: []Activity{
			{ID: "coat 1", Work: 30 * m},
			{ID: "mix", Work: 15 * m, Float: true},
			{ID: "coat 2", Work: 30 * m, Lags: []Lag{{After: 0, Min: 17 * h}, {After: 1}}},
		}, want: []string{"Tue 16:00-16:30", "Wed 09:15-09:30", "Wed 09:30-10:00"}},

		{name: "mixes that follow each other float together", acts: []Activity{
			{ID: "base", Work: 10 * m, Float: true},
			{ID: "candy", Work: 10 * m, Float: true, Lags: []Lag{{After: 0}}},
			{ID: "wash", Work: 2 * h},
			{ID: "coat", Work: 30 * m, Lags: []Lag{{After: 1}, {After: 2, Min: h}}},
		}, want: []string{"Tue 11:00-11:10", "Tue 11:10-11:20", "Tue 08:20-10:20", "Tue 11:20-11:50"}},

		{name: "a flush stays in its window", acts: []Activity{
			{ID: "coat", Work: 30 * m},
			{ID: "flush", Work: 10 * m, Float: true, Lags: []Lag{{After: 0, Max: 20 * m}}},
			{ID: "reassemble", Work: h, Lags: []Lag{{After: 0, Min: 4 * h}}},
		}, want: []string{"Tue 08:00-08:30", "Tue 08:50-09:00", "Tue 12:30-13:30"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.hours == "" {
				c.hours = "Mon-Fri 08:00-17:00"
			}
			if c.start == "" {
				c.start = "2026-12-01 08:00"
			}
			shop := Shop{Hours: hours(t, c.hours), Painters: max(c.painters, 1)}
			slots, err := Schedule(c.acts, shop, at(t, c.start))
			if err != nil {
				t.Fatal(err)
			}
			if err := verify(c.acts, shop, at(t, c.start), slots); err != nil {
				t.Error(err)
			}
			var got []string
			for _, s := range slots {
				got = append(got, shift(s))
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

func TestScheduleErrors(t *testing.T) {
	const h = time.Hour
	shop := Shop{Hours: hours(t, "Mon-Fri 08:00-17:00"), Painters: 1}
	for _, c := range []struct {
		name string
		shop Shop
		acts []Activity
		want error
		text string
	}{
		{"longer than a day", shop, []Activity{{ID: "sand", Work: 10 * h}},
			&TooLongError{ID: "sand", Work: 10 * h, Longest: 9 * h},
			"sand takes 10 h in one go, and the longest working span is 9 h"},
		{"never open", Shop{Painters: 1}, []Activity{{ID: "sand", Work: h}},
			&TooLongError{ID: "sand", Work: h},
			"sand takes 1 h in one go, and the longest working span is 0 min"},
		// From 17:00 the next opening is 15 h away.
		{"a window in the night", shop, []Activity{
			{ID: "clear", Work: h}, {ID: "unmask", Work: h, Lags: []Lag{{After: 0, Min: 10 * h, Max: 12*h + h/2}}}},
			&WindowError{ID: "unmask", After: "clear", Min: 10 * h, Max: 12*h + h/2, Best: 15 * h},
			"unmask must start from 10 h to 12 h 30 min after the end of clear, and the shortest wait found is 15 h"},
		{"a window shorter than its wait", shop, []Activity{
			{ID: "clear", Work: h}, {ID: "unmask", Work: h, Lags: []Lag{{After: 0, Min: 3 * h, Max: 2 * h}}}},
			&WindowError{ID: "unmask", After: "clear", Min: 3 * h, Max: 2 * h, Best: 3 * h},
			"unmask must start from 3 h to 2 h after the end of clear, and the shortest wait found is 3 h"},
		{"a window too short for what must come between", shop, []Activity{
			{ID: "coat", Work: h},
			{ID: "letter", Work: 5 * h, Lags: []Lag{{After: 0}}},
			{ID: "clear", Work: h, Lags: []Lag{{After: 0, Max: 4 * h}, {After: 1}}}},
			&WindowError{ID: "clear", After: "coat", Max: 4 * h, Best: 5 * h},
			"clear must start within 4 h after the end of coat, and the shortest wait found is 5 h"},
		{"two windows that exclude each other", shop, []Activity{
			{ID: "coat", Work: h},
			{ID: "clear", Work: h, Lags: []Lag{{After: 0, Min: 2 * h, Max: 3 * h}, {After: 0, Max: h}}}},
			&WindowError{ID: "clear", After: "coat", Max: h, Best: 2 * h},
			"clear must start within 1 h after the end of coat, and the shortest wait found is 2 h"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Schedule(c.acts, c.shop, at(t, "2026-12-01 08:00"))
			if diff := cmp.Diff(c.want, err); diff != "" {
				t.Fatalf("(-want +got):\n%s", diff)
			}
			if err.Error() != c.text {
				t.Errorf("Error() = %q, want %q", err, c.text)
			}
		})
	}
}

// What a caller must not ask is neither of the errors that speak of the shop.
func TestScheduleRefuses(t *testing.T) {
	shop := Shop{Hours: hours(t, "Mon-Fri 08:00-17:00"), Painters: 1}
	for _, c := range []struct {
		name string
		shop Shop
		acts []Activity
	}{
		{"no painter", Shop{Hours: shop.Hours}, nil},
		{"work below zero", shop, []Activity{{Work: -1}}},
		{"after itself", shop, []Activity{{Lags: []Lag{{After: 0}}}}},
		{"after none", shop, []Activity{{Lags: []Lag{{After: -1}}}}},
		{"wait below zero", shop, []Activity{{}, {Lags: []Lag{{Min: -1}}}}},
		{"limit below zero", shop, []Activity{{}, {Lags: []Lag{{Max: -1}}}}},
	} {
		_, err := Schedule(c.acts, c.shop, at(t, "2026-12-01 08:00"))
		var long *TooLongError
		var window *WindowError
		if err == nil || errors.As(err, &long) || errors.As(err, &window) {
			t.Errorf("%s: error %v, want one of its own", c.name, err)
		}
	}
}
