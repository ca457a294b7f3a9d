package colour_test

import (
	"fmt"

	"coatwright/planner/colour"
)

// A red candy whose swatch is three coats over silver, laid over a brighter
// silver at the strength of its swatch.
func Example() {
	silver, _ := colour.ParseSwatch("#c9ccd0")
	red, _ := colour.ParseSwatch("#b01020")
	brighter, _ := colour.ParseSwatch("#d8dade")

	under, _ := colour.NewGround(silver, colour.Mirroring)
	over, _ := colour.NewGround(brighter, colour.Mirroring)
	candy, _ := colour.NewCandy(red, under, colour.Film{Coats: 3, Build: 9e-6, Strength: 1})
	work, _ := candy.Over(over, colour.Film{Coats: 1, Build: 9e-6, Strength: 1})

	for _, coat := range work.Strip(4) {
		fmt.Printf("%d coats: %s, %.1f from the coat before\n", coat.Coats, coat.Screen, coat.Change)
	}
	m := work.Nearest(red.Colour.Lab(), 12)
	fmt.Printf("nearest to the swatch: %d coats, %.1f from it; best %.2f coats\n", m.Coats, m.Left, m.Best)
	fmt.Printf("to stay under %g it may vary by %.0f %%\n", colour.JustVisible, work.Tolerance(3, colour.JustVisible).Percent())
	sag := work.Sag(3, 2)
	fmt.Printf("a sag twice as thick: %s, %.1f from the rest, %.0f darker\n", sag.Screen, sag.Change, sag.Darker)
	// Output:
	// 0 coats: #d8dade, 0.0 from the coat before
	// 1 coats: #d67b83, 30.5 from the coat before
	// 2 coats: #ca4049, 15.5 from the coat before
	// 3 coats: #bd1223, 8.9 from the coat before
	// 4 coats: #ad000b, 5.6 from the coat before
	// nearest to the swatch: 3 coats, 2.7 from it; best 3.22 coats
	// to stay under 1 it may vary by 5 %
	// a sag twice as thick: #950003, 9.5 from the rest, 10 darker
}
