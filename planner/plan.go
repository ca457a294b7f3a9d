package planner

import (
	"slices"
	"time"
)

// Plan is the answer to a job: ordered steps with amounts and waits, or, in
// Refused, the reason why there is none. Keys are stable: added, never renamed.
// Volumes are in mL, masses in g, times in minutes, films in um. Start and End are
// wall-clock times of the shop, without a zone: they are held, and written, as UTC.
type Plan struct {
	Title      string      `json:"title"`
	Job        *Job        `json:"job"`
	Steps      []Step      `json:"steps"`
	Films      []Film      `json:"films"`
	Strips     []Strip     `json:"strips"` // of the candies among them
	Materials  []Material  `json:"materials"`
	Worn       []Worn      `json:"worn"`      // what the steps use up besides materials
	Emissions  []Emission  `json:"emissions"` // what of each mix goes into the air
	Cautions   []Caution   `json:"cautions"`
	Hardware   []Bag       `json:"hardware"`
	Left       []string    `json:"left"` // parts to which nothing is done
	Conditions []Condition `json:"conditions"`
	Missed     []Reason    `json:"missed"` // wants that the plan leaves unmet: not worth their time on this job
	Totals     Totals      `json:"totals"`
	Kept       []Kept      `json:"kept"` // what an edited plan does against its notes, on purpose
	Refused    *Refusal    `json:"refused"`
}

// Step is one thing to do.
type Step struct {
	ID         string    `json:"id"`   // unique in the plan: the note's slug, numbered from its second use
	Note       string    `json:"note"` // "step/tack-off"
	Title      string    `json:"title"`
	Phase      string    `json:"phase"`
	Parts      []string  `json:"parts"`
	Extents    []Extent  `json:"extents"`  // the areas that its work goes by
	Films      []string  `json:"films"`    // materials' titles that the step lays, mixes or flushes
	Material   string    `json:"material"` // "material/..." note of that film; "" for none
	For        string    `json:"for"`      // role of the film this step leads up to; "" after the last
	Needs      []string  `json:"needs"`
	Gives      []string  `json:"gives"`
	Because    string    `json:"because"`
	Why        []Reason  `json:"why"`
	Serves     []Reason  `json:"serves"` // the shortest chain from this step to what was agreed
	Skipped    string    `json:"skipped"`
	Coats      int       `json:"coats"`
	FlashMin   float64   `json:"flash_min"` // between coats
	DryUm      float64   `json:"dry_um"`    // dry film, all coats
	WetUm      float64   `json:"wet_um"`    // wet film, one coat
	Colour     string    `json:"colour"`    // "#rrggbb" or ""
	Applicator string    `json:"applicator"`
	Pressure   float64   `json:"pressure_kPa"`
	FanMM      float64   `json:"fan_mm"` // width of the fan or cone on the part
	DistanceMM float64   `json:"distance_mm"`
	Overlap    float64   `json:"overlap_percent"`
	Design     string    `json:"design"` // what it is for of a design: "name: layer"; "" for the whole part
	Mix        *Mix      `json:"mix"`
	Uses       []Use     `json:"uses"`
	WorkMin    float64   `json:"work_min"`
	Waits      []Wait    `json:"waits"`
	Advised    bool      `json:"advised"`
	CostsMin   float64   `json:"costs_min"`
	SavesMin   float64   `json:"saves_min"`
	Start      time.Time `json:"start"`
	End        time.Time `json:"end"`
	Meanwhile  string    `json:"meanwhile"` // what stands or dries while this is done; "" for nothing
	Cautions   []string  `json:"cautions"`  // caution slugs
	Checks     []string  `json:"checks"`
}

// Extent is the area of a step's work on parts of one form: of the parts, or of
// a design's layer on them.
type Extent struct {
	Parts []string `json:"parts"`
	M2    float64  `json:"m2"`
	Form  string   `json:"form"`
}

// Area is the sum of a step's extents, in m2.
func (s Step) Area() float64 {
	sum := 0.0
	for _, e := range s.Extents {
		sum += e.M2
	}
	return sum
}

