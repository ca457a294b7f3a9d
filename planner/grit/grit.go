// Package grit owns the grades of abrasive papers: how coarse their grain is, what
// one scale's grade is on the other, and which grades lead from coarse to fine.
//
// A size is that of the mean grain. It is not the depth of the scratch, which also
// goes by pressure, pad, wear and the hardness of the surface, and of which nothing
// is said here. Everything that is named P is a coated paper of FEPA 43, which is
// ISO 6344; the F grades of grinding wheels are other sizes and are not known here.
package grit

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// System is a scale of grades.
type System string

// The systems.
const (
	P    System = "P"    // FEPA 43, ISO 6344: by the range of its grains' sizes
	CAMI System = "CAMI" // ANSI B74.18: by their mean
)

// Standing is what a grade's size rests on.
type Standing string

// The standings.
const (
	Published  Standing = "published"                            // seen in a published table
	SecondHand Standing = "published, second-hand"               // seen in a table that names no source, and remembered alike
	Memory     Standing = "from memory, check before relying on" // not seen
)

// Grade is one number of a scale.
type Grade struct {
	System   System   `json:"system"`
	Number   q.Grit   `json:"number"`
	Size     q.Length `json:"size"` // of the mean grain
	Standing Standing `json:"standing"`
}

// Name is what stands on the back of the paper: "P600"; "CAMI 400", where it may
// also say only 400.
func (g Grade) Name() string {
	if g.System == P {
		return fmt.Sprintf("P%g", float64(g.Number))
	}
	return fmt.Sprintf("%s %g", g.System, float64(g.Number))
}

// SizeFormula is where Size is from.
var SizeFormula = trace.Formula{
	Text:   "mean grain of the grade, from the table",
	Source: "FEPA 43 / ISO 6344, as sizes.com/tools/sandpaper.htm and a second table print it",
	Note:   "background/what-grit-means",
}

// Grades returns a system's grades, the coarsest first.
func Grades(s System) []Grade { return slices.Clone(tables[s]) }

// Size returns the mean grain of a P grade, in m. The error is a *q.Error.
func Size(p q.Grit) (q.Length, error) {
	g, err := Numbered(P, p)
	return g.Size, err
}

// Numbered returns a system's grade of that number. The error is a *q.Error that
// names the nearest one there is.
func Numbered(s System, number q.Grit) (Grade, error) {
	if i := find(s, number); i >= 0 {
		return tables[s][i], nil
	}
	return Grade{}, noGrade(Grade{System: s, Number: number}.Name(), s, number)
}

// find is the place of a number in the table of s, -1 for none.
func find(s System, number q.Grit) int {
	return slices.IndexFunc(tables[s], func(g Grade) bool { return g.Number == number })
}

// noGrade is the error for a number that s does not have.
func noGrade(found string, s System, number q.Grit) error {
	table := tables[s]
	e := &q.Error{Found: found, Expected: fmt.Sprintf("a grade of the %s scale, %s to %s", s, table[0].Name(), table[len(table)-1].Name())}
	if number > 0 {
		e.Nearest = closest(table, func(g Grade) float64 { return float64(g.Number / number) }).Name()
	}
	return e
}

// beyond is how many times a size may lie outside the table and still have a
// nearest grade: as far as the widest step between two P grades (P12 to P16).
const beyond = 1.4

// Nearest returns the grade of s whose grain is nearest in size, by ratio. The error
// is a *q.Error, for a size that no grade comes near to.
func Nearest(size q.Length, s System) (Grade, error) {
	table := tables[s]
	coarsest, finest := table[0], table[len(table)-1]
	if !(size <= coarsest.Size*beyond && size >= finest.Size/beyond) {
		return Grade{}, &q.Error{
			Found:    fmt.Sprintf("%.4g um", size.Micrometres()),
			Expected: fmt.Sprintf("a grain of %.4g to %.4g um, as the %s scale has", finest.Size.Micrometres(), coarsest.Size.Micrometres(), s),
		}
	}
	return closest(table, func(g Grade) float64 { return float64(g.Size / size) }), nil
}

// closest is the grade whose ratio is nearest to 1.
func closest(table []Grade, ratio func(Grade) float64) Grade {
	away := func(g Grade) float64 { return math.Abs(math.Log(ratio(g))) }
	return slices.MinFunc(table, func(a, b Grade) int { return cmp.Compare(away(a), away(b)) })
}

// Coarser returns the next coarser grade of g's system, and whether there is one.
func (g Grade) Coarser() (Grade, bool) { return g.step(-1) }

// Finer returns the next finer grade of g's system, and whether there is one.
func (g Grade) Finer() (Grade, bool) { return g.step(+1) }

func (g Grade) step(by int) (Grade, bool) {
	table := tables[g.System]
	i := find(g.System, g.Number)
	if i < 0 || i+by < 0 || i+by >= len(table) {
		return Grade{}, false
	}
	return table[i+by], true
}

// NotComparable is what to say beside an equivalent.
const NotComparable = "One scale goes by the range of its grains and the other by their mean, so the two cannot be compared strictly."

// EquivalentFormula is how Equivalent works.
var EquivalentFormula = trace.Formula{
	Text:   "the grade of the other scale with the least |ln(size₂/size₁)|",
	Source: "mean grains of both scales, sizes.com/tools/sandpaper.htm and a second table",
	Note:   "background/what-grit-means",
}

// Equivalent returns the grade of another system that is nearest to g, and how many
// times its grain is as large. The error is a *q.Error.
func (g Grade) Equivalent(s System) (nearest Grade, ratio float64, err error) {
	nearest, err = Nearest(g.Size, s)
	if err != nil {
		return Grade{}, 0, err
	}
	return nearest, float64(nearest.Size / g.Size), nil
}
