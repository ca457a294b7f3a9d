package mix

import (
	"fmt"
	"slices"
	"strings"

	"coatwright/nearest"
	"coatwright/planner/trace"
)

// OrderFormula is the rule that Order keeps.
var OrderFormula = trace.Formula{
	Text:   "a part goes in after all that it goes into; what thins goes in last",
	Source: "common practice, no published source",
	Note:   "background/why-mixes-stand",
}

// Order returns parts in a pouring order that keeps the rules of all of them,
// and between parts that no rule parts the given order. What a part goes Into is
// stronger than that a thinner goes in last. The error names a part that is not
// there, or the circle in which rules go.
func Order(parts []Part) ([]Part, error) {
	r, err := rulesOf(parts)
	if err != nil {
		return nil, err
	}
	ordered := make([]Part, 0, len(parts))
	poured := make([]bool, len(parts))
	for range parts {
		i := r.next(poured)
		if i < 0 {
			return nil, r.circle(poured)
		}
		poured[i] = true
		ordered = append(ordered, parts[i])
	}
	return ordered, nil
}

// Breach is a pour that breaks a rule.
type Breach struct {
	Pour  int    // the place of the part, 0 for the first pour
	Part  string // what goes in too early
	Wants string // what must be in the cup before it
	Text  string // what is wrong, and what to do
}

// CheckOrder returns every rule that the order of parts breaks, in that order.
func CheckOrder(parts []Part) []Breach {
	var found []Breach
	r := rules{parts: parts, index: map[string]int{}}
	for i, p := range parts {
		r.index[p.Name] = i
	}
	for i, p := range parts {
		for _, name := range p.Into {
			if at, there := r.index[name]; !there {
				found = append(found, Breach{i, p.Name, name, fmt.Sprintf("pour %d: %s", i+1, r.absent(p, name))})
			} else if at >= i {
				found = append(found, Breach{i, p.Name, name,
					fmt.Sprintf("pour %d: %s goes into %s, and none is in the cup yet; pour %s first", i+1, p.Name, name, name)})
			}
		}
		for at := i + 1; at < len(parts); at++ {
			if r.thinsAfter(i, at) {
				late := parts[at].Name
				found = append(found, Breach{i, p.Name, late,
					fmt.Sprintf("pour %d: %s only thins, and %s is not in the cup yet; pour %s first", i+1, p.Name, late, late)})
			}
		}
	}
	return found
}

// rules are what must be in the cup before what.
type rules struct {
	parts []Part
	index map[string]int
}

// rulesOf refuses a part that goes into what is not there.
func rulesOf(parts []Part) (rules, error) {
	index, err := indexOf(parts)
	if err != nil {
		return rules{}, err
	}
	r := rules{parts, index}
	for i, p := range parts {
		for _, name := range p.Into {
			if _, there := index[name]; !there {
				return rules{}, fmt.Errorf("part %d of the mix: %s", i+1, r.absent(p, name))
			}
		}
	}
	return r, nil
}

// absent says that p goes into something that is not in the mix.
func (r rules) absent(p Part, name string) string {
	var others []string
	for _, o := range r.parts {
		if o.Name != p.Name {
			others = append(others, o.Name)
		}
	}
	return fmt.Sprintf("%s goes into %s, which is not in this mix; expected one of: %s%s",
		p.Name, name, strings.Join(others, ", "), nearest.Hint(nearest.To(name, others)))
}

// next is the first part that may go in after those in the cup, -1 for none.
func (r rules) next(poured []bool) int {
	for i := range r.parts {
		if !poured[i] && r.waitsFor(i, poured) < 0 {
			return i
		}
	}
	return -1
}

// waitsFor is the first part that must be in the cup before i and is not, -1 for
// none.
func (r rules) waitsFor(i int, poured []bool) int {
	for at := range r.parts {
		if !poured[at] && r.after(i, at) {
			return at
		}
	}
	return -1
}

// after reports whether part i must go in after part at.
func (r rules) after(i, at int) bool {
	return slices.Contains(r.parts[i].Into, r.parts[at].Name) || r.thinsAfter(i, at)
}

// thinsAfter reports whether part i only thins, and part at does more and does
// not go into it.
func (r rules) thinsAfter(i, at int) bool {
	return r.parts[i].Thins && !r.parts[at].Thins && !r.goesInto(at, i, make([]bool, len(r.parts)))
}

// goesInto reports whether part i goes into part at, or into one that does.
func (r rules) goesInto(i, at int, seen []bool) bool {
	if seen[i] {
		return false
	}
	seen[i] = true
	return slices.ContainsFunc(r.parts[i].Into, func(name string) bool {
		next, there := r.index[name]
		return there && (next == at || r.goesInto(next, at, seen))
	})
}

// circle is the error for parts that wait for each other.
func (r rules) circle(poured []bool) error {
	at := slices.Index(poured, false)
	var path []int
	for !slices.Contains(path, at) {
		path = append(path, at)
		at = r.waitsFor(at, poured)
	}
	path = append(path[slices.Index(path, at):], at)
	words := make([]string, len(path))
	for i, p := range path {
		words[i] = r.parts[p].Name
	}
	return fmt.Errorf("no pouring order keeps the rules: %s; expected one of them to go in first", strings.Join(words, " after "))
}
