package colour

import (
	_ "embed"
	"encoding/csv"
	"strconv"
	"strings"
	"sync"
)

// cie is the CIE's tables; their source stands on top of the file.
//
//go:embed cie.csv
var cie string

// observed is how much each band of a reflectance adds to X, Y and Z, and what
// they come to for a surface that reflects everything.
type observed struct {
	weights [3]Spectrum
	white   XYZ
}

// observer is the CIE 1931 observer in the light of D65.
var observer = sync.OnceValue(func() *observed {
	r := csv.NewReader(strings.NewReader(cie))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		panic("colour: cie.csv: " + err.Error())
	}
	var matching [][3]float64
	var light []float64
	for _, row := range rows[1:] {
		matching = append(matching, [3]float64{number(row[1]), number(row[2]), number(row[3])})
		light = append(light, number(row[4]))
	}
	return observe(matching, light)
})

// observe weighs by matching functions and a light, both from 380 to 780 nm by
// 5 nm, where a Spectrum goes by 10 nm. What lies between two of its bands is
// taken as their mean, so each band gets half of the wavelengths beside it too,
// and the sums are those of the 5 nm tables.
func observe(matching [][3]float64, light []float64) *observed {
	o := &observed{}
	var normal float64
	for i, m := range matching {
		normal += light[i] * m[1]
		for k := range o.weights {
			half := light[i] * m[k] / 2
			o.weights[k][i/2] += half
			o.weights[k][(i+1)/2] += half
		}
	}
	// CIE 15:2004: k = 100 / Σ S(λ) ȳ(λ) Δλ.
	for k := range o.weights {
		o.weights[k] = o.weights[k].scaled(100 / normal)
	}
	o.white = o.see(flat(1))
	return o
}

// see adds up what a reflectance sends to the eye.
func (o *observed) see(s Spectrum) XYZ {
	return XYZ{sum(&o.weights[0], &s), sum(&o.weights[1], &s), sum(&o.weights[2], &s)}
}

// number reads a figure of cie.csv.
func number(text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("colour: cie.csv: " + err.Error())
	}
	return x
}
