package main

import (
	"cmp"
	"encoding/json"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"github.com/gin-gonic/gin"

	"coatwright/planner"
	"coatwright/planner/critique"
	"coatwright/planner/sheet"
	"coatwright/web"
)

// edit is a kept plan while it is edited.
type edit struct {
	id      string
	base    *planner.Plan // as it is kept
	plan    *planner.Plan // with the changes made
	changes []change
	said    []string
	kept    []planner.Kept
}

// openEdit opens a kept plan for editing, with the changes that a page carries.
func (s *site) openEdit(id, done string) (*edit, error) {
	saved, job, err := s.keptJob(id)
	if err != nil {
		return nil, err
	}
	base, err := keptPlan(saved)
	if err != nil {
		return nil, err
	}
	base.Job = job
	if base.Refused != nil || len(base.Steps) == 0 {
		return nil, &failure{status: http.StatusConflict, heading: "There is no plan to change", detail: "This job has no steps. Change the job instead.", suggest: "/plan?from=" + saved.ID}
	}
	e := &edit{id: saved.ID, base: base, plan: base, changes: []change{}, kept: base.Kept}
	changes, err := parseChanges(done)
	if err == nil {
		err = e.make(s, changes)
	}
	if err != nil {
		return nil, &failure{status: http.StatusUnprocessableEntity, heading: "The changes could not be read", detail: upperFirst(err.Error()) + ".", suggest: "/plan/" + saved.ID + "/edit"}
	}
	return e, nil
}

// make makes more changes, all or none.
func (e *edit) make(s *site, changes []change) error {
	if len(e.changes)+len(changes) > maxChanges {
		return fmt.Errorf("there are more than %d changes: save the plan, and go on from there", maxChanges)
	}
	plan, said, err := replay(e.plan, s.notes.Planner(), changes)
	if err != nil {
		return err
	}
	e.plan, e.changes, e.said = plan, append(e.changes, changes...), append(e.said, said...)
	return nil
}

// editForm shows a kept plan's steps to be edited.
func (s *site) editForm(c *gin.Context) error {
	e, err := s.openEdit(c.Param("id"), "")
	if err != nil {
		return err
	}
	return s.sendEdit(c, http.StatusOK, e, nil, "")
}

// editPlan makes the changes that were posted and shows what they do, or keeps
// the plan. What cannot be read comes back as it was entered.
func (s *site) editPlan(c *gin.Context) error {
	form, err := postedForm(c, "form")
	if err != nil {
		return err
	}
	done, do := form.Get("done"), form.Get("do")
	if do == "undo" {
		if done, err = withoutLast(done); err != nil {
			return &failure{status: http.StatusUnprocessableEntity, heading: "The changes could not be read", detail: upperFirst(err.Error()) + ".", suggest: "/plan/" + c.Param("id") + "/edit"}
		}
		form = onlyReasons(form)
	}
	e, err := s.openEdit(c.Param("id"), done)
	if err != nil {
		return err
	}
	e.kept = keptReasons(form)
	changes, problems := entered(form, e.plan)
	if len(problems) > 0 {
		return s.sendEdit(c, http.StatusUnprocessableEntity, e, &enteredForm{form, problems}, "")
	}
	if err := e.make(s, changes); err != nil {
		return s.sendEdit(c, http.StatusUnprocessableEntity, e, &enteredForm{form: form}, upperFirst(err.Error())+".")
	}
	if repair, is := strings.CutPrefix(do, "repair "); is {
		var r critique.Repair
		err := json.Unmarshal([]byte(repair), &r)
		if err == nil {
			err = e.make(s, []change{ofRepair(r)})
		}
		if err != nil {
			return s.sendEdit(c, http.StatusUnprocessableEntity, e, nil, "That repair no longer fits: "+err.Error()+".")
		}
	}
	if do == "save" {
		return s.saveEdit(c, e)
	}
	return s.sendEdit(c, http.StatusOK, e, nil, "")
}

// withoutLast takes the last change back.
func withoutLast(done string) (string, error) {
	changes, err := parseChanges(done)
	if err != nil || len(changes) == 0 {
		return "", err
	}
	b, err := json.Marshal(changes[:len(changes)-1])
	return string(b), err
}

