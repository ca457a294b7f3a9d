package quantity_test

import (
	"fmt"

	q "coatwright/quantity"
)

func ExampleShow() {
	film := q.Length(15e-6)
	for _, s := range q.Systems() {
		fmt.Println(s.Name+":", q.Show(s, film))
	}
	// Output:
	// metric: 15 µm
	// bar: 15 µm
	// us: 0.591 mil
}

func ExampleSystem_Text() {
	fmt.Println(q.US.Text("The air is 21.5 °C; it wants 15 to 32 °C, and a part 3 K above the dew point."))
	// Output: The air is 70.7 °F; it wants 59 to 89.6 °F, and a part 5.4 °F above the dew point.
}

func ExampleSystem_Annotate() {
	fmt.Println(q.US.Annotate("Lay two coats of 15 µm, 10 min apart."))
	// Output: Lay two coats of 15 µm (0.59 mil), 10 min apart.
}

func ExampleHTML() {
	fmt.Println(q.HTML(`<p title="15 µm">Lay <em>15&nbsp;µm</em>.</p>`, q.US.Text))
	// Output: <p title="15 µm">Lay <em>0.59&nbsp;mil</em>.</p>
}
