package main

import (
	"encoding/json"
	"fmt"
	"net/http"
	"net/url"
	"runtime"
	"slices"
	"strings"
	"sync"
	"time"

	"github.com/gin-gonic/gin"

	"coatwright/nearest"
	"coatwright/planner"
	"coatwright/strictyaml"
	"coatwright/web"
)

// gridStart is the Monday on which every job of a grid starts, so that its
// figures are the same whenever they are looked at.
var gridStart = time.Date(2026, 1, 5, 8, 0, 0, 0, time.UTC)

// gridArea is the part of every job of a grid: a small solid object.
const gridArea, gridForm = "0.3 m2", "solid"

// gridChoice is what is the same for all cells of a grid. Its words are of the
// notes, so there are few of them.
type gridChoice struct{ finish, system, clear, applicator string }

// keptGrids holds the cells of grids that were looked at: the notes do not
// change while they are served. The zero value is ready to use.
type keptGrids struct {
	mu        sync.Mutex // guards cells
	cells     map[gridChoice][]web.CoverageCell
	computing sync.Mutex // held while a grid is planned, one at a time
}

func (k *keptGrids) known(choice gridChoice) ([]web.CoverageCell, bool) {
	k.mu.Lock()
	defer k.mu.Unlock()
	cells, ok := k.cells[choice]
	return cells, ok
}

func (k *keptGrids) keep(choice gridChoice, cells []web.CoverageCell) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.cells == nil {
		k.cells = map[gridChoice][]web.CoverageCell{}
	}
	k.cells[choice] = cells
}

// coverage shows which effect can be had on which surface.
func (s *site) coverage(c *gin.Context) error {
	choices := s.choices()
	choice, err := gridChoiceOf(c.Request.URL.Query(), choices)
	if err != nil {
		return err
	}
	cells, err := s.grid(choice, choices)
	if err != nil {
		return err
	}
	c.Header("Vary", "Accept")
	if wantsJSON(c) {
		c.JSON(http.StatusOK, cells)
		return nil
	}
	return send(c, http.StatusOK, web.CoveragePage{
		Frame: frame(c, "What can be done on what", web.AtPlan), Choices: choices, Cells: cells,
		Finish: choice.finish, System: choice.system, Clear: choice.clear, Applicator: choice.applicator,
	})
}

// gridChoiceOf reads what was chosen. What is not said is satin, waterborne, any
// clear and all applicators; where the notes have no such word, their first.
func gridChoiceOf(query url.Values, choices web.Choices) (gridChoice, error) {
	var choice gridChoice
	for _, f := range []struct {
		into      *string
		name      string
		fallback  string
		of        []web.Choice
		mayBeNone bool
	}{
		{&choice.finish, "finish", "satin", choices.Finishes, false},
		{&choice.system, "system", "waterborne", choices.Systems, false},
		{&choice.clear, "clear", "", web.FormPage{}.Clears(), true},
		{&choice.applicator, "applicator", "", choices.Applicators, true},
	} {
		var words []string
		for _, o := range f.of {
			if o.Value != "" {
				words = append(words, o.Value)
			}
		}
		*f.into = query.Get(f.name)
		if *f.into == "" && !f.mayBeNone {
			*f.into = f.fallback
			if !slices.Contains(words, f.fallback) {
				*f.into = words[0]
			}
		}
		if *f.into != "" && !slices.Contains(words, *f.into) {
			fail := &failure{status: http.StatusNotFound, heading: "There is no such choice", detail: fmt.Sprintf("Found the %s %q, expected one of %s.", f.name, *f.into, strings.Join(words, ", "))}
			if near := nearest.To(*f.into, words); near != "" {
				fail.suggest = "/coverage?" + f.name + "=" + url.QueryEscape(near)
			}
			return choice, fail
		}
	}
	return choice, nil
}

