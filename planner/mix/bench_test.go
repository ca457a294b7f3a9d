package mix

import (
	"testing"

	q "coatwright/quantity"
)

// each runs a computation as often as the benchmark asks for.
func each(b *testing.B, run func() error) {
	for b.Loop() {
		if err := run(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkShares(b *testing.B) {
	each(b, func() error { _, err := Shares(clear); return err })
}

func BenchmarkPours(b *testing.B) {
	each(b, func() error { _, err := Pours(clear, 320*ml); return err })
}

func BenchmarkSolids(b *testing.B) {
	each(b, func() error { _, err := Solids(clear); return err })
}

func BenchmarkOrder(b *testing.B) {
	each(b, func() error { _, err := Order(clear); return err })
}

func BenchmarkCheckOrder(b *testing.B) {
	each(b, func() error { CheckOrder(clear); return nil })
}

func BenchmarkReadings(b *testing.B) {
	pours, err := Pours(clear, 320*ml)
	if err != nil {
		b.Fatal(err)
	}
	each(b, func() error { ByCup(pours, common); ByScale(pours, Scale{1 * gram}); return nil })
}

func BenchmarkLeastByCup(b *testing.B) {
	each(b, func() error { _, err := LeastByCup(clear, common, 0.02); return err })
}

func BenchmarkCorrect(b *testing.B) {
	poured := volumes(200, 110, 45)
	each(b, func() error { _, err := Correct(clear, poured, 600*ml, 0.05); return err })
}

func BenchmarkFromScale(b *testing.B) {
	shown := []q.Mass{0.198, 0.305, 0.322}
	each(b, func() error { _, err := FromScale(clear, shown); return err })
}

func BenchmarkMost(b *testing.B) {
	left := map[string]q.Volume{"base": 130 * ml, "hardener": 50 * ml}
	each(b, func() error { _, err := Most(clear, left, 600*ml); return err })
}

func BenchmarkInBatches(b *testing.B) {
	in := Batching{Total: 2100 * ml, Work: 10 * hour, PotLife: 4 * hour, Stand: 30 * minute, Size: 600 * ml, Lines: common}
	each(b, func() error { _, err := InBatches(in); return err })
}

func BenchmarkStrengthsOf(b *testing.B) {
	each(b, func() error { _, err := StrengthsOf(clear, "thinner"); return err })
}

func BenchmarkRooms(b *testing.B) {
	poured := volumes(200, 100, 20)
	each(b, func() error { _, err := Rooms(clear, poured); return err })
}

func BenchmarkParseRatio(b *testing.B) {
	each(b, func() error { _, err := ParseRatio("2 : 1 + 5..10 %", OfBefore); return err })
}
