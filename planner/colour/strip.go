package colour

import q "coatwright/quantity"

// Coat is how the work looks after some coats.
type Coat struct {
	Coats    int
	Depth    q.Number // beside the film of the swatch
	XYZ      XYZ
	Lab      Lab
	Screen   Screen
	OnScreen bool   // false where no screen shows it, and Screen is a paler colour
	Change   DeltaE // from the coat before; 0 for the bare ground
}

// Strip returns how the work looks from the bare ground to the given number of
// coats.
func (c Coating) Strip(coats int) []Coat {
	strip := make([]Coat, 0, max(coats, 0)+1)
	coat := c.passedBy(1)
	below := c.below
	for n := 0; n <= coats; n++ {
		if n > 0 {
			below = below.times(coat)
		}
		step := Coat{Coats: n, Depth: c.Depth(q.Number(n)), XYZ: above(below, c.ground.Returned).XYZ()}
		step.Lab = step.XYZ.Lab()
		step.Screen, step.OnScreen = step.XYZ.Screen()
		if n > 0 {
			step.Change = Difference(strip[n-1].Lab, step.Lab)
		}
		strip = append(strip, step)
	}
	return strip
}
