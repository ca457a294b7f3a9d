// Package library is what the planner may know: the front matter of the notes
// as plain structs. Package content fills it; the planner reads it and nothing
// else, so that no paint knowledge lives in Go.
package library

import q "coatwright/quantity"

// Library is everything a plan can be made from, keyed by the notes' slugs.
type Library struct {
	Words      *Vocabulary
	Substrates map[string]*Substrate
	Materials  map[string]*Material
	Steps      map[string]*Step
	Effects    map[string]*Effect
	Designs    map[string]*Design
	Finishes   map[string]*Finish
	Tools      map[string]*Tool
	Cautions   map[string]*Caution
}

// Step is one thing a painter does.
type Step struct {
	Slug, Title string
	Phase       string
	OnlyIf      Condition
	Needs       []Need
	Wants       []Want
	Gives       []Literal
	Lasts       map[string]q.Time // how long a given fact stays true
	Spoils      []string
	Lays        string        // the role of the film this step lays; "" for none
	Before      []string      // dryness states the top film must not have reached yet
	Strips      bool          // this step lays bare what is under the substrate
	Heats       q.Temperature // how warm the part gets; zero for a step that does not warm it
	Mixes       bool          // this step makes up the mix for the next film
	Cleans      bool          // this step flushes the applicator after a film
	Within      q.Time        // the latest after the film that it follows; zero for no hurry
	Work        Work
	Stands      Drying // what must pass on the part before the next step; zero for nothing
	Uses        []Use
	Because     string
	Skipped     string
	Checks      []string // how to tell that it is right
	Cautions    []string
}

// Work is the painter's hands-on time: Fixed + PerArea x area.
// A step that lays a film adds the applicator's own pace for every coat.
type Work struct {
	Fixed   q.Time
	PerArea q.TimePerArea
	Of      Extent
}

// Extent is the area that work goes by.
type Extent string

// The extents.
const (
	OfPart      Extent = ""           // the part
	OfLayer     Extent = "layer"      // the design's layer that is laid next
	OfLaidLayer Extent = "laid-layer" // the design's layer that was laid last
)

// Use is a tool or a material that a step takes. Spread is how far a litre of
// the material goes; zero where the amount does not matter.
type Use struct {
	Tool, Material string
	Spread         q.Spread
}

// Literal is a fact, with the range of its number where it carries one: what a
// step gives or a surface starts with.
type Literal struct {
	Fact   string
	Number q.Range[q.Grit]
}

// Need is met when any one of its literals holds; a plain need has one.
type Need struct {
	Any     []Literal
	Because string // "" where the fact's own sentence says enough
}

// Want is a fact that saves rework when a film is laid with it.
type Want struct {
	Literal
	Saves   q.Time        // rework spared on average: chance times repair
	PerArea q.TimePerArea // ... and as much more for each m2 of the step's extent
	Because string
}

// Condition limits where a note applies. Empty lists do not limit; of several
// lists all must agree.
type Condition struct {
	Traits     []string // the substrate has all of these
	NotTraits  []string // the substrate has none of these
	Systems    []string // the job's system is one of these
	Applicator []string // the job's applicator is one of these
	Forms      []string // the part's form is one of these
	On         string   // what lies uppermost: "substrate", "film" (any), a role, or "" for anything
	Masks      []string // the next layer's edge is made so
	Polarity   []string // ... and its mask is Negative or Positive
}

// Material is anything that comes in a can. Role is "" for one that lays no film.
type Material struct {
	Slug, Title    string
	System         string
	Role           string
	Traits         []string
	Barrier        bool // nothing below reaches through it
	OnlyIf         Condition
	Density        q.Density
	SolidsByVolume q.Fraction
	VOC            q.Concentration // solvent in a litre of the material
	Water          q.Fraction      // share of its volume
	Exempt         q.Fraction      // share of its volume that is solvent which the law does not count
	Category       string          // of the law on VOC: a Vocabulary.Categories; "" for none
	Vapour         Vapour          // of its solvents
	Into           []string        // materials that must be in the cup before it
	Thins          bool            // it only thins: it goes in after all that binds and colours
	Hardens        bool            // the pot life starts when it goes in
	Viscosity      q.Range[q.Viscosity]
	Build          q.Length // dry film of one full coat
	Sag            q.Length // wet film above which a vertical coat runs
	Coats          int
	Gloss          q.Range[q.Gloss]
	Hides          Hiding
	Swatch         Swatch
	Forced         Forced
	Key            q.Range[q.Grit] // the scratch this film wants under it; zero for none
	Needs          []Need
	Wants          []Want
	Gives          []string // facts that hold once this film lies
	Spoils         []string
	Mix            []MixPart // in pouring order
	Stand          q.Time
	PotLife        q.Time
	Strain         q.Length // mesh opening of the strainer; zero for none
	Flash          Drying   // wait between coats of this film
	Dries          map[string]Drying
	Air            AirRange
	Over           []Over
	Rework         []Rework
	CleanWith      string // the material that flushes the applicator
	Cautions       []string
	Source         string
	Standing       string // of its figures: a Vocabulary.Standing
}

// Vapour is what the solvents of a material make when they leave: LEL is the
// least share of the air that burns. Zero where nothing is known.
type Vapour struct {
	LEL   q.Fraction
	Yield q.VapourYield
}

// Hiding is the contrast ratio of a film over black and over white, as
// ISO 6504-3 has it, at a dry film. Zero for a film that does not hide.
type Hiding struct {
	Ratio q.Fraction
	At    q.Length
}

