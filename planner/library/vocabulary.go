package library

import (
	"slices"

	q "coatwright/quantity"
)

// Vocabulary is the listed words: an unlisted one is an error in a note.
// Every word has a sentence that says what it means.
type Vocabulary struct {
	Facts     map[string]*Fact
	Dryness   []Word // states of the top film, from wet to cured
	Traits    []Word
	Roles     []Role // in laying order
	Phases    []Word // in working order
	Systems   []Word
	AnySystem []string // those whose materials go with any other's
	Forms     []Word
	Pacing    []Word
	Care      []Care
	Masks     []Word   // how a design's edge is made
	Unmasked  []string // those of Masks that lay nothing on the part
	Standing  []Standing
	StepTimes string // the Standing of the times in step notes
	Limits    Limits

	Law        string     // the law on VOC that Categories are of, as it is cited
	Categories []Category // of the law on VOC

	BoothVelocities []BoothVelocity
	RoomChanges     RoomChanges
}

// Category is a kind of product in the law on VOC, and the most that it may
// hold, ready to use.
type Category struct {
	Name  string
	Limit q.Concentration
	Water bool // the limit counts the water in; else it is less water
	Is    string
}

// BoothVelocity is what a rule asks of the air that enters the openings of a
// spray booth.
type BoothVelocity struct {
	Name   string
	Design q.Speed          // that a booth is to be designed for
	Range  q.Range[q.Speed] // in which it complies; a rule with only a least has it at both ends
	Is     string           // the spraying, the booth and the draughts that it is for
	Source string
}

// RoomChanges are what it costs to change the air of a room, in time for which
// somebody is kept from other work. What is zero cannot be done.
type RoomChanges struct {
	Standing string // of all of them: a Vocabulary.Standing

	Warm, Cool, WarmPart RoomChange[q.Difference]
	Dry, Damp            RoomChange[q.Fraction]
	Fan                  RoomChange[q.Speed]
	Wait                 RoomChange[q.Time]
}

// RoomChange is one of them. Fixed is for doing it at all, Each for a kelvin, a
// per cent of humidity or an hour; a fan is on or off and has no Each.
type RoomChange[Q q.Quantity] struct {
	Fixed, Each q.Time
	Most        Q // the furthest that it can be taken; of a fan its speed at the part
	Is          string
}

// Word is a listed word and its meaning.
type Word struct{ Name, Is string }

// Scope says what a fact is about, and so what ends it.
type Scope string

// The scopes. A new film ends every fact about the surface, save those that a
// fresh film has of its own.
const (
	Part    Scope = "part"    // the object as a whole; outlasts films
	Surface Scope = "surface" // what lies uppermost
	Bench   Scope = "bench"   // mixes and guns, not the part
)

// Fact is something that holds or does not.
type Fact struct {
	Name    string
	Of      Scope
	AtStart Arrival // when it holds before any work; "" for never
	Fresh   bool    // a newly laid film has it
	Number  bool    // it carries a P-grit number
	Is      string  // what it means
	Else    string  // what goes wrong where it is missing
}

// Arrival says of which parts a fact holds before any work.
type Arrival string

// The arrivals.
const (
	Always       Arrival = "always"
	ArrivesLoose Arrival = "loose" // parts that are off whatever they were fitted to
	ArrivesBare  Arrival = "bare"  // parts on which nothing must stay free of paint
)

// Role is what a film is for. A Prep film is laid where something needs what
// it gives; the others only where the effect, a design or the finish asks for
// them. A Local film covers a part of the surface; local films may lie on one
// another.
type Role struct {
	Name  string
	Prep  bool
	Local bool
	Is    string
}

// Standing is where a figure comes from, and so how far off it may be: Time and
// Amount are shares of what is written.
type Standing struct {
	Name         string
	Time, Amount q.Range[q.Fraction]
	Is           string
}

// Limits are how far a plan may stray from the notes before it is another job.
type Limits struct {
	Coats      int        // times those of the can's own sheet
	Thick      string     // what goes wrong with more coats
	Parts      q.Fraction // of the ratio, where a mix goes by parts
	Percentage q.Fraction // either side, where a part of a mix is a percentage of another
}

// Recoat is the dryness state that opens a film's recoat window (ASTM D1640).
const Recoat = "dry-to-recoat"

// FlatFlakes is the trait of a film whose flakes send light straight back.
const FlatFlakes = "flat-flakes"

// GoesWith reports whether a material of the system can be used in a job of that
// system: its own, or one that goes with any.
func (v *Vocabulary) GoesWith(system, job string) bool {
	return system == job || slices.Contains(v.AnySystem, system)
}

// Role is the listed role of that name, zero for none.
func (v *Vocabulary) Role(name string) Role {
	for _, r := range v.Roles {
		if r.Name == name {
			return r
		}
	}
	return Role{}
}

// Dry reports whether a word is a dryness state.
func (v *Vocabulary) Dry(word string) bool {
	return slices.ContainsFunc(v.Dryness, func(w Word) bool { return w.Name == word })
}

// Scratch is the name of the fact that carries a P-grit number, "" for none.
func (v *Vocabulary) Scratch() string {
	for name, f := range v.Facts {
		if f.Number {
			return name // there is only one
		}
	}
	return ""
}

// StandingOf is the listed standing of that name; an unlisted one is exact.
func (v *Vocabulary) StandingOf(name string) Standing {
	for _, s := range v.Standing {
		if s.Name == name {
			return s
		}
	}
	exact := q.Range[q.Fraction]{Low: 1, High: 1}
	return Standing{Name: name, Time: exact, Amount: exact}
}

// Care is how much rework a missed want is worth.
type Care struct {
	Name   string
	Factor float64
	Is     string
}

// JobColours are the colours that a job may give, DesignColours those of a
// design.
var (
	JobColours    = []string{"ground", "candy", "pearl"}
	DesignColours = []string{"design", "shadow", "highlight"}
)
