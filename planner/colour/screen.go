package colour

import (
	"fmt"
	"math"
	"sync"

	"coatwright/planner/trace"
)

// ScreenFormula is how a screen's colour is meant.
var ScreenFormula = trace.Formula{
	Text:   "C = C'/12.92 up to 0.04045, else ((C' + 0.055)/1.055)^2.4; XYZ = M RGB, with M from the primaries (0.64, 0.33), (0.30, 0.60), (0.15, 0.06) and the white of D65",
	Source: "IEC 61966-2-1:1999, sRGB",
	Note:   "background/how-colour-is-measured",
}

// Screen is a colour of a screen: sRGB with 8 bits each.
type Screen struct{ R, G, B uint8 }

// String writes c as "#rrggbb".
func (c Screen) String() string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// MarshalText writes c as String does.
func (c Screen) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// XYZ returns what c looks like. The screen's white is what reflects
// everything.
func (c Screen) XYZ() XYZ {
	return screen().light.of([3]float64{
		linear(float64(c.R) / 255), linear(float64(c.G) / 255), linear(float64(c.B) / 255)})
}

// Screen returns the colour of a screen that looks like c, and whether there is
// one. Where there is none, it is the most colourful one of the lightness and
// the hue of c: its CIELAB chroma is cut back as far as it must be.
func (c XYZ) Screen() (s Screen, exact bool) {
	m := screen()
	if rgb := m.drive.ofXYZ(c); shows(rgb) {
		return encoded(rgb), true
	}
	full := c.Lab()
	full.L = min(max(full.L, 0), 100)
	low, high := 0.0, 1.0
	for high-low > 1e-3 {
		middle := (low + high) / 2
		if shows(m.drive.ofXYZ(full.faded(middle).XYZ())) {
			low = middle
		} else {
			high = middle
		}
	}
	return encoded(m.drive.ofXYZ(full.faded(low).XYZ())), false
}

// faded is c with a share of its chroma.
func (c Lab) faded(share float64) Lab { return Lab{c.L, share * c.A, share * c.B} }

// shows reports whether a screen has these amounts of its primaries: those
// that round to 0..255.
func shows(rgb [3]float64) bool {
	return least <= min(rgb[0], rgb[1], rgb[2]) && max(rgb[0], rgb[1], rgb[2]) < most
}

// The ends of what rounds to a code of 0..255, as amounts of a primary.
var (
	least = -0.5 / 255 / 12.92
	most  = linear(255.5 / 255)
)

func encoded(rgb [3]float64) Screen { return Screen{code(rgb[0]), code(rgb[1]), code(rgb[2])} }

func code(amount float64) uint8 {
	c := 12.92 * amount
	if amount > 0.0031308 {
		c = 1.055*math.Pow(amount, 1/2.4) - 0.055
	}
	return uint8(math.Round(255 * min(max(c, 0), 1)))
}

func linear(c float64) float64 {
	if c <= 0.04045 {
		return c / 12.92
	}
	return math.Pow((c+0.055)/1.055, 2.4)
}

// matrix is 3 by 3, by rows.
type matrix [3][3]float64

func (m *matrix) of(v [3]float64) XYZ {
	r := m.times(v)
	return XYZ{r[0], r[1], r[2]}
}

func (m *matrix) ofXYZ(c XYZ) [3]float64 { return m.times(c.sums()) }

func (m *matrix) times(v [3]float64) [3]float64 {
	var out [3]float64
	for i, row := range m {
		out[i] = row[0]*v[0] + row[1]*v[1] + row[2]*v[2]
	}
	return out
}

// inverse is by cofactors.
func (m *matrix) inverse() matrix {
	minor := func(i, j int) float64 {
		a, b, c, d := (i+1)%3, (i+2)%3, (j+1)%3, (j+2)%3
		return m[a][c]*m[b][d] - m[a][d]*m[b][c]
	}
	whole := m[0][0]*minor(0, 0) + m[0][1]*minor(0, 1) + m[0][2]*minor(0, 2)
	var out matrix
	for i := range out {
		for j := range out {
			out[i][j] = minor(j, i) / whole
		}
	}
	return out
}

// screen are the ways from amounts of the primaries to XYZ and back. They are
// worked out from the primaries of IEC 61966-2-1 and our own D65, so that white
// is exactly what reflects everything; the standard's printed matrix, rounded
// to four figures, is white only to four figures.
var screen = sync.OnceValue(func() *struct{ light, drive matrix } {
	var out struct{ light, drive matrix }
	primaries := matrix{{0.64, 0.30, 0.15}, {0.33, 0.60, 0.06}, {0.03, 0.10, 0.79}}
	white := White()
	back := primaries.inverse()
	amounts := back.ofXYZ(white)
	for i := range primaries {
		for j := range primaries {
			out.light[i][j] = primaries[i][j] * amounts[j]
		}
	}
	out.drive = out.light.inverse()
	return &out
})