// Swatch is what a transparent colour's swatch shows: so many coats, as on the
// material's sheet, over a ground. Over is "#rrggbb"; "" for other films.
type Swatch struct {
	Over  string
	Coats int
}

// Forced is what may be done to make a film dry sooner; zero where the note does
// not say.
type Forced struct {
	Air     bool          // moving air
	Heat    q.Temperature // the warmest that the film itself may get; zero for no heat
	Because string        // why not, or what to mind
}

// MixPart is one pour. Part is "base" for the material itself, else the slug
// of another material. Exactly one of Parts and Of is set.
type MixPart struct {
	Part  string
	Parts float64                        // parts by volume
	Of    string                         // ... or a percentage of this earlier part
	Value map[string]q.Range[q.Fraction] // by applicator; "" for any other
}

// Drying is the time to a dryness state at 23 C, 50 % relative humidity and
// still air, at the material's own build.
type Drying struct {
	In     q.Time
	By     string // what paces it: one of Vocabulary.Pacing
	Closes q.Time // when the window shuts again; zero for never
}

// AirRange is where a material may be sprayed.
type AirRange struct {
	Air          q.Range[q.Temperature]
	Humidity     q.Range[q.Fraction]
	OverDewPoint q.Difference // between surface and dew point
}

// Over is a rule about what lies below: never, or only once Needs holds. One of
// System, Role, Material and Trait says below what: the first three look at the
// film just below, Trait at everything down to the first barrier, the bare
// surface too.
type Over struct {
	System, Role, Material, Trait string
	Never                         bool
	Needs                         Literal // a fact or a dryness state
	Because                       string
}

// Rework is a way to take back or mend a film, open until it reaches a dryness
// state.
type Rework struct{ How, Until string }

// Substrate is what a part is made of, or covered with, on arrival.
type Substrate struct {
	Slug, Title   string
	Traits        []string
	Facts         []Literal // what holds before any work
	Under         string    // the substrate that stripping lays bare; "" for none
	HeatLimit     q.Temperature
	SurfaceEnergy q.Range[q.SurfaceEnergy]
	Mind          []string // what a painter must think of on this surface, a sentence each
	Cautions      []string
}

// Effect is the colour work: its films in order.
type Effect struct {
	Slug, Title string
	Films       []Film
}

// Design is work on a part of the surface: lettering, a stripe, a panel, art by
// hand. It lies over the designs of the kinds in Over where both are in one
// place.
type Design struct {
	Slug, Title string
	Layers      []Layer // in laying order
	Over        []string
}

// Layer is one film of a design, with its own mask.
type Layer struct {
	Name     string
	Film     Film
	Mask     string     // how its edge is made: a Vocabulary.Masks
	Share    q.Fraction // of the design's area
	Optional bool       // laid only where the job asks for it
}

// How a mask lies: a negative one leaves the design open and covers what is
// around it, a positive one covers the design.
const (
	Negative = "negative"
	Positive = "positive"
)

// Finish is the last films and what the job must be at the end.
type Finish struct {
	Slug, Title string
	Films       []Film
	Gloss       q.Range[q.Gloss]
	Ends        []string // facts that hold when the job is handed over
	Wants       []Want   // facts worth having at hand-over
}

// Film is one film that an effect, a design or a finish asks for: one of
// Materials, or where there are none any material of the role.
type Film struct {
	Role      string
	Materials []string
	Coats     int    // 0: as the material says
	Colour    string // which of the job's or the design's colours it carries; "" for none
}

// Tool is something held in the hand. Applicator is nil for all but those that
// lay films, Tape for all but those that make an edge.
type Tool struct {
	Slug, Title string
	Applicator  *Applicator
	Tape        *Tape
	Wear        Wear
	Resolution  q.Mass // the step of a scale; zero for other tools
	Marks       Marks  // of a mixing cup
}

// Wear is how much of a tool is used up in a step: so many pieces, and more for
// each m2. Piece is "" for a tool that lasts.
type Wear struct {
	Piece   string // "sheet"
	Fixed   float64
	PerArea q.PerArea
}

// Marks are the graduations of a cup in mL and in fl oz.
type Marks struct{ Millilitres, Ounces []Mark }

// Mark says how far apart the lines of a cup stand up to a volume.
type Mark struct{ UpTo, Every q.Volume }

// Tape is a tape, a film or a liquid that makes an edge, and its limits.
type Tape struct {
	Needs []Need // of what it is laid on
	Holds q.Time // the longest that it may stay on; zero for no limit
	Over  []Over // what it creeps on, marks, or leaves its glue on
}

// Applicator is a gun or an airbrush.
type Applicator struct {
	Transfer map[string]q.Range[q.Fraction] // by form of the part
	Pressure q.Range[q.Pressure]            // at the inlet, trigger pulled
	Loss     q.Volume                       // what stays in cup and passages
	Flush    q.Volume                       // cleaner that one flush takes
	Cup      q.Volume
	Pace     q.TimePerArea      // spraying time of one coat
	Flow     q.Range[q.Flow]    // paint, trigger pulled
	Air      q.Range[q.AirFlow] // free air, trigger pulled
	Speed    q.Range[q.Speed]   // of the hand
	Fan      q.Range[q.Length]  // width of the fan or cone on the part
	Distance q.Range[q.Length]  // from nozzle to part
	Overlap  q.Range[q.Fraction]
	Largest  map[string]q.Area // by role: the largest part it lays evenly
	Cautions []string
}

// Caution is a danger and where it comes from.
type Caution struct {
	Slug, Title string
	Says        string // one sentence for the sheet
}
