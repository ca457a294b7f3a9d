package workout

import (
	"coatwright/planner/drying"
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// keeping is how long a mix keeps, and how long it must stand before.
type keeping struct {
	stand  q.Time
	life   q.Time        // today; zero for a mix that keeps
	at23   q.Time        // ... and at 23 C
	from   trace.Origin  // of at23
	air    q.Temperature // of the room
	strain q.Length      // mesh opening; zero for none
}

var (
	potLives = q.Range[q.Time]{Low: 60, High: 3650 * 24 * 3600}
	stands   = q.Range[q.Time]{Low: 0, High: 24 * 3600}
)

// keepFields ask for the warmth of the room, and of an own ratio for what its
// sheet says of how long the mix keeps.
func keepFields(r recipe) []Field {
	fields := []Field{{Key: "air", Label: "Air of the room", Hint: "21 C or 70 F", Default: "21 C"}}
	if r.material != nil {
		return fields
	}
	return append(fields,
		Field{Key: "life", Label: "Pot life at 23 °C", Hint: "2 h; left empty: it keeps", Optional: true},
		Field{Key: "stand", Label: "To stand before use", Hint: "15 min", Optional: true})
}

func readKeeping(e *Entry, r recipe) keeping {
	k := keeping{air: within(e, "air", workable)}
	switch {
	case r.material != nil:
		k.at23, k.stand, k.strain, k.from = r.material.PotLife, r.material.Stand, r.material.Strain, r.noted()
	case e.sound():
		k.at23, k.stand, k.from = within(e, "life", potLives), within(e, "stand", stands), entered("life")
	}
	k.life = drying.PotLife(k.at23, k.air)
	return k
}

// lifeFigure is the pot life of the day; the mix has one.
func (k keeping) lifeFigure() trace.Figure {
	return trace.Figure{
		Key: "pot-life", Name: "Pot life in this room", Value: q.ValueOf(k.life), Formula: drying.PotLifeFormula,
		Inputs: []trace.Input{
			trace.In("t(23 C)", "pot life at 23 °C", k.at23, k.from), trace.In("T", "air of the room", k.air, entered("air")),
			trace.In("E", "activation energy", q.MolarEnergy(drying.ActivationEnergy), trace.Origin{From: trace.FromSource}),
		},
		Remarks: []string{"From when the parts meet, the standing in it. A big cup warms itself and keeps less long; in the cold do not count on more."},
	}
}

// says tells what is done with the mix before it is used.
func (k keeping) says() []string {
	var says []string
	if k.stand > 0 {
		says = append(says, "Stir, let it stand for "+k.stand.String()+" under a lid, and stir once more. The standing counts in the pot life.")
	}
	if k.strain > 0 {
		says = append(says, "Strain it through a mesh of "+metric(k.strain)+".")
	}
	return says
}
