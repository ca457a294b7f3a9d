package calendar

import (
	"testing"
	"time"
)

// 60 activities in the shape of a plan: films with a mix, a wait and a window
// each, and bench work between them.
func BenchmarkSchedule60(b *testing.B) {
	var acts []Activity
	for n := range 15 {
		i := len(acts)
		film := []Lag{{After: i + 1, Min: 15 * time.Minute, Max: 4 * time.Hour}, {After: i}}
		var prep []Lag
		if n > 0 {
			prep = []Lag{{After: i - 2, Min: 30 * time.Minute, Max: 48 * time.Hour}}
		}
		acts = append(acts,
			Activity{ID: "prepare", Work: 45 * time.Minute, Lags: prep},
			Activity{ID: "mix", Work: 15 * time.Minute, Float: true},
			Activity{ID: "film", Work: 30 * time.Minute, Lags: film},
			Activity{ID: "flush", Work: 10 * time.Minute, Float: true, Lags: []Lag{{After: i + 2, Max: time.Hour}}})
	}
	shop := Shop{Hours: hours(b, "Mon-Thu 07:30-12:00 12:30-16:00; Fri 07:30-13:00"), Painters: 1}
	start := at(b, "2026-12-01 08:00")
	for b.Loop() {
		if _, err := Schedule(acts, shop, start); err != nil {
			b.Fatal(err)
		}
	}
}

// The cost of giving up: the most repairs there can be.
func BenchmarkScheduleNone60(b *testing.B) {
	acts := []Activity{{ID: "coat", Work: time.Hour}}
	for i := range 58 {
		acts = append(acts, Activity{ID: "letter", Work: time.Hour, Lags: []Lag{{After: i}}})
	}
	acts = append(acts, Activity{ID: "clear", Work: time.Hour, Lags: []Lag{{After: 0, Max: 2 * day}, {After: 58}}})
	shop := Shop{Hours: hours(b, "Mon-Fri 08:00-17:00"), Painters: 1}
	start := at(b, "2026-12-01 08:00")
	for b.Loop() {
		if _, err := Schedule(acts, shop, start); err == nil {
			b.Fatal("a schedule where there is none")
		}
	}
}