// grid plans every cell, or takes the cells that were planned before.
func (s *site) grid(choice gridChoice, choices web.Choices) ([]web.CoverageCell, error) {
	if cells, ok := s.grids.known(choice); ok {
		return cells, nil
	}
	s.grids.computing.Lock()
	defer s.grids.computing.Unlock()
	if cells, ok := s.grids.known(choice); ok {
		return cells, nil // somebody else asked the same
	}
	var cells []web.CoverageCell
	for _, sub := range choices.Substrates {
		for _, effect := range choices.Effects {
			cells = append(cells, web.CoverageCell{Substrate: sub.Value, Effect: effect.Value})
		}
	}
	errs := make([]error, len(cells))
	next := make(chan int)
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), 4) {
		wait.Go(func() {
			for i := range next {
				errs[i] = s.planCell(&cells[i], choice, choices)
			}
		})
	}
	for i := range cells {
		next <- i
	}
	close(next)
	wait.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	s.grids.keep(choice, cells)
	return cells, nil
}

// planCell plans one cell of a grid.
func (s *site) planCell(cell *web.CoverageCell, choice gridChoice, choices web.Choices) error {
	plan, err := s.cellPlan(cell.Substrate, cell.Effect, choice, choices, gridStart)
	if err != nil {
		return err
	}
	if r := plan.Refused; r != nil {
		cell.Lacks = r.Fact
		if len(r.Reasons) > 0 {
			cell.Reason = r.Reasons[0]
		}
		return nil
	}
	cell.WorkMin, cell.ElapsedMin, cell.Steps = plan.Totals.WorkMin, plan.Totals.ElapsedMin, len(plan.Steps)
	return nil
}

// cellForm is the job of a cell as the form posts it.
func (s *site) cellForm(substrate, effect string, choice gridChoice, choices web.Choices, start time.Time) url.Values {
	form := url.Values{
		"title":  {s.title("substrate", substrate) + ", " + strings.ToLower(s.title("effect", effect))},
		"system": {choice.system}, "effect": {effect}, "finish": {choice.finish}, "start": {start.Format("2006-01-02T15:04")},
		"part0-name": {"part"}, "part0-substrate": {substrate}, "part0-shape": {"area"}, "part0-area": {gridArea}, "part0-form": {gridForm},
	}
	if choice.clear != "" {
		form.Set("clear", choice.clear)
	}
	if choice.applicator != "" {
		form.Set("applicator", choice.applicator)
	} else {
		for _, a := range choices.Applicators {
			form.Add("applicator", a.Value)
		}
	}
	return form
}

// cellPlan plans the job of a cell.
func (s *site) cellPlan(substrate, effect string, choice gridChoice, choices web.Choices, start time.Time) (*planner.Plan, error) {
	document, _ := documentOf(s.cellForm(substrate, effect, choice, choices, start))
	job, err := planner.ParseJob("the cell", document, s.notes.Planner())
	if err != nil {
		return nil, err
	}
	return planner.New(job, s.notes.Planner())
}

// coverageCell plans one cell on the fly: what is done, or why it cannot be.
func (s *site) coverageCell(c *gin.Context) error {
	choices := s.choices()
	query := c.Request.URL.Query()
	choice, err := gridChoiceOf(query, choices)
	if err != nil {
		return err
	}
	start := nextMorning(s.now())
	plan, err := s.cellPlan(query.Get("substrate"), query.Get("effect"), choice, choices, start)
	if problems, is := err.(strictyaml.Problems); is {
		var says []string
		for _, p := range problems {
			says = append(says, messageOf(p))
		}
		return &failure{status: http.StatusNotFound, heading: "There is no such cell", detail: strings.Join(says, " "), suggest: "/coverage"}
	}
	if err != nil {
		return err
	}
	c.Header("Vary", "Accept")
	if wantsJSON(c) {
		body, err := json.Marshal(plan)
		if err != nil {
			return err
		}
		c.Data(http.StatusOK, "application/json; charset=utf-8", body)
		return nil
	}
	back := url.Values{"finish": {choice.finish}, "system": {choice.system}, "clear": {choice.clear}, "applicator": {choice.applicator}}
	return send(c, http.StatusOK, web.CoverageCellPage{
		Frame: frame(c, plan.Title, web.AtPlan), Back: "/coverage?" + back.Encode(), Plan: plan, Titles: s.titles(),
		Form: s.cellForm(query.Get("substrate"), query.Get("effect"), choice, choices, start),
	})
}