// onlyReasons is a form without the fields of steps: their places may have moved.
func onlyReasons(form url.Values) url.Values {
	out := url.Values{}
	for name, values := range form {
		if strings.HasPrefix(name, keepPrefix) {
			out[name] = values
		}
	}
	return out
}

// saveEdit keeps the edited plan under an address of its own, unless a need is
// left unmet for no reason.
func (s *site) saveEdit(c *gin.Context, e *edit) error {
	found, err := e.critique(s)
	if err != nil {
		return err
	}
	if found.Open > 0 {
		return s.sendEdit(c, http.StatusUnprocessableEntity, e, nil, "It is not saved yet: of each need that is not met, make the repair or say why it is kept so.")
	}
	if len(e.changes) == 0 && len(e.kept) == 0 && len(e.base.Kept) == 0 {
		c.Redirect(http.StatusSeeOther, "/plan/"+e.id)
		return nil
	}
	plan, err := critique.Retimed(e.plan, s.notes.Planner())
	if err != nil {
		return err
	}
	plan.Kept = matching(e.kept, found.Findings)
	plan.Title = strings.TrimSuffix(cmp.Or(plan.Title, "Job without a name"), ", edited") + ", edited"
	id, err := s.keepPlan(plan)
	if err != nil {
		return err
	}
	c.Redirect(http.StatusSeeOther, "/plan/"+id)
	return nil
}

// critique criticises the plan as it is now.
func (e *edit) critique(s *site) (*critique.Critique, error) {
	plan := *e.plan
	plan.Kept = e.kept
	return critique.Of(&plan, s.notes.Planner())
}

// matching are the reasons for what is found, in the order in which it is.
func matching(kept []planner.Kept, found []critique.Finding) []planner.Kept {
	out := []planner.Kept{}
	for _, f := range found {
		k := planner.Kept{Step: f.Step, Need: f.Need, Reason: f.Kept}
		if f.Level == critique.Breaks && slices.Contains(kept, k) && !slices.Contains(out, k) {
			out = append(out, k)
		}
	}
	return out
}

// enteredForm is what stands in the fields, and what is wrong with it.
type enteredForm struct {
	form     url.Values
	problems map[string]string
}

// sendEdit shows the steps and the critique beside them.
func (s *site) sendEdit(c *gin.Context, status int, e *edit, again *enteredForm, message string) error {
	found, err := e.critique(s)
	if err != nil {
		return err
	}
	timed, err := critique.Retimed(e.plan, s.notes.Planner())
	if err != nil {
		return err
	}
	done, err := json.Marshal(e.changes)
	if err != nil {
		return err
	}
	page := web.EditPage{
		Frame: frame(c, "Change the steps: "+e.base.Title, web.AtJobs), ID: e.id, Job: e.base.Title,
		Changes: e.said, Done: string(done), Verdict: upperFirst(sheet.CritiqueVerdict(found)), Open: found.Open, Message: message,
		Before: e.base.Totals, After: timed.Totals,
	}
	for i := range e.plan.Steps {
		page.Steps = append(page.Steps, web.EditStepOf(e.plan, i).At(timed))
	}
	for _, f := range found.Findings {
		shown := editFinding(f, e.plan)
		shown.Same = slices.ContainsFunc(page.Findings, func(o web.EditFinding) bool { return o.Do == shown.Do && o.Do != "" })
		page.Findings = append(page.Findings, shown)
	}
	for _, k := range e.kept {
		if !slices.ContainsFunc(found.Findings, func(f critique.Finding) bool {
			return f.Level == critique.Breaks && f.Step == k.Step && f.Need == k.Need
		}) {
			page.Carried = append(page.Carried, web.EditReason{Name: keepName(k.Step, k.Need), Reason: k.Reason})
		}
	}
	if again != nil {
		page.Enter(again.form, again.problems)
	}
	return send(c, status, page)
}

// editFinding is a finding with what the page needs to answer it.
func editFinding(f critique.Finding, p *planner.Plan) web.EditFinding {
	out := web.EditFinding{Finding: f, Keep: web.EditReason{Name: keepName(f.Step, f.Need), Reason: f.Kept}}
	out.N = 1 + planner.StepAt(p.Steps, f.Step)
	if f.Repair != nil {
		if repair, err := json.Marshal(f.Repair); err == nil { // texts and numbers only
			out.Do = "repair " + string(repair)
		}
	}
	return out
}
