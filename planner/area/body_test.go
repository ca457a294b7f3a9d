package area

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	q "coatwright/quantity"
)

// Published, to ten figures: codegolf.stackexchange.com, "Circumference of an
// ellipse", by the Gauss-Kummer series with 1000 terms.
func TestAroundEllipse(t *testing.T) {
	for _, c := range []struct{ a, b, want float64 }{
		{1, 1, 6.283185307}, {1.2, 1, 6.925791195}, {1.5, 1, 7.932719795}, {2, 1, 9.688448220}, {3, 1, 13.36489322},
	} {
		near(t, "around", aroundEllipse(c.a, c.b), c.want, 1e-9)
		near(t, "around, turned", aroundEllipse(c.b, c.a), c.want, 1e-9)
	}
	near(t, "around a sliver", aroundEllipse(1, 1e-9), 4, 1e-9)
}

// point is a corner of a polygon.
type point struct{ x, y float64 }

// polygon is what the corners enclose (shoelace formula) and the way round them.
func polygon(corners []point) (area, perimeter float64) {
	for i, p := range corners {
		n := corners[(i+1)%len(corners)]
		area += (p.x*n.y - n.x*p.y) / 2
		perimeter += math.Hypot(n.x-p.x, n.y-p.y)
	}
	return math.Abs(area), perimeter
}

// corners are points of an outline, one side and back along the other.
func (o outline) corners(n int) []point {
	var half []point
	at := o.ends[0]
	for i := range n {
		a := math.Pi / 2 * float64(i) / float64(n)
		half = append(half, point{at * (1 - math.Cos(a)), o.width[0] / 2 * math.Sin(a)})
	}
	for j, length := range o.sides {
		for i := range n {
			v := float64(i) / float64(n)
			w := o.width[j] + (o.width[j+1]-o.width[j])*(3*v*v-2*v*v*v)
			half = append(half, point{at + v*length, w / 2})
		}
		at += length
	}
	for i := range n {
		a := math.Pi / 2 * float64(i) / float64(n)
		half = append(half, point{at + o.ends[1]*math.Sin(a), o.width[2] / 2 * math.Cos(a)})
	}
	out := append([]point(nil), half...)
	out = append(out, point{at + o.ends[1], 0})
	for i := len(half) - 1; i > 0; i-- {
		out = append(out, point{half[i].x, -half[i].y})
	}
	return out
}

func TestOutline(t *testing.T) {
	ellipse := outline{ends: [2]float64{2, 2}, width: [3]float64{2, 2, 2}}
	near(t, "ellipse", ellipse.area(), 2*math.Pi, 1e-12)
	near(t, "around the ellipse", ellipse.perimeter(), 9.688448220, 1e-9) // see TestAroundEllipse

	// A strip with round ends, 1 long and 0.4 wide.
	strip := Body{Length: 1, Upper: 0.4, Waist: 0.4, Lower: 0.4, UpperAt: 0.2, LowerAt: 0.8, Thickness: 0.1}
	near(t, "strip with round ends", float64(strip.Area()), 2*(math.Pi*0.04+0.4*0.6)+0.1*(math.Pi*0.4+2*0.6), 1e-9)

	// A step of the outline is as long as it is high.
	step := outline{ends: [2]float64{1, 1}, width: [3]float64{2, 2, 4}}
	near(t, "half discs that meet at a step", step.perimeter(), math.Pi+aroundEllipse(1, 2)/2+2, 1e-9)
}

func TestOutlineIsItsPolygon(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := rapid.Float64Range(0.05, 0.5)
		draw := func(what string) float64 { return length.Draw(t, what) }
		o := outline{
			ends:  [2]float64{draw("x1"), draw("x4")},
			sides: [2]float64{draw("x2"), draw("x3")},
			width: [3]float64{draw("upper"), draw("waist"), draw("lower")},
		}
		area, around := polygon(o.corners(400))
		if math.Abs(o.area()/area-1) > 1e-4 || math.Abs(o.perimeter()/around-1) > 1e-4 {
			t.Errorf("%+v: %v m2, %v m round; as a polygon %v m2, %v m", o, o.area(), o.perimeter(), area, around)
		}
	})
}

// guitars are outlines r = a0 + a1 cos θ + a2 cos 2θ + a6 cos 6θ, drawn out
// across by m: a family of curves that was made after classical guitars
// (Stegall, waynestegall.com/guitar/guio.htm, equation 5; coefficients worked
// independently for bodies of 470 to 508 mm).
var guitars = []struct {
	name              string
	a0, a1, a2, a6, m float64
	length, upper     q.Length
	waist, lower      q.Length
}{
	{"classical", 0.1664, 0.0311, 0.0801, -0.004, 1.3683, 0.485, 0.280, 0.235, 0.365},
	{"small", 0.1608, 0.0348, 0.0782, -0.004, 1.2947, 0.470, 0.250, 0.210, 0.340},
	{"large", 0.1822, 0.0393, 0.0758, -0.004, 1.3368, 0.508, 0.292, 0.273, 0.397},
	{"rounder", 0.1648, 0.0308, 0.0777, 0, 1.3831, 0.485, 0.280, 0.235, 0.365},
}

// Three widths and a length give the outline of a guitar's face within 3 %, and
// the way round it within 2 %.
func TestBodyAgainstDrawnOutlines(t *testing.T) {
	for _, g := range guitars {
		var corners []point
		var widest q.Length
		for i := range 4000 {
			a := 2 * math.Pi * float64(i) / 4000
			r := g.a0 + g.a1*math.Cos(a) + g.a2*math.Cos(2*a) + g.a6*math.Cos(6*a)
			corners = append(corners, point{r * math.Cos(a), g.m * r * math.Sin(a)})
			widest = max(widest, q.Length(2*g.m*r*math.Sin(a)))
		}
		near(t, g.name+": lower bout of the curve", float64(widest), float64(g.lower), 2e-3)
		area, around := polygon(corners)
		b := Body{Length: g.length, Upper: g.upper, Waist: g.waist, Lower: g.lower, Thickness: 0.1}
		near(t, g.name+": face", b.outline().area(), area, 0.03)
		near(t, g.name+": way round", b.outline().perimeter(), around, 0.02)
	}
}
