package mix_test

import (
	"fmt"

	"coatwright/planner/mix"
	q "coatwright/quantity"
)

const ml = 1e-6 // m3

// Two parts to one, and 5 to 15 % of the first.
func recipe() []mix.Part {
	return []mix.Part{
		{Name: "base", Density: 990, Parts: 2},
		{Name: "hardener", Density: 1070, Parts: 1, Into: []string{"base"}, Starts: true},
		{Name: "thinner", Density: 850, Of: "base", Share: 0.10, Range: q.Range[q.Fraction]{Low: 0.05, High: 0.15}, Thins: true},
	}
}

func ExamplePours() {
	pours, err := mix.Pours(recipe(), 320*ml)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range mix.ByScale(pours, mix.Scale{Resolution: 0.001}) {
		fmt.Printf("%s to %.0f g, right within %.1f %%\n", r.Name, r.Mark.Grams(), r.Worst.Percent())
	}
	// Output:
	// base to 198 g, right within 0.3 %
	// hardener to 305 g, right within 0.9 %
	// thinner to 322 g, right within 5.9 %
}

func ExampleCorrect() {
	poured, err := mix.FromScale(recipe(), []q.Mass{0.198, 0.3157})
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := mix.Correct(recipe(), poured, 600*ml, 0.05)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c.Verdict)
	for _, p := range c.Exact.Add {
		fmt.Printf("%.0f mL of %s, to %.0f mL\n", p.Volume.Millilitres(), p.Name, p.Mark.Millilitres())
	}
	// Output:
	// out of the range: add to it
	// 20 mL of base, to 330 mL
	// 22 mL of thinner, to 352 mL
}

func ExampleCheckOrder() {
	parts := recipe()
	parts[0], parts[2] = parts[2], parts[0]
	for _, b := range mix.CheckOrder(parts) {
		fmt.Println(b.Text)
	}
	// Output:
	// pour 1: thinner only thins, and hardener is not in the cup yet; pour hardener first
	// pour 1: thinner only thins, and base is not in the cup yet; pour base first
	// pour 2: hardener goes into base, and none is in the cup yet; pour base first
}
