package colour

import (
	"coatwright/planner/trace"
	q "coatwright/quantity"
)

// DepthFormula is how much film there is, beside another.
var DepthFormula = trace.Formula{
	Text:   "d = coats × build × strength / (the same of the swatch)",
	Source: "Beer-Lambert law",
	Note:   "background/how-candy-makes-its-colour",
}

// StrengthFormula is how strong a dry film is, by its mix.
var StrengthFormula = trace.Formula{
	Text:   "strength = c / (Sb + c Sc)",
	Source: "conservation of volume: thinner leaves, solids stay",
	Note:   "background/how-candy-makes-its-colour",
}

// Film is how much of a candy lies on a ground.
type Film struct {
	Coats    q.Number // a part of a coat counts
	Build    q.Length // of one coat, dry
	Strength q.Number // colour in a volume of dry film; only its ratio to another's matters
}

// Depth returns how much colour f has beside the film of.
func (f Film) Depth(of Film) q.Number { return f.colour() / of.colour() }

func (f Film) colour() q.Number { return f.Coats * q.Number(f.Build) * f.Strength }

// Strength returns that of a dry film whose mix had a share of concentrate to
// its binder, by volume, each with its solids by volume. It is the volume of
// concentrate that a volume of dry film was made with.
func Strength(share, concentrate, binder q.Fraction) q.Number {
	return q.Number(share / (binder + share*concentrate))
}
