// Package route finds which steps a job needs, in which order, and why.
//
// The surface of a part is a set of facts. A step needs facts, gives facts and
// spoils facts; a step that lays a film also buries what the old surface had and
// starts the film's clock. Find searches for the cheapest sequence from what a
// part is like on arrival to the films and the end state that were agreed.
// Paint knowledge comes in through the library alone.
package route

import (
	"coatwright/planner/library"
	q "coatwright/quantity"
)

// Problem is one group of like parts and what they are to become.
type Problem struct {
	Library   *library.Library
	Substrate *library.Substrate
	Facts     []library.Literal // what holds on arrival
	Films     []Film            // of effect, designs and finish, in laying order
	Ends      []string          // facts and dryness states at hand-over
	EndWants  []library.Want
	System    string
	Care      float64 // factor on what a missed want costs
	Form      string
	Area      q.Area                               // of all pieces, for the work
	Piece     q.Area                               // of the largest piece, for what an applicator lays evenly
	Tools     []string                             // slugs of the applicators at hand
	Lag       func(Coating, string) (q.Time, bool) // time to a dryness state in today's air
	Closes    func(*library.Material) q.Time       // when the recoat window shuts; 0 for never
	Stands    func(library.Drying) q.Time
	Shut      map[Window]bool // those that the calendar cannot meet
	Without   Omission        // a step that is left out; zero for none
}

// Window is the recoat window of a material while Films[Next] comes next.
type Window struct {
	Under string
	Next  int
}

// Omission is one step left out at one place: between the film of the material
// After and that of Before, where Films[Next] is the next film that is asked
// for. After is "" for the bare surface, Before for the end. Of the films that
// are laid for what they give, only those of Preps may follow there: another one
// put in between would be a way round the question.
type Omission struct {
	Step, After, Before string
	Next                int
	Preps               []string
}

// Film is one required film and the materials that may make it.
type Film struct {
	Role      string
	Materials []string // slugs; never empty
	Coats     int      // 0: as the material says
	Layer     *Layer   // of a design; nil for a film that covers the whole part
}

// Layer is where a design's film lies. Areas are of all pieces together, Piece
// of the largest one.
type Layer struct {
	Mask     string
	Polarity string
	Sprayed  q.Area // what the film covers
	Extent   q.Area // what is masked: the design itself
	Piece    q.Area
}

// Coating is a material as one applicator lays it.
type Coating struct {
	*library.Material
	Tool *library.Tool
}

// IsZero reports whether there is no coating.
func (c Coating) IsZero() bool { return c.Material == nil }

// WaitWeight is what a minute of waiting counts against a minute of work.
// Common practice, no published source: a wait costs booth and calendar, not
// hands, and a night costs about half an hour of somebody's time.
const WaitWeight = 0.05

// LitreMinutes is what a litre of mixed material counts in minutes of work,
// until the shelf knows prices. Common practice, no published source.
const LitreMinutes = 60

// cost is in thousandths of a minute: whole numbers, so that equal routes have
// equal costs whatever the order of the sums.
type cost int64

func minutes(t q.Time) cost { return cost(t.Minutes()*1000 + 0.5) }

func waitCost(t q.Time) cost { return cost(t.Minutes()*1000*WaitWeight + 0.5) }

// Action is one step of a route.
type Action struct {
	Step     *library.Step
	Film     Coating // the film it lays; zero for none
	Required int     // index in Problem.Films; -1 for a film laid for what it gives
	Next     int     // index of the next required film before this action
	Links    []Link  // what it needs, and who gave it
}

// Link says that an action takes a fact from an earlier one.
type Link struct {
	Fact    string
	Number  q.Range[q.Grit]
	From    int // index of the action that gave it; -1: it came so
	Because string
	Want    bool
	Missed  bool   // a want that was not met: From means nothing
	Saves   q.Time // of a want, without the care factor
	Min     q.Time // the film of From must have dried this long
	Max     q.Time // ... and no longer than this; 0: no limit
	By      string // what paces Min
	Lag     bool   // the fact is a dryness state: a wait, not a gift
	Covered bool   // the film below has the fact of its own since it was laid on the gift of From
	Either  bool   // without this gift the open window of the film below would do
}

// Route is a sequence of actions. The last entry of Ends holds what hand-over needs.
type Route struct {
	Actions []Action
	Ends    []Link
	Cost    float64 // minutes, weighted
	Least   float64 // no route costs less; Cost where this one is known to be the cheapest
	States  int     // how many the search looked at
}

// Refusal says why there is no route.
type Refusal struct {
	Fact    string
	Step    string // slug of the step that needs it; "" for the hand-over
	Reasons []string
}