// StepAt is the place of a step among steps by its id, -1 for none.
func StepAt(steps []Step, id string) int {
	return slices.IndexFunc(steps, func(s Step) bool { return s.ID == id })
}

// Reason says which later step needs a fact that this step gives.
type Reason struct {
	Fact    string `json:"fact"`
	For     string `json:"for"` // step id, or Agreed
	Because string `json:"because"`
	Want    bool   `json:"want"` // the later step only wants it: it could be done without
}

// Agreed stands in Reason.For for the job itself: the films and the end state
// that were agreed with the customer.
const Agreed = "agreed"

// Mix is what to pour for one film.
type Mix struct {
	Lines          []Pour     `json:"lines"`
	TotalML        float64    `json:"total_ml"`
	TotalG         float64    `json:"total_g"`
	LowML          float64    `json:"low_ml"`  // need at the applicator's best transfer, and the figures' best
	HighML         float64    `json:"high_ml"` // ... and at their worst
	Transfer       string     `json:"transfer"`
	StandMin       float64    `json:"stand_min"`
	PotLife        float64    `json:"pot_life_min"`
	StrainUm       float64    `json:"strain"`  // um of mesh opening; 0 for none
	Batches        int        `json:"batches"` // separate mixes, so that none outlives its pot life
	Fills          int        `json:"fills"`   // of the applicator cup
	VOCgPerL       float64    `json:"voc_g_per_l"`
	LessWaterGPerL float64    `json:"voc_less_water_g_per_l"` // VOC less water and exempt compounds
	MixAt          []float64  `json:"mix_at_min"`             // when to mix each batch, from the first
	Cups           []CupCheck `json:"cups"`                   // how long it takes to run out of an efflux cup
	LeastML        float64    `json:"least_ml"`               // the scale cannot hold the ratio of a smaller mix
	LineML         float64    `json:"line_ml"`                // lines of the cup that it is mixed in stand so far apart
	LineOzML       float64    `json:"line_fl_oz_ml"`          // ... and its lines in fl oz, in mL
	ScaleG         float64    `json:"scale_g"`                // step of the scale
}

// Pour is one line of a mix, in pouring order. Marks and grams are cumulative:
// what the cup and a scale set to zero once must show after this pour. For a
// mix of several batches they are for one batch.
type Pour struct {
	Material string  `json:"material"` // slug
	Title    string  `json:"title"`
	Share    string  `json:"share"` // "100 parts", "7.5 % of base (5 to 10)"
	ML       float64 `json:"ml"`
	G        float64 `json:"g"`
	MarkML   float64 `json:"mark_ml"`
	MarkG    float64 `json:"mark_g"`
	Starts   bool    `json:"starts"` // the pot life starts with this pour
}

// Use is a tool or a material that a step takes; ML is 0 where it is not measured,
// and Count where nothing of the tool is used up.
type Use struct {
	Note  string  `json:"note"`
	Title string  `json:"title"`
	ML    float64 `json:"ml"`
	Count float64 `json:"count"`
	Piece string  `json:"piece"` // what Count counts: "sheet"; "" for a tool that lasts
}

// Wait is a lag before the step may start, and where it closes, the latest.
type Wait struct {
	Until string  `json:"until"` // the dryness state or fact waited for
	After string  `json:"after"` // step id that started the clock
	Min   float64 `json:"min_min"`
	Low   float64 `json:"low_min"`  // Min at the best that its figures may turn out
	High  float64 `json:"high_min"` // ... and at the worst
	Max   float64 `json:"max_min"`  // 0: never closes
	By    string  `json:"by"`       // what paces it
	How   string  `json:"how"`      // the figures behind Min, in words
}

// Film is one layer of the finished stack, bottom first.
type Film struct {
	Step     string   `json:"step"`
	Parts    []string `json:"parts"`
	Role     string   `json:"role"`
	Material string   `json:"material"` // slug
	Title    string   `json:"title"`
	Design   string   `json:"design"` // "name: layer"; "" for a film over the whole part
	Coats    int      `json:"coats"`
	DryUm    float64  `json:"dry_um"`
	Colour   string   `json:"colour"`
	Gloss    string   `json:"gloss"`
	Rework   []Rework `json:"rework"`
}

