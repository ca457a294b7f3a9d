package content

import (
	"coatwright/planner/library"
	q "coatwright/quantity"
	"coatwright/strictyaml"
)

// wordsFile is where the listed words stand, beside the kinds' folders.
const wordsFile = "words.yaml"

var arrivals = []string{string(library.Always), string(library.ArrivesLoose), string(library.ArrivesBare)}

var scopes = []string{string(library.Part), string(library.Surface), string(library.Bench)}

// readWords reads the vocabulary file.
func readWords(file string, src []byte) (*library.Vocabulary, strictyaml.Problems) {
	m, doc := strictyaml.Read(file, src, 0)
	w := &library.Vocabulary{
		Facts:    readFacts(m.Need("facts").Map()),
		Dryness:  readWordList(m.Need("dryness").Map()),
		Traits:   readWordList(m.Need("traits").Map()),
		Roles:    readRoles(m.Need("roles").Map()),
		Phases:   readWordList(m.Need("phases").Map()),
		Systems:  readWordList(m.Need("systems").Map()),
		Forms:    readWordList(m.Need("forms").Map()),
		Pacing:   readWordList(m.Need("pacing").Map()),
		Care:     readCare(m.Need("care").Map()),
		Masks:    readWordList(m.Need("masks").Map()),
		Standing: readStanding(m.Need("standing").Map()),
	}
	w.AnySystem = m.Get("any-system").Words("a system", wordNames(w.Systems))
	w.Unmasked = m.Get("unmasked").Words("how an edge is made", wordNames(w.Masks))
	w.StepTimes = m.Get("step-times").OneOf("where the times in step notes come from", standingNames(w.Standing))
	w.Law, w.Categories = m.Get("voc-law").Text(), readCategories(m.Get("voc-categories").Map())
	if len(w.Categories) > 0 {
		m.Need("voc-law")
	}
	w.BoothVelocities = readBoothVelocities(m.Get("booth-velocities").Map())
	w.RoomChanges = readRoomChanges(m.Get("room-changes"), standingNames(w.Standing))
	w.Limits = readLimits(m.Need("limits").Map())
	m.Close()
	return w, doc.Problems()
}

func readFacts(m *strictyaml.Map) map[string]*library.Fact {
	facts, numbered := map[string]*library.Fact{}, ""
	for _, name := range m.Keys() {
		f := m.Get(name).Map()
		facts[name] = &library.Fact{
			Name:    name,
			Of:      library.Scope(f.Need("of").OneOf("what the fact is about", scopes)),
			AtStart: library.Arrival(f.Get("at-start").OneOf("of which parts it holds at the start", arrivals)),
			Fresh:   f.Get("fresh").Bool(),
			Number:  f.Get("number").OneOf("what the number counts", []string{"P-grit"}) != "",
			Is:      f.Need("is").Text(),
			Else:    f.Need("else").Text(),
		}
		f.Close()
		if facts[name].Number && numbered != "" {
			m.Fail(name, "only one fact with a number; "+numbered+" has it", "")
		}
		if facts[name].Number {
			numbered = name
		}
	}
	return facts
}

func readWordList(m *strictyaml.Map) []library.Word {
	var words []library.Word
	for _, name := range m.Keys() {
		words = append(words, library.Word{Name: name, Is: m.Get(name).Text()})
	}
	return words
}

func readRoles(m *strictyaml.Map) []library.Role {
	var roles []library.Role
	for _, name := range m.Keys() {
		r := m.Get(name).Map()
		roles = append(roles, library.Role{Name: name, Prep: r.Get("prep").Bool(), Local: r.Get("local").Bool(), Is: r.Need("is").Text()})
		r.Close()
	}
	return roles
}

func readCare(m *strictyaml.Map) []library.Care {
	var care []library.Care
	for _, name := range m.Keys() {
		c := m.Get(name).Map()
		care = append(care, library.Care{Name: name, Factor: c.Need("factor").Number(), Is: c.Need("is").Text()})
		c.Close()
	}
	return care
}

func readStanding(m *strictyaml.Map) []library.Standing {
	var standing []library.Standing
	for _, name := range m.Keys() {
		s := m.Get(name).Map()
		st := library.Standing{
			Name: name, Is: s.Need("is").Text(),
			Time:   readSpread(s.Need("time")),
			Amount: readSpread(s.Need("amount")),
		}
		standing = append(standing, st)
		s.Close()
	}
	return standing
}

