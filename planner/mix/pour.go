package mix

import (
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Pour is what a part comes to in a mix of a known size. Masses, or volumes, are
// all zero where the mix goes by the other and a density is not known.
type Pour struct {
	Name     string
	Volume   q.Volume
	Mass     q.Mass
	Mark     q.Volume // in the cup when this part has gone in
	MarkMass q.Mass   // on a scale that was set to zero once, with the cup empty
	Starts   bool     // the pot life starts with this pour, and not with one before
}

// PoursFormula is how Pours comes about.
var PoursFormula = trace.Formula{
	Text:   "V = share × total; mark = ΣV so far; m = V ρ",
	Source: "definition of a ratio",
	Note:   "background/ratios-and-marks",
}

// Pours returns what to pour for a total volume of mix, in the order of parts,
// with the marks that the cup and the scale reach.
func Pours(parts []Part, total q.Volume) ([]Pour, error) {
	if err := sound(float64(total), "a volume of mix"); err != nil {
		return nil, err
	}
	shares, err := Shares(parts)
	if err != nil {
		return nil, err
	}
	volumes := make([]q.Volume, len(parts))
	for i, s := range shares {
		volumes[i] = total * q.Volume(s)
	}
	masses, _ := massesOf(parts, volumes)
	return new(inCup).pour(parts, volumes, masses), nil
}

// PoursOfMass returns what to pour for a total mass of mix, as Pours does.
func PoursOfMass(parts []Part, total q.Mass) ([]Pour, error) {
	if err := sound(float64(total), "a mass of mix"); err != nil {
		return nil, err
	}
	shares, err := MassShares(parts)
	if err != nil {
		return nil, err
	}
	masses := make([]q.Mass, len(parts))
	for i, s := range shares {
		masses[i] = total * q.Mass(s)
	}
	return new(inCup).pour(parts, volumesOf(parts, masses), masses), nil
}

// massesOf are the masses of volumes, all zero where one is not known.
func massesOf(parts []Part, volumes []q.Volume) (masses []q.Mass, known bool) {
	masses = make([]q.Mass, len(parts))
	for i, p := range parts {
		m, err := convert(float64(volumes[i]), p, false, true)
		if err != nil {
			return make([]q.Mass, len(parts)), false
		}
		masses[i] = q.Mass(m)
	}
	return masses, true
}

// volumesOf are the volumes of masses, all zero where one is not known.
func volumesOf(parts []Part, masses []q.Mass) []q.Volume {
	volumes := make([]q.Volume, len(parts))
	for i, p := range parts {
		v, err := convert(float64(masses[i]), p, true, false)
		if err != nil {
			return make([]q.Volume, len(parts))
		}
		volumes[i] = q.Volume(v)
	}
	return volumes
}

// inCup is what a cup holds.
type inCup struct {
	volume  q.Volume
	mass    q.Mass
	running bool // the pot life has begun
}

// pour pours parts into the cup, and returns the card of it.
func (c *inCup) pour(parts []Part, volumes []q.Volume, masses []q.Mass) []Pour {
	pours := make([]Pour, len(parts))
	for i, p := range parts {
		starts := p.Starts && !c.running && (volumes[i] > 0 || masses[i] > 0)
		c.volume, c.mass, c.running = c.volume+volumes[i], c.mass+masses[i], c.running || starts
		pours[i] = Pour{p.Name, volumes[i], masses[i], c.volume, c.mass, starts}
	}
	return pours
}
