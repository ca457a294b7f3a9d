package planner

import (
	"math"

	q "coatwright/quantity"
)

// Poured writes a volume or a mark of the mix as it is read off the cup: to the
// nearest line, unless some pour is less than a line.
func (m *Mix) Poured(s *q.System, ml float64) string {
	line := m.LineML
	if s == q.US {
		line = m.LineOzML
	}
	if line > 0 && m.smallest() >= line {
		ml = q.RoundTo(ml, line)
	}
	return q.Show(s, q.Volume(ml*1e-6))
}

// WeighIt reports whether some pour is less than a line of the cup, so that only
// a scale can measure the mix.
func (m *Mix) WeighIt() bool { return m.smallest() < m.LineML }

// smallest is the smallest pour of the mix, in mL.
func (m *Mix) smallest() float64 {
	least := math.Inf(1)
	for _, l := range m.Lines {
		least = min(least, l.ML)
	}
	return least
}

// Weighed writes a mass of the mix as the scale shows it.
func (m *Mix) Weighed(s *q.System, g float64) string {
	if m.ScaleG > 0 {
		g = q.RoundTo(g, m.ScaleG)
	}
	return q.Show(s, q.Mass(g*1e-3))
}
