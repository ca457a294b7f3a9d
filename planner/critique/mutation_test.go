package critique_test

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"coatwright/planner"
	"coatwright/planner/critique"
	"coatwright/planner/library"
)

var mutations = flag.Int("mutations", 500, "how many random mutations to try")

// TestDroppedSteps drops every step of every example plan in turn. Planning
// again without that step is the judge: where that breaks, or where something
// else must take its place, the critique speaks.
func TestDroppedSteps(t *testing.T) {
	lib := builtIn(t)
	for _, file := range exampleJobs(t) {
		p := planOf(t, file, lib)
		for _, s := range p.Steps {
			c := criticised(t, p, lib, critique.Repair{Do: critique.Drop, Step: s.ID})
			if c.Open > 0 || s.Advised {
				continue
			}
			d, err := planner.Without(p.Job, lib, s.ID)
			if err != nil {
				t.Fatal(err)
			}
			if d.Answer == planner.Breaks || d.Answer == planner.Instead {
				t.Errorf("%s without %s (%s): the planner says %s, the critique nothing", filepath.Base(file), s.ID, s.Title, d.Answer)
			}
		}
	}
}

func criticised(t *testing.T, p *planner.Plan, lib *library.Library, r critique.Repair) *critique.Critique {
	t.Helper()
	edited, err := critique.Apply(p, lib, r)
	if err != nil {
		t.Fatal(err)
	}
	c, err := critique.Findings(edited, lib)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// mutation is a change to a plan, and the ids of the steps that the critique may
// name for it: the step itself, those that need what it gives, and those that it
// is moved past.
type mutation struct {
	what string
	plan planner.Plan
	near []string
}

// TestMutations makes random single changes to the example plans. Each is named
// with the right step, or is harmless: the order of the rest still meets every
// need when it is read off the notes' own lists.
func TestMutations(t *testing.T) {
	lib := builtIn(t)
	var plans []*planner.Plan
	for _, file := range exampleJobs(t) {
		plans = append(plans, planOf(t, file, lib))
	}
	r := rand.New(rand.NewPCG(4, 2))
	caught, harmless := 0, 0
	for n := range *mutations {
		m := mutate(r, plans[r.IntN(len(plans))], lib)
		c, err := critique.Findings(&m.plan, lib)
		if err != nil {
			t.Fatalf("%d, %s: %v", n, m.what, err)
		}
		if c.Open == 0 {
			harmless++
			for _, fault := range reread(&m.plan, lib) {
				t.Errorf("%d, %s of %s: the critique is silent, and %s", n, m.what, m.plan.Title, fault)
			}
			continue
		}
		caught++
		named := slices.ContainsFunc(c.Findings, func(f critique.Finding) bool {
			return f.Level == critique.Breaks && (f.Step == "" || slices.Contains(m.near, f.Step))
		})
		if !named {
			t.Errorf("%d, %s of %s: named are %v, expected one of %v", n, m.what, m.plan.Title, steps(c), m.near)
		}
	}
	if caught < *mutations/4 || harmless == 0 {
		t.Errorf("%d caught and %d harmless of %d: the mutations try too little", caught, harmless, *mutations)
	}
	t.Logf("%d caught, %d harmless", caught, harmless)
}

func steps(c *critique.Critique) []string {
	var out []string
	for _, f := range c.Findings {
		if f.Level == critique.Breaks {
			out = append(out, f.Step)
		}
	}
	return out
}

func mutate(r *rand.Rand, p *planner.Plan, lib *library.Library) mutation {
	m := mutation{plan: *p}
	m.plan.Steps = slices.Clone(p.Steps)
	all := m.plan.Steps
	kind := r.IntN(6)
	i := r.IntN(len(all))
	for !suits(all[i], kind) {
		i = r.IntN(len(all))
	}
	s := &all[i]
	m.near = []string{s.ID}
	for _, why := range s.Why {
		m.near = append(m.near, why.For)
	}
	for k := i + 1; k < len(all); k++ { // what waits for it, or comes next on its parts
		if slices.ContainsFunc(all[k].Waits, func(w planner.Wait) bool { return w.After == s.ID }) || shares(all[k], *s) {
			m.near = append(m.near, all[k].ID)
		}
	}
	switch kind {
	case 0:
		m.what = "drop " + s.ID
		m.plan.Steps = slices.Delete(all, i, i+1)
	case 1:
		to := r.IntN(len(all))
		m.what = fmt.Sprintf("move %s to %d", s.ID, to)
		for k := min(i, to); k <= max(i, to); k++ {
			m.near = append(m.near, all[k].ID)
		}
		moved := *s
		m.plan.Steps = slices.Insert(slices.Delete(all, i, i+1), min(to, len(all)-1), moved)
	case 2:
		extra := all[r.IntN(len(all))]
		extra.ID += "-again"
		m.what = fmt.Sprintf("add %s before %s", extra.ID, s.ID)
		m.near = append(m.near, extra.ID)
		for _, k := range all[i:] {
			m.near = append(m.near, k.ID)
		}
		m.plan.Steps = slices.Insert(all, i, extra)
	case 3:
		m.what = "change the coats of " + s.ID
		s.Coats += []int{-1, 1, 5}[r.IntN(3)]
	case 4:
		m.what = "change the mix of " + s.ID
		mix := *s.Mix
		mix.Lines = slices.Clone(mix.Lines)
		mix.Lines[r.IntN(len(mix.Lines))].ML *= []float64{0.5, 0.99, 1.5}[r.IntN(3)]
		s.Mix = &mix
	case 5:
		m.what = "cut a wait of " + s.ID
		s.Waits = slices.Clone(s.Waits)
		s.Waits[r.IntN(len(s.Waits))].Min = 0
	}
	return m
}

// suits reports whether a step has what a kind of mutation changes.
func suits(s planner.Step, kind int) bool {
	switch kind {
	case 3:
		return s.Coats > 0
	case 4:
		return s.Mix != nil
	case 5:
		return len(s.Waits) > 0
	}
	return true
}

func shares(a, b planner.Step) bool {
	return slices.ContainsFunc(a.Parts, func(p string) bool { return slices.Contains(b.Parts, p) })
}

// reread looks over a plan that is held to be harmless, by the plain rule alone:
// on each part every need that is one fact was given, or held at the start, and
// has not been spoiled since. It knows nothing of times.
func reread(p *planner.Plan, lib *library.Library) []string {
	var faults []string
	for _, part := range p.Job.Parts {
		held := map[string]bool{}
		for _, l := range planner.StartFacts(part, lib) {
			held[l.Fact] = true
		}
		for _, s := range p.Steps {
			if !part.In(s.Parts) {
				continue
			}
			note := lib.Steps[strings.TrimPrefix(s.Note, "step/")]
			for _, n := range note.Needs {
				fact := lib.Words.Facts[n.Any[0].Fact]
				if len(n.Any) == 1 && fact != nil && !held[fact.Name] {
					faults = append(faults, fmt.Sprintf("%s lacks %q on %s", s.ID, fact.Name, part.Name))
				}
			}
			give(held, s, note, lib)
			if note.Strips {
				for _, l := range lib.Substrates[lib.Substrates[part.Substrate].Under].Facts {
					held[l.Fact] = true
				}
			}
		}
	}
	return faults
}

func give(held map[string]bool, s planner.Step, note *library.Step, lib *library.Library) {
	spoils, gives := slices.Clone(note.Spoils), slices.Clone(note.Gives)
	if m := lib.Materials[strings.TrimPrefix(s.Material, "material/")]; note.Lays != "" && m != nil {
		spoils = append(spoils, m.Spoils...)
		for _, g := range m.Gives {
			gives = append(gives, library.Literal{Fact: g})
		}
		for name, f := range lib.Words.Facts {
			if f.Of == library.Surface {
				brought := f.Fresh || slices.ContainsFunc(gives, func(l library.Literal) bool { return l.Fact == name })
				held[name] = brought && (m.Role != "art" || held[name])
			}
		}
		if m.Role == "art" { // beside it the old film shows: what holds there held before
			gives = slices.DeleteFunc(gives, func(l library.Literal) bool {
				f := lib.Words.Facts[l.Fact]
				return f != nil && f.Of == library.Surface
			})
		}
	}
	for _, f := range spoils {
		delete(held, f)
	}
	for _, l := range gives {
		held[l.Fact] = true
	}
}
