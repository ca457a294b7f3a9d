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
	m := rowPath.FindStringSubmatch(path)
	if m == nil {
		return fieldName(path)
	}
	i, err := strconv.Atoi(m[2])
	in := map[string][]int{"part": r.parts, "design": r.designs}[m[1]]
	if err != nil || i >= len(in) {
		return path
	}
	row := fmt.Sprintf("%s%d", m[1], in[i])
	if m[3] == "" {
		return row
	}
	return row + "-" + fieldName(m[3])
}

// fieldName is the name of a field without its row: "shape.cylinder.length" is
// "length", "with[1]" is "with", "colours.candy" is "colour-candy".
func fieldName(path string) string {
	path = listItem.ReplaceAllString(path, "")
	if key, ok := strings.CutPrefix(path, "colours."); ok {
		return "colour-" + key
	}
	return path[strings.LastIndex(path, ".")+1:]
}