func readCategories(m *strictyaml.Map) []library.Category {
	var out []library.Category
	for _, name := range m.Keys() {
		c := m.Get(name).Map()
		out = append(out, library.Category{
			Name: name, Is: c.Need("is").Text(), Water: c.Get("water").Bool(),
			Limit: strictyaml.Quantity[q.Concentration](c.Need("limit")),
		})
		c.Close()
	}
	return out
}

func categoryNames(all []library.Category) []string {
	names := make([]string, len(all))
	for i, c := range all {
		names[i] = c.Name
	}
	return names
}

func readBoothVelocities(m *strictyaml.Map) []library.BoothVelocity {
	var out []library.BoothVelocity
	for _, name := range m.Keys() {
		v := m.Get(name).Map()
		design, speeds := v.Need("design"), v.Need("range")
		b := library.BoothVelocity{
			Name: name, Is: v.Need("is").Text(), Source: v.Need("source").Text(),
			Design: strictyaml.Quantity[q.Speed](design), Range: strictyaml.Range[q.Speed](speeds),
		}
		v.Close()
		switch {
		case design == nil || speeds == nil:
		case !(b.Range.Low > 0):
			speeds.Fail("velocities above 0", "")
		case !b.Range.Holds(b.Design):
			design.Fail("a velocity within the range", "")
		}
		out = append(out, b)
	}
	return out
}

func readRoomChanges(v *strictyaml.Value, standings []string) library.RoomChanges {
	if v == nil {
		return library.RoomChanges{}
	}
	m := v.Map()
	defer m.Close()
	return library.RoomChanges{
		Standing: m.Need("standing").OneOf("where the figures come from", standings),
		Warm:     readRoomChange[q.Difference](m.Get("warm"), 60, true),
		Cool:     readRoomChange[q.Difference](m.Get("cool"), 60, true),
		WarmPart: readRoomChange[q.Difference](m.Get("warm-part"), 60, true),
		Dry:      readRoomChange[q.Fraction](m.Get("dry"), 1, true),
		Damp:     readRoomChange[q.Fraction](m.Get("damp"), 1, true),
		Fan:      readRoomChange[q.Speed](m.Get("fan"), 20, false),
		Wait:     readRoomChange[q.Time](m.Get("wait"), 30*24*3600, true),
	}
}

// readRoomChange reads a change that can be taken so far at the most, with a cost
// for each step of it or not; one that is not there cannot be done.
func readRoomChange[Q q.Quantity](v *strictyaml.Value, most Q, each bool) library.RoomChange[Q] {
	if v == nil {
		return library.RoomChange[Q]{}
	}
	m := v.Map()
	defer m.Close()
	far := m.Need("most")
	c := library.RoomChange[Q]{Fixed: strictyaml.Quantity[q.Time](m.Need("fixed")), Most: strictyaml.Quantity[Q](far), Is: m.Need("is").Text()}
	if each {
		c.Each = strictyaml.Quantity[q.Time](m.Need("each"))
	}
	if far != nil && !(c.Most > 0 && c.Most <= most) {
		far.Fail("more than nothing, and at most "+q.Show(q.Metric, most), "")
	}
	return c
}

// maxLimit is the most times the can's own coats that a limit may allow.
const maxLimit = 10

func readLimits(m *strictyaml.Map) library.Limits {
	coats := m.Need("coats").Map()
	defer coats.Close()
	return library.Limits{
		Coats: coats.Need("times").Int(1, maxLimit), Thick: coats.Need("else").Text(),
		Parts: strictyaml.Quantity[q.Fraction](m.Need("parts")), Percentage: strictyaml.Quantity[q.Fraction](m.Need("percentage")),
	}
}

// readSpread reads how far below and above a figure the truth may lie.
func readSpread(v *strictyaml.Value) q.Range[q.Fraction] {
	r := strictyaml.Range[q.Fraction](v)
	if v != nil && !(r.Low > 0 && r.Low <= 1 && r.High >= 1) {
		v.Fail("a range that takes in 100 % and starts above 0, such as 70..160 %", "")
	}
	return r
}
