package mix

import (
	"fmt"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// Stray is a share that lies outside its range on the card.
type Stray struct {
	Name    string
	Nearest q.Fraction // the share in range that is nearest to it
	Text    string
}

// Outside returns the parts whose Share lies outside their Range.
func Outside(parts []Part) []Stray {
	var found []Stray
	for _, p := range parts {
		if p.Of == "" || p.Range.IsZero() || p.Range.Holds(p.Share) {
			continue
		}
		found = append(found, Stray{p.Name, min(max(p.Share, p.Range.Low), p.Range.High), outside(p)})
	}
	return found
}

// outside says that the share of p is not in its range.
func outside(p Part) string {
	side := "at most"
	if p.Share < p.Range.Low {
		side = "at least"
	}
	nearest := min(max(p.Share, p.Range.Low), p.Range.High)
	return fmt.Sprintf("found %.4g %% of %s; expected %s: %s %.4g %%",
		p.Share.Percent(), p.Of, q.ShowRange(q.Metric, p.Range), side, nearest.Percent())
}

// RoomFormula is how Rooms comes about.
var RoomFormula = trace.Formula{
	Text:   "share = V / V of the other part; short = low × V of the other - V; room = high × V of the other - V",
	Source: "definition of a percentage of a part",
	Note:   "background/percent-of-what",
}

// Room is where a part that goes by a range stands in the cup: a thinner, or the
// strength of a colour.
type Room struct {
	Name, Of string
	Share    q.Fraction // of what is in the cup, by the part's own way of measuring
	Range    q.Range[q.Fraction]
	Short    q.Volume // to add before it is in range; 0 where it is
	Room     q.Volume // that may still be added, Short counted in; 0 where it is over
	Over     bool     // there is too much of it
}

// Rooms returns where the parts with a Range stand, for what was poured of each
// part in the parts' order. A part is left out while none of what it is a share
// of is in the cup.
func Rooms(parts []Part, poured []q.Volume) ([]Room, error) {
	if _, err := Shares(parts); err != nil {
		return nil, err
	}
	there, err := inTheCup(parts, poured, 0)
	if err != nil {
		return nil, err
	}
	var rooms []Room
	for i, p := range parts {
		if p.Of == "" || p.Range.IsZero() {
			continue
		}
		of := place(parts, p.Of)
		if there[of] == 0 {
			continue
		}
		r, err := roomOf(p, parts[of], there[i], there[of])
		if err != nil {
			return nil, wrong(i, p, err)
		}
		rooms = append(rooms, r)
	}
	return rooms, nil
}

// roomOf is the room of p in a whole of which something is there.
func roomOf(p, of Part, there, whole float64) (Room, error) {
	perMass := 1.0
	if p.ByMass {
		var err error
		if perMass, err = byVolume(p.Density, of.Density); err != nil {
			return Room{}, err
		}
	}
	upTo := func(share q.Fraction) q.Volume { return q.Volume(max(0, float64(share)*perMass*whole-there)) }
	share := q.Fraction(there / whole / perMass)
	return Room{p.Name, p.Of, share, p.Range, upTo(p.Range.Low), upTo(p.Range.High), share > p.Range.High*(1+sliver)}, nil
}
