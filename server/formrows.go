package main

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// rows are the numbers of the form's parts and designs that stand in the job
// document, in its order.
type rows struct{ parts, designs []int }

var (
	rowPath  = regexp.MustCompile(`^(part|design)s\[(\d+)\]\.?(.*)$`)
	listItem = regexp.MustCompile(`\[\d+\]$`)
)

// field is the form's name for a place in the job document: "parts[0].area" is
// "part0-area", "designs[0]" the whole row "design0".
func (r rows) field(path string) string {
	if path == "parts" {
		return "part0"
	}
	row, rest, ok := r.row(path)
	switch {
	case !ok:
		return fieldName(path)
	case row == "":
		return path
	case rest == "":
		return row
	}
	if at, is := shapePlace(rest); is {
		return row + "-" + at.Field
	}
	return row + "-" + fieldName(rest)
}

// row is the row of the form that a place in the job document is in, "" for one
// that the form does not have, and the rest of the way. Not ok for a place in no
// row.
func (r rows) row(path string) (row, rest string, ok bool) {
	m := rowPath.FindStringSubmatch(path)
	if m == nil {
		return "", "", false
	}
	i, err := strconv.Atoi(m[2])
	in := map[string][]int{"part": r.parts, "design": r.designs}[m[1]]
	if err != nil || i >= len(in) {
		return "", m[3], true
	}
	return fmt.Sprintf("%s%d", m[1], in[i]), m[3], true
}

// fieldName is the name of a field without its row: "with[1]" is "with", "colours.candy" is "colour-candy".
func fieldName(path string) string {
	path = listItem.ReplaceAllString(path, "")
	if key, ok := strings.CutPrefix(path, "colours."); ok {
		return "colour-" + key
	}
	return path[strings.LastIndex(path, ".")+1:]
}
