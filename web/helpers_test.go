package web

import (
	"regexp"
	"strconv"
)

var pointForm = regexp.MustCompile(`[ML](-?[\d.]+) (-?[\d.]+)`)

// points are the absolute points of path data.
func points(t interface{ Fatal(...any) }, data string) [][2]float64 {
	var out [][2]float64
	for _, m := range pointForm.FindAllStringSubmatch(data, -1) {
		x, errX := strconv.ParseFloat(m[1], 64)
		y, errY := strconv.ParseFloat(m[2], 64)
		if errX != nil || errY != nil {
			t.Fatal(errX, errY)
		}
		out = append(out, [2]float64{x, y})
	}
	return out
}
