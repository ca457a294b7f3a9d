package web

import (
	"net/url"
	"testing"

	"coatwright/planner"
	"coatwright/planner/critique"
)

func whatIfSamples() []Page {
	gone := []planner.Change{{Title: "Spray the clear", Note: "step/spray-clear", Film: "Two-pack satin clear", Work: 15}}
	rows := []WhatIfRow{
		{With: "room.air=12 C", Choices: []Figure{{Name: "Air", Value: "12 C"}}, Verdict: "The steps stay as they are.", Difference: &planner.Difference{Answer: planner.Nothing, EndMin: 1500}},
		{With: "clear=waterborne", Choices: []Figure{{Name: "Clear", Value: "Waterborne"}}, Verdict: "It takes other steps.", Difference: &planner.Difference{Answer: planner.Instead, Gone: gone, Come: gone, EndMin: -5820, WorkMin: 12}},
		{With: "care=rough", Choices: []Figure{{Name: "Care", Value: "Rough"}, {Name: "Air over the part", Value: "1 m/s"}}, Verdict: "It can be done so, at a risk.", Difference: &planner.Difference{
			Answer: planner.Misses, Misses: []planner.Reason{{Fact: "smooth", For: "spray-clear", Because: "A nib shows.", Want: true}}, Gone: gone, WorkMin: -40, RiskMin: 25}},
		{With: "applicator=airbrush", Choices: []Figure{{Name: "Applicator", Value: "Airbrush"}}, Verdict: "The job cannot be done so.", Difference: &planner.Difference{
			Answer: planner.Breaks, Refused: &planner.Refusal{Part: "frame", Fact: "film/effect", Reasons: []string{"The airbrush lies evenly on at most 0.12 m2."}}}},
	}
	refused := WhatIfPage{ID: "k3v9", Plan: refusedPage().Plan, Rows: []WhatIfRow{rows[1]}}
	refused.Rows[0].Cures = true
	return []Page{
		WhatIfPage{Frame: Frame{Title: "What if"}, ID: "k3v9", Plan: samplePlan(), Rows: rows, Air: map[string]string{"air": "12", "humidity": "60 %"}, Problems: map[string]string{"air": "Found 12, expected a temperature."}},
		refused, WhatIfPage{Plan: &planner.Plan{}},
	}
}

func sampleEdit() EditPage {
	p := samplePlan()
	page := EditPage{
		Frame: Frame{Title: "Change the steps", Here: AtJobs}, ID: "k3v9", Job: p.Title, Changes: []string{"Leave out step 2, “Degrease”.", "3 coats in step 6, “Spray the primer”."},
		Done: `[{"do":"drop","step":"degrease"}]`, Verdict: "2 needs are not met; 1 wanted and not met.", Open: 2, Message: "It is not saved yet.",
		Before: p.Totals, After: p.Totals, Carried: []EditReason{{Name: "keep denib smooth", Reason: "nobody looks there"}},
	}
	page.After.End, page.After.WorkMin = page.After.End.Add(minutes(90)), page.After.WorkMin-20
	for i := range p.Steps {
		page.Steps = append(page.Steps, EditStepOf(p, i).At(p))
	}
	page.Findings = []EditFinding{
		{Finding: critique.Finding{Level: critique.Breaks, Step: "key-by-hand", Title: "Key by hand", Note: "step/key-by-hand", Part: "frame", Need: "degreased", Says: `It needs "degreased", and nothing before it gives that.`,
			Because: "Abrasive drives grease in.", Repair: &critique.Repair{Do: critique.Add, Note: "degrease", Before: "key-by-hand", Says: `Add "Degrease" before "Key by hand".`}}, N: 2, Do: `repair {"do":"add"}`, Keep: EditReason{Name: "keep key-by-hand degreased"}},
		{Finding: critique.Finding{Level: critique.Breaks, Step: "spray-primer", Title: "Spray the primer", Note: "step/spray-primer", Need: "coats", Says: "It has 3 coats, and 2 were agreed.", Kept: "an inside face"}, N: 5, Keep: EditReason{Name: "keep spray-primer coats", Reason: "an inside face"}},
		{Finding: critique.Finding{Level: critique.Breaks, Part: "frame", Need: "film/clear", Says: "frame never gets its clear."}, Keep: EditReason{Name: "keep  film/clear"}},
		{Finding: critique.Finding{Level: critique.Risks, Step: "spray-clear", Title: "Spray the clear", Need: "smooth", Says: `It goes better with "smooth".`, Because: "A nib shows."}, N: 17},
	}
	return page
}

func editSamples() []Page {
	wrong := sampleEdit()
	wrong.Enter(url.Values{"place-degrease": {"ninety"}, "coats-spray-primer": {"0"}, "out-tack-off": {"yes"}},
		map[string]string{"place-degrease": "Found “ninety”, expected a place from 1 to 20.", "coats-spray-primer": "Found “0”, expected a number of coats."})
	return []Page{sampleEdit(), wrong, EditPage{}}
}

