package grit

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	q "coatwright/quantity"
)

// Meaning is what a text about grit may say.
type Meaning struct {
	Grades  []Grade  `json:"grades"` // the likeliest first: a bare number may be of either scale
	Size    q.Length `json:"size"`   // what was asked for, of a text that names a size; otherwise 0
	Remarks []string `json:"remarks"`
}

// Parse reads a grade or a size of grain: "P600", "600 grit", "CAMI 400", "26 um".
// A size is read as the nearest grades. The error is a *q.Error.
func Parse(s string) (Meaning, error) {
	if size, err := q.Parse[q.Length](micrometres.Replace(s)); err == nil {
		return sized(size)
	}
	system, number, ok := split(s)
	if !ok {
		return Meaning{}, &q.Error{Found: s, Expected: `a grade such as "P600", "600 grit" or "CAMI 400", or a grain such as "26 um"`}
	}
	if system != "" {
		g, err := Numbered(system, number)
		if err != nil {
			return Meaning{}, noGrade(s, system, number)
		}
		return Meaning{Grades: []Grade{g}}, nil
	}
	return bare(s, number)
}

// micrometres are other ways to write um.
var micrometres = strings.NewReplacer("μm", "um", "microns", "um", "micron", "um")

// sized is the meaning of a size.
func sized(size q.Length) (Meaning, error) {
	p, err := Nearest(size, P)
	if err != nil {
		return Meaning{}, err
	}
	m := Meaning{Grades: []Grade{p}, Size: size}
	if cami, err := Nearest(size, CAMI); err == nil {
		m.Grades = append(m.Grades, cami)
	}
	return m, nil
}

// bare is the meaning of a number that no scale is named with.
func bare(found string, number q.Grit) (Meaning, error) {
	p, err := Numbered(P, number)
	if err != nil {
		return Meaning{}, noGrade(found, P, number)
	}
	m := Meaning{Grades: []Grade{p}}
	cami, err := Numbered(CAMI, number)
	if err != nil {
		return m, nil
	}
	m.Grades = append(m.Grades, cami)
	if same, _, err := cami.Equivalent(P); err == nil && same != p {
		m.Remarks = []string{fmt.Sprintf("Without a P it may be %s, which is near to %s. Look at the back of the paper.", cami.Name(), same.Name())}
	}
	return m, nil
}

// systemWords are the words that name a scale.
var systemWords = map[string]System{"p": P, "fepa": P, "cami": CAMI, "ansi": CAMI}

// filler is what may stand around a grade without saying more.
var filler = []string{"grit", "grade", "no"}

// split finds the scale, if any, and the number in s.
func split(s string) (system System, number q.Grit, ok bool) {
	for _, w := range strings.FieldsFunc(parted(s), func(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune("#-.", r) }) {
		named, names := systemWords[w]
		n, err := strconv.ParseUint(w, 10, 16)
		switch {
		case slices.Contains(filler, w):
		case names && (system == "" || system == named):
			system = named
		case err == nil && n > 0 && number == 0:
			number = q.Grit(n)
		default:
			return "", 0, false
		}
	}
	return system, number, number > 0
}

// parted is s in small letters with a space wherever a letter meets a digit.
func parted(s string) string {
	var b strings.Builder
	var last rune
	for _, r := range strings.ToLower(s) {
		if unicode.IsLetter(last) && unicode.IsDigit(r) || unicode.IsDigit(last) && unicode.IsLetter(r) {
			b.WriteByte(' ')
		}
		b.WriteRune(r)
		last = r
	}
	return b.String()
}