// Rework is a way to take a film back or mend it, and until when.
type Rework struct {
	How   string    `json:"how"`
	State string    `json:"state"` // the dryness state that ends it
	Until time.Time `json:"until"`
}

// Material is a line of the shopping list.
type Material struct {
	Material string  `json:"material"`
	Title    string  `json:"title"`
	ML       float64 `json:"ml"`
	G        float64 `json:"g"`
	BuyML    float64 `json:"buy_ml"` // enough at the worst
	Cost     *Cost   `json:"cost"`   // null until a price is known
}

// Emission is what of a mix goes into the air. Where the law has a limit for
// products of its kind, that stands beside it: Verdict is "under", "over" or
// "unclear", Says puts it in a sentence, and Defer says who decides.
type Emission struct {
	Step           string   `json:"step"`
	Films          []string `json:"films"`
	VOCgPerL       float64  `json:"voc_g_per_l"`
	LessWaterGPerL float64  `json:"voc_less_water_g_per_l"`
	VOCg           float64  `json:"voc_g"` // of all batches
	Category       string   `json:"category"`
	LimitGPerL     float64  `json:"limit_g_per_l"` // 0 for none
	Verdict        string   `json:"verdict"`
	Says           string   `json:"says"`
	Defer          string   `json:"defer"`
}

// Worn is how much of a tool a plan uses up, in whole pieces.
type Worn struct {
	Tool  string  `json:"tool"` // slug
	Title string  `json:"title"`
	Piece string  `json:"piece"`
	Count float64 `json:"count"`
}

// Bag is hardware that comes off a part: bagged, labelled, and put back last.
type Bag struct {
	Label string `json:"label"`
	Part  string `json:"part"`
	Holds string `json:"holds"`
}

// Kept says why a need that an edited plan does not meet is let stand.
type Kept struct {
	Step   string `json:"step"`
	Need   string `json:"need"`
	Reason string `json:"reason"`
}

// Cost is an amount of money.
type Cost struct {
	Amount   string `json:"amount"`
	Currency string `json:"currency"`
}

// Caution is a danger that this plan meets, and at which steps.
type Caution struct {
	Note  string   `json:"note"`
	Title string   `json:"title"`
	Says  string   `json:"says"`
	Steps []string `json:"steps"`
}

// Condition is a remark about the room, the hours or the job.
// Level is "go", "care" or "no".
type Condition struct {
	Level string `json:"level"`
	What  string `json:"what"`
	Note  string `json:"note"`
}

// Totals sum up a plan.
type Totals struct {
	WorkMin    float64   `json:"work_min"`
	ElapsedMin float64   `json:"elapsed_min"`
	RiskMin    float64   `json:"risk_min"` // rework that wants left unmet cost on average
	Start      time.Time `json:"start"`
	End        time.Time `json:"end"`
	LowEnd     time.Time `json:"low_end"`  // when every wait is as short as it may turn out
	HighEnd    time.Time `json:"high_end"` // ... and as long
	Cost       *Cost     `json:"cost"`
	VOCg       float64   `json:"voc_g"`
	DryUm      float64   `json:"dry_um"` // of the part with the thickest build
}

// Refusal says why a job cannot be planned.
type Refusal struct {
	Part    string     `json:"part"`
	Fact    string     `json:"fact"`
	Step    string     `json:"step"` // the note that needs the fact; "" for the hand-over
	Reasons []string   `json:"reasons"`
	Start   *time.Time `json:"start"` // a later start that would do; null where none was found, or it is not the hours
}

// WorkingHours is the Fact of a Refusal that no note could mend: the calendar
// does not allow the work.
const WorkingHours = "working hours"

// ByHours reports whether it is the working hours that stand in the way, and
// not a fact that nothing gives.
func (r *Refusal) ByHours() bool { return r.Fact == WorkingHours }
