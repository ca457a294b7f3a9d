package route

import (
	"slices"

	"coatwright/planner/library"
	q "coatwright/quantity"
)

// turn says whether o can be done where Films[next] is laid next, and at what
// cost. Next is len(Films) once all are laid.
func (c *compiled) turn(o *op, next int) turn {
	area, after := c.extent(o, next), c.layer(next)
	if area == 0 || !onLayer(o.step.OnlyIf, after) {
		return turn{}
	}
	t := turn{ok: true}
	if !o.film.IsZero() {
		if t.required, t.ok = c.turnOf(o.film.Material, next); !t.ok {
			return turn{}
		}
		piece := c.Piece
		if t.required && after != nil {
			area, piece = after.Sprayed, after.Piece
		}
		if tooLarge(o.film, piece) != "" {
			return turn{}
		}
	}
	t.area = area
	t.cost = c.workCost(o.step, o.film, area, c.coats(o.film.Material, t.required, next))
	for _, w := range o.wants {
		saves := w.saves + q.Time(float64(w.perArea)*float64(area))
		t.missed = append(t.missed, cost(float64(minutes(saves))*c.Care+0.5))
	}
	return t
}

// extent is the area that the work of o goes by; 0 where there is no such layer.
func (c *compiled) extent(o *op, next int) q.Area {
	layer := c.layer(next)
	switch o.step.Work.Of {
	case library.OfPart:
		return c.Area
	case library.OfLaidLayer:
		layer = c.layer(next - 1)
	}
	if layer == nil {
		return 0
	}
	return layer.Extent
}

// layer is the design layer that Films[i] is, nil for none.
func (c *compiled) layer(i int) *Layer {
	if i < 0 || i >= len(c.Films) {
		return nil
	}
	return c.Films[i].Layer
}

// turnOf reports whether m may be laid where Films[next] comes next, and whether
// as that film: otherwise only as a prep film of an earlier role.
func (c *compiled) turnOf(m *library.Material, next int) (required, ok bool) {
	if next == len(c.Films) {
		return false, false
	}
	rank, wanted := c.ranks[m.Role], c.ranks[c.Films[next].Role]
	if rank == wanted {
		return true, slices.Contains(c.Films[next].Materials, m.Slug)
	}
	return false, c.prep(m.Role) && rank < wanted
}

// coats is how many coats of m are laid: as a required film may say, else as
// the material does.
func (c *compiled) coats(m *library.Material, required bool, next int) int {
	switch {
	case m == nil:
		return 0
	case required && c.Films[next].Coats > 0:
		return c.Films[next].Coats
	}
	return m.Coats
}

// Coats is how many coats of its film an action of the route lays.
func (p *Problem) Coats(a Action) int {
	if a.Required >= 0 && p.Films[a.Required].Coats > 0 {
		return p.Films[a.Required].Coats
	}
	return a.Film.Coats
}

// workCost is hands-on time, spraying time and material of one step.
func (c *compiled) workCost(s *library.Step, f Coating, area q.Area, coats int) cost {
	t := s.Work.Fixed + q.Time(float64(s.Work.PerArea)*float64(area))
	if f.IsZero() {
		return minutes(t)
	}
	litres := filmLitres(f.Material, area) * float64(coats)
	if f.Tool != nil && f.Tool.Applicator != nil {
		a := f.Tool.Applicator
		t += q.Time(float64(a.Pace) * float64(area) * float64(coats))
		litres += float64(a.Loss+a.Flush) * 1000
	}
	t += q.Time(LitreMinutes * 60 * litres)
	return minutes(t) + waitCost(c.Stands(f.Flash)*q.Time(coats-1))
}

// filmLitres is the material in one coat of the film itself, before any loss.
func filmLitres(m *library.Material, area q.Area) float64 {
	if m.SolidsByVolume <= 0 {
		return 0
	}
	return float64(area) * float64(m.Build) / float64(m.SolidsByVolume) * 1000
}
