package mix

import (
	"fmt"

	q "coatwright/quantity"
)

// FromMarks returns what was poured of each part, from the marks that the cup
// reached after each pour. Parts after the last mark are not yet poured.
func FromMarks(parts []Part, marks []q.Volume) ([]q.Volume, error) {
	return rises(parts, marks, "the cup")
}

// FromScale returns the volumes of what was poured of each part, from what the
// scale showed after each pour when it was set to zero once, under the empty cup.
func FromScale(parts []Part, shown []q.Mass) ([]q.Volume, error) {
	masses, err := rises(parts, shown, "the scale")
	if err != nil {
		return nil, err
	}
	volumes := make([]q.Volume, len(parts))
	for i, p := range parts {
		v, err := convert(float64(masses[i]), p, true, false)
		if err != nil {
			return nil, wrong(i, p, err)
		}
		volumes[i] = q.Volume(v)
	}
	return volumes, nil
}

// rises are the steps from one reading to the next, one for each part.
func rises[Q q.Quantity](parts []Part, readings []Q, tool string) ([]Q, error) {
	if len(readings) > len(parts) {
		return nil, fmt.Errorf("found %d readings of %s for %d parts; expected one after each pour", len(readings), tool, len(parts))
	}
	out := make([]Q, len(parts))
	var before Q
	for i, r := range readings {
		if err := sound(float64(r), "a reading"); err != nil {
			return nil, wrong(i, parts[i], err)
		}
		if r < before {
			return nil, wrong(i, parts[i], fmt.Errorf("%s went down from %s to %s; expected readings that rise, with nothing set to zero in between",
				tool, q.Show(q.Metric, before), q.Show(q.Metric, r)))
		}
		out[i], before = r-before, r
	}
	return out, nil
}
