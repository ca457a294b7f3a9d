package mix

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// Worked by hand. The pot lives are published: epoxy 4 h and polyurethane 2 h at
// 21 C (UFGS-09971), some of them to stand for 30 min (MIL-HDBK-1110, 7.3.1.1),
// polyurethane for none (UFGS-09971). A waterborne mix stands for 15 min and
// keeps for days: common practice, no published source.
func TestInBatches(t *testing.T) {
	for _, c := range []struct {
		name      string
		in        Batching
		count     int
		each      float64 // mL
		left      float64 // mL
		byPotLife bool
		second    q.Time // when the second is mixed
		from      q.Time // when the first is used
		until     q.Time // when the first is gone
		dies      q.Time // when the first is past use
	}{
		{"epoxy for ten hours", Batching{Total: 2100 * ml, Work: 10 * hour, PotLife: 4 * hour, Stand: 30 * minute}, 3, 700, 0, true,
			200 * minute, 30 * minute, 230 * minute, 240 * minute},
		{"polyurethane, just in time", Batching{Total: 600 * ml, Work: 2 * hour, PotLife: 2 * hour}, 1, 600, 0, false,
			0, 0, 2 * hour, 2 * hour},
		{"polyurethane, a minute more", Batching{Total: 600 * ml, Work: 121 * minute, PotLife: 2 * hour}, 2, 300, 0, true,
			60.5 * minute, 0, 60.5 * minute, 2 * hour},
		{"waterborne, by the cup", Batching{Total: 1300 * ml, Work: 60 * minute, PotLife: 72 * hour, Stand: 15 * minute, Size: 600 * ml, Lines: common}, 3, 440, 20, false,
			20 * minute, 15 * minute, 35 * minute, 72 * hour},
		{"one that keeps", Batching{Total: 40 * ml, Work: 60 * minute, Stand: 15 * minute}, 1, 40, 0, false,
			0, 15 * minute, 75 * minute, 0},
		{"no smaller than can be measured", Batching{Total: 100 * ml, Work: 3 * hour, PotLife: 2 * hour, Least: 80 * ml}, 2, 80, 60, true,
			90 * minute, 0, 90 * minute, 2 * hour},
		{"a cup that ends between lines", Batching{Total: 104 * ml, Size: 52 * ml, Lines: common}, 2, 52, 0, false, 0, 0, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := InBatches(c.in)
			if err != nil {
				t.Fatal(err)
			}
			if len(got.Batches) != c.count || got.ByPotLife != c.byPotLife {
				t.Fatalf("%d batches, by pot life %v, want %d and %v", len(got.Batches), got.ByPotLife, c.count, c.byPotLife)
			}
			near(t, "each", got.Each.Millilitres(), c.each, 1e-9)
			near(t, "left", got.Left.Millilitres(), c.left, 1e-9)
			first := got.Batches[0]
			if first.Mix != 0 {
				t.Errorf("the first is mixed at %v", first.Mix)
			}
			near(t, "from", float64(first.From), float64(c.from), 1e-9)
			near(t, "until", float64(first.Until), float64(c.until), 1e-9)
			near(t, "dies", float64(first.Dies), float64(c.dies), 1e-9)
			if c.count > 1 {
				near(t, "second", float64(got.Batches[1].Mix), float64(c.second), 1e-9)
			}
		})
	}
}

func TestInBatchesRefuses(t *testing.T) {
	for _, c := range []struct {
		name string
		in   Batching
		want string
	}{
		{"nothing", Batching{},
			"found nothing to mix; expected a volume above 0"},
		{"below nothing", Batching{Total: -1},
			"found -1; expected a volume of mix, 0 or more"},
		{"two things wrong", Batching{Total: 1, Work: -1, Stand: q.Time(math.Inf(1))},
			"found -1; expected a time of work, 0 or more\nfound +Inf; expected a time to stand, 0 or more"},
		{"past use before it may be used", Batching{Total: 1, PotLife: 20 * minute, Stand: 30 * minute},
			"found a pot life of 20 min, and the mix must stand for 30 min first; expected a pot life that outlasts the standing"},
		{"a least batch too big for the cup", Batching{Total: 1 * ml, Size: 50 * ml, Least: 80 * ml},
			"the least batch that can be measured, 80 mL, does not fit a cup of 50 mL; expected a bigger cup or a finer scale"},
		{"no end of batches", Batching{Total: 1 * ml, Work: 100 * hour, PotLife: 31 * minute, Stand: 30 * minute},
			"it takes 6000 batches; expected at most 100: a bigger cup, or a mix that keeps longer after its stand"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := InBatches(c.in)
			if err == nil || err.Error() != c.want {
				t.Errorf("InBatches refuses with\n\t%v\nwant\n\t%s", err, c.want)
			}
		})
	}
}

// The batches follow on each other without a gap, fit the cup, are enough in
// all, are gone before they are past use, and could not be one fewer.
func TestInBatchesProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Batching{
			Total: q.Volume(rapid.Float64Range(10, 5000).Draw(t, "total") * ml),
			Work:  q.Time(rapid.Float64Range(0, 600).Draw(t, "work") * minute),
			Stand: q.Time(rapid.Float64Range(0, 30).Draw(t, "stand") * minute),
			Size:  q.Volume(rapid.SampledFrom([]float64{0, 150, 600}).Draw(t, "cup") * ml),
			Lines: rapid.SampledFrom([]Cup{nil, common}).Draw(t, "lines"),
			Least: q.Volume(rapid.Float64Range(0, 150).Draw(t, "least") * ml),
		}
		if rapid.Bool().Draw(t, "cures") {
			in.PotLife = in.Stand + q.Time(rapid.Float64Range(15, 300).Draw(t, "life after the stand")*minute)
		}
		got, err := InBatches(in)
		if err != nil {
			t.Fatal(err)
		}
		n := float64(len(got.Batches))
		near(t, "enough", float64(got.Each)*n, float64(in.Total+got.Left), 1e-9)
		if in.Size > 0 && got.Each > in.Size*(1+1e-9) || got.Each < in.Least*(1-1e-9) {
			t.Errorf("batches of %v, with a cup of %v and at least %v", got.Each, in.Size, in.Least)
		}
		at := in.Stand
		for _, b := range got.Batches {
			near(t, "no gap", float64(b.From), float64(at), 1e-9)
			near(t, "stands", float64(b.From), float64(b.Mix+in.Stand), 1e-9)
			if in.PotLife > 0 && b.Until > b.Dies*(1+1e-8) {
				t.Errorf("%+v is past use before it is gone", b)
			}
			at = b.Until
		}
		near(t, "all the work", float64(at), float64(in.Stand+in.Work), 1e-9)
		if fewer := n - 1; fewer > 0 {
			fits := in.Size == 0 || float64(in.Total)/fewer <= float64(in.Size)
			lasts := in.PotLife == 0 || float64(in.Work)/fewer <= float64(in.PotLife-in.Stand)
			if fits && lasts {
				t.Errorf("%v batches, and %v would do", n, fewer)
			}
			if got.ByPotLife != (fits && !lasts) {
				t.Errorf("by pot life %v, where one fewer fits %v and lasts %v", got.ByPotLife, fits, lasts)
			}
		}
	})
}