// TestEditKeepsWhatWasEntered: a field that cannot be read stands as it was
// entered, with what is wrong beside it, and so do the others.
func TestEditKeepsWhatWasEntered(t *testing.T) {
	page := editSamples()[1].(EditPage)
	doc := render(t, page)
	said := map[string]string{}
	for n := range doc.Descendants() {
		switch {
		case n.Data == "input" && attr(n, "name") == "place-degrease":
			if attr(n, "value") != "ninety" || attr(n, "aria-invalid") != "true" {
				t.Errorf("the place is %q", attr(n, "value"))
			}
			said[attr(n, "aria-describedby")] = ""
		case n.Data == "p" && attr(n, "id") == "place-degrease-problem":
			said[attr(n, "id")] = textOf(n)
		case n.Data == "input" && attr(n, "name") == "out-tack-off":
			checked := false
			for _, a := range n.Attr {
				checked = checked || a.Key == "checked"
			}
			if !checked {
				t.Error("the step is no longer left out")
			}
		}
	}
	if said["place-degrease-problem"] == "" || len(page.Problems) != 2 {
		t.Errorf("what is wrong is not said: %v, %v", said, page.Problems)
	}
}

func coverageSamples() []Page {
	choices := sampleChoices()
	page := CoveragePage{Frame: Frame{Title: "What can be done on what"}, Choices: choices, Finish: "satin", System: "waterborne"}
	for _, s := range choices.Substrates {
		for i, e := range choices.Effects {
			c := CoverageCell{Substrate: s.Value, Effect: e.Value, WorkMin: 245, ElapsedMin: 9 * 24 * 60, Steps: 30}
			if i == 2 {
				c = CoverageCell{Substrate: s.Value, Effect: e.Value, Lacks: "adhesive", Reason: "Nothing bonds to it."}
			}
			page.Cells = append(page.Cells, c)
		}
	}
	return []Page{page, CoveragePage{}}
}

func TestCoverageFigures(t *testing.T) {
	c := CoverageCell{WorkMin: 245, ElapsedMin: 24*60 + 1}
	if c.Days() != 2 || c.Hours() != 4 {
		t.Errorf("%g days, %g hours; want 2 and 4", c.Days(), c.Hours())
	}
	page := coverageSamples()[0].(CoveragePage)
	if n := len(page.Row("bare-steel")); n != len(page.Choices.Effects) || page.Planned() != len(page.Cells)-2 {
		t.Errorf("a row of %d cells, %d of %d planned", n, page.Planned(), len(page.Cells))
	}
	if a := page.Address(page.Cells[0]); a != "/coverage/cell?effect=solid&finish=satin&substrate=bare-steel&system=waterborne" {
		t.Errorf("a cell is at %s", a)
	}
}

func cellSamples() []Page {
	form := url.Values{"title": {"Bare steel, solid colour"}, "applicator": {"fan-gun", "airbrush"}}
	planned := CoverageCellPage{Frame: Frame{Title: "Bare steel"}, Plan: samplePlan(), Back: "/coverage?finish=satin", Form: form}
	return []Page{planned, CoverageCellPage{Plan: refusedPage().Plan, Back: "/coverage", Form: form}}
}

func TestKeptReasons(t *testing.T) {
	page := samplePlanPage()
	page.Plan.Kept = []planner.Kept{{Step: "denib", Need: "smooth", Reason: "nobody looks there"}, {Need: "film/clear", Reason: "it is cleared elsewhere"}}
	kept := page.KeptReasons()
	if len(kept) != 2 || kept[0].N != 8 || kept[0].Title != "Denib" || kept[1].N != 0 {
		t.Errorf("kept: %+v", kept)
	}
}

func hostileEdit(hostile string) EditPage {
	page := sampleEdit()
	page.Job, page.Verdict, page.Message, page.Done, page.Changes = hostile, hostile, hostile, hostile, []string{hostile}
	page.Carried = []EditReason{{Name: "keep " + hostile, Reason: hostile}}
	for i := range page.Findings {
		f := &page.Findings[i]
		f.Step, f.Title, f.Part, f.Says, f.Because, f.Note, f.Do, f.Keep = hostile, hostile, hostile, hostile, hostile, hostile, hostile, EditReason{hostile, hostile}
	}
	page.Enter(url.Values{"place-degrease": {hostile}}, map[string]string{"place-degrease": hostile})
	return page
}

func hostileWhatIf(hostile string) WhatIfPage {
	page := whatIfSamples()[0].(WhatIfPage)
	page.Air, page.Problems = map[string]string{"air": hostile}, map[string]string{"air": hostile}
	page.Rows = []WhatIfRow{{With: hostile, Choices: []Figure{{hostile, hostile}}, Verdict: hostile, Difference: &planner.Difference{
		Misses: []planner.Reason{{Fact: hostile, Because: hostile}}, Gone: []planner.Change{{Title: hostile, Note: hostile, Film: hostile}}}}}
	return page
}

func hostileCell(hostile string) CoverageCellPage {
	page := cellSamples()[1].(CoverageCellPage)
	page.Plan.Title, page.Back = hostile, "javascript:alert(1)"
	page.Plan.Refused.Fact, page.Plan.Refused.Reasons = hostile, []string{hostile}
	page.Form = url.Values{hostile: {hostile}}
	return page
}
