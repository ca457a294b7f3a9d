package web

import (
	"fmt"
	"html/template"
	"time"

	"coatwright/content"
	"coatwright/planner"
	"coatwright/planner/trace"
	q "coatwright/quantity"
	"coatwright/workout"
)

// The samples are invented: no can, shop or job is behind them.

func at(dayOfMonth, hour, minute int) time.Time {
	return time.Date(2026, 12, dayOfMonth, hour, minute, 0, 0, time.UTC)
}

// step starts a sample step.
func step(id, title, role string, start time.Time, work float64) planner.Step {
	return planner.Step{
		ID: id, Note: "step/" + id, Title: title, For: role, Parts: []string{"frame", "blade (2)"},
		Because: "Whatever lies on the surface now is sealed in by the next film.",
		Skipped: "It shows in the gloss, and it is too late then.",
		WorkMin: work, Start: start, End: start.Add(minutes(work)),
		Uses:     []planner.Use{{Note: "tool/lint-free-cloth", Title: "Lint-free cloth"}, {Note: "material/final-wipe", Title: "Final wipe", ML: 24}},
		Cautions: []string{"skin-contact"},
		Checks:   []string{"A clean cloth stays clean.", "Nothing shows under a low light."},
		Why:      []planner.Reason{{Fact: "wiped", For: planner.Agreed, Because: "Finger marks are sealed in: spots that lift."}},
	}
}

func film(s planner.Step, material, title, colour string, coats int, dry, wet float64) planner.Step {
	s.Films, s.Material, s.Colour = []string{title}, "material/"+material, colour
	s.Coats, s.DryUm, s.WetUm, s.FlashMin = coats, dry, wet, 8
	s.Applicator, s.Pressure = "tool/fan-gun", 200
	s.FanMM, s.DistanceMM, s.Overlap = 225, 175, 62.5
	s.Uses = nil
	return s
}

func wait(after, until string, least, most float64) planner.Wait {
	return planner.Wait{Until: until, After: after, Min: least, Max: most, By: "evaporation", How: "30 min at 23 C, 50 % RH, still air; slower by 1.13 at 21 C, 55 %"}
}

func mixOf(step planner.Step, lines ...planner.Pour) planner.Step {
	step.Mix = &planner.Mix{Lines: lines, StandMin: 15, PotLife: 480, StrainUm: 190, Batches: 1, Fills: 2,
		LowML: 118, HighML: 190, TotalML: 148, TotalG: 171, Transfer: "30 to 50 % on open work", VOCgPerL: 92}
	step.Uses = []planner.Use{{Note: "tool/mixing-cup", Title: "Mixing cup"}, {Note: "tool/scale", Title: "Scale"}}
	return step
}

func sampleSteps() []planner.Step {
	steps := []planner.Step{
		step("identify-surface", "Find out what the surface is", "prime", at(1, 8, 0), 10),
		step("degrease", "Degrease", "prime", at(1, 8, 10), 15),
		step("key-by-hand", "Key by hand", "prime", at(1, 8, 25), 35),
		mixOf(step("mix-and-stand", "Mix, stand and strain", "prime", at(1, 9, 0), 6),
			planner.Pour{Material: "rust-primer", Title: "Rust primer", Share: "4 parts", ML: 96, G: 130, MarkML: 96, MarkG: 130},
			planner.Pour{Material: "primer-hardener", Title: "Primer hardener", Share: "1 part", ML: 24, G: 24, MarkML: 120, MarkG: 154},
			planner.Pour{Material: "slow-thinner", Title: "Slow thinner", Share: "20 % of hardener and base (15 to 25)", ML: 28, G: 25, MarkML: 148, MarkG: 179}),
		step("tack-off", "Tack off", "prime", at(1, 9, 16), 5),
		film(step("spray-primer", "Spray the primer", "prime", at(1, 9, 21), 18), "rust-primer", "Rust primer", "", 2, 50, 71),
		step("flush-gun", "Flush the gun", "", at(1, 9, 39), 8),
		step("denib", "Denib", "effect", at(1, 13, 5), 10),
		mixOf(step("mix-and-stand-2", "Mix, stand and strain", "effect", at(1, 13, 15), 6),
			planner.Pour{Material: "fine-silver", Title: "Fine silver", Share: "100 parts", ML: 210, G: 221, MarkML: 210, MarkG: 221},
			planner.Pour{Material: "reducer", Title: "Reducer", Share: "12.5 % of base (10 to 15)", ML: 26.3, G: 26.3, MarkML: 236.3, MarkG: 247.3}),
		step("tack-off-2", "Tack off", "effect", at(1, 13, 32), 5),
		film(step("lay-effect", "Lay the effect in a dry, even film", "effect", at(1, 13, 37), 25), "fine-silver", "Fine silver", "#8a8d90", 3, 15, 42),
		step("flush-gun-2", "Flush the gun", "", at(1, 14, 2), 8),
		mixOf(step("mix-and-stand-3", "Mix, stand and strain", "candy", at(1, 14, 10), 6),
			planner.Pour{Material: "candy-colour", Title: "Candy colour in binder", Share: "100 parts", ML: 6.2, G: 6.4, MarkML: 6.2, MarkG: 6.4}),
		film(step("lay-candy", "Lay the candy", "candy", at(1, 14, 32), 30), "candy-colour", "Candy colour in binder", "#0f6f6b", 3, 24, 38),
		film(step("spray-art", "Spray the design", "art", at(1, 15, 40), 12), "art-colour", "Art colour", "#f4efe0", 2, 16, 30),
		film(step("spray-art-2", "Spray the design", "art", at(1, 16, 30), 8), "art-colour", "Art colour", "#2a0a10", 1, 8, 30),
		film(step("spray-clear", "Spray the clear", "clear", at(2, 8, 15), 20), "satin-clear", "Two-pack satin clear", "", 2, 50, 62),
		step("flush-gun-3", "Flush the gun", "", at(2, 8, 35), 8),
		step("unmask", "Unmask", "", at(2, 9, 0), 12),
		step("inspect", "Look and measure", "", at(4, 8, 0), 15),
	}
	set := func(id string, change func(*planner.Step)) {
		for i := range steps {
			if steps[i].ID == id {
				change(&steps[i])
			}
		}
	}
	set("tack-off", func(s *planner.Step) {
		s.Waits = []planner.Wait{wait("mix-and-stand", "stood and strained", 10, 0)}
		s.Why = []planner.Reason{{Fact: "dust-free", For: "spray-primer", Because: "Every fibre stands up in the wet film as a nib."}}
	})
	set("spray-art", func(s *planner.Step) {
		s.Design, s.Applicator, s.FanMM, s.DistanceMM = "edge stripe: stripe", "tool/airbrush", 40, 115
		s.Parts = []string{"frame"}
	})
	set("spray-art-2", func(s *planner.Step) {
		s.Design, s.Parts = "maker's name: drop shadow; badge: drop shadow", []string{"frame"}
	})
	set("flush-gun", func(s *planner.Step) { s.Meanwhile, s.Films = "the rust primer dries", []string{"Rust primer"} })
	set("flush-gun-2", func(s *planner.Step) { s.Films = []string{"Candy colour in binder"} })
	set("flush-gun-3", func(s *planner.Step) { s.Films = []string{"Two-pack satin clear"} })
	set("denib", func(s *planner.Step) {
		s.Advised, s.CostsMin, s.SavesMin = true, 10, 40
		s.Waits = []planner.Wait{wait("spray-primer", "dry-to-sand", 206, 0)}
		s.Waits[0].Low, s.Waits[0].High = 144, 330
	})
	set("lay-effect", func(s *planner.Step) {
		s.Waits = []planner.Wait{{Until: "dust-free", After: "tack-off-2", Max: 30, By: "it does not last"}}
	})
	set("lay-candy", func(s *planner.Step) { s.Waits = []planner.Wait{wait("lay-effect", "dry-to-recoat", 30, 120)} })
	set("spray-clear", func(s *planner.Step) {
		s.Waits = []planner.Wait{wait("lay-candy", "dry-to-recoat", 60, 1440)}
		s.Cautions = []string{"isocyanates", "flammable-vapour"}
	})
	set("unmask", func(s *planner.Step) {
		s.Waits = []planner.Wait{wait("spray-clear", "set-to-touch", 25, 240), {Until: "before dry-hard", After: "spray-clear", Max: 2000}}
	})
	set("inspect", func(s *planner.Step) { s.Waits = []planner.Wait{wait("spray-clear", "dry-hard", 2865, 0)} })
	return steps
}

func sampleJob() *planner.Job {
	j := &planner.Job{
		Title: "Touring frame and fork", System: "waterborne", Clear: "two-pack", Effect: "candy-over-fine-metallic",
		Finish: "satin", Care: "show", Applicators: []string{"fan-gun", "airbrush"},
		Parts: []planner.Part{{Name: "frame", Substrate: "bare-steel", Count: 1}, {Name: "blade", Substrate: "bare-steel", Count: 2}, {Name: "rack", Substrate: "bare-steel", Count: 1, Leave: true}},
		Designs: []planner.Design{
			{Kind: "stripe", Name: "edge stripe", On: "frame", Position: "down tube, both sides"},
			{Kind: "lettering", Name: "maker's name", On: "frame"}, {Kind: "lettering", Name: "badge", On: "frame"},
		},
	}
	j.Room.Temperature, j.Room.Surface, j.Room.Humidity, j.Room.Speed = q.Celsius(21), q.Celsius(20), 0.55, 0.3
	return j
}

func samplePlan() *planner.Plan {
	p := &planner.Plan{Title: "Touring frame and fork", Job: sampleJob(), Steps: sampleSteps()}
	for _, s := range p.Steps {
		if s.Coats > 0 {
			p.Films = append(p.Films, planner.Film{Step: s.ID, Parts: s.Parts, Role: s.For, Material: s.Material, Title: s.Films[0], Coats: s.Coats, DryUm: s.DryUm, Colour: s.Colour, Design: s.Design,
				Rework: []planner.Rework{{How: "Wipe it back with a damp cloth.", State: "set-to-touch", Until: s.End.Add(7 * time.Minute)}, {How: "Lay a coat more over a thin place.", State: "dry-hard", Until: s.End.AddDate(0, 0, 1)}}})
		}
	}
	p.Strips = sampleStrips()
	p.Hardware = []planner.Bag{{Label: "bag 1", Part: "rack", Holds: "2 eyelets, left"}, {Label: "bag 2", Part: "rack", Holds: "4 screws"}}
	p.Left = []string{"rack"}
	p.Materials = []planner.Material{
		{Material: "candy-colour", Title: "Candy colour in binder", ML: 6.2, G: 6.4, BuyML: 25},
		{Material: "fine-silver", Title: "Fine silver", ML: 210, G: 221, BuyML: 300, Cost: &planner.Cost{Amount: "12.40", Currency: "EUR"}},
		{Material: "rust-primer", Title: "Rust primer", ML: 96, G: 130, BuyML: 150},
		{Material: "guide-coat", Title: "Guide coat"},
	}
	p.Cautions = []planner.Caution{
		{Note: "caution/flammable-vapour", Title: "Flammable vapour", Says: "Spray mist and solvent vapour catch fire from a spark that you do not see.", Steps: []string{"spray-clear"}},
		{Note: "caution/isocyanates", Title: "Isocyanates", Says: "Hardeners of two-pack clears can leave you with asthma for life; breathing protection here is a matter of law and training.", Steps: []string{"spray-clear"}},
		{Note: "caution/skin-contact", Title: "Skin contact", Says: "Cleaners, hardeners and thinners go through skin.", Steps: []string{"degrease", "key-by-hand", "mix-and-stand"}},
	}
	p.Conditions = []planner.Condition{
		{Level: "go", What: "The surface is 8.4 C over the dew point.", Note: "background/dew-point"},
		{Level: "care", What: "At 55 % humidity water leaves slowly: waits are longer by 13 %."},
		{Level: "no", What: "The clear wants 18 C or more at the part while it cures; nights in this room are colder."},
	}
	p.Totals = planner.Totals{WorkMin: 242, ElapsedMin: 4335, Start: at(1, 8, 0), End: at(4, 8, 15), HighEnd: at(7, 8, 15), VOCg: 13.6, DryUm: 139, Cost: &planner.Cost{Amount: "48.20", Currency: "EUR"}}
	return p
}

func samplePlanPage() PlanPage {
	return PlanPage{Frame: Frame{Title: "Touring frame and fork", Here: AtPlan}, ID: "k3v9", Plan: samplePlan(), Saved: at(1, 7, 50),
		Titles: map[string]string{"tool/fan-gun": "Fan gun, low pressure", "caution/isocyanates": "Isocyanates"}}
}

func refusedPage() PlanPage {
	p := samplePlanPage()
	p.Plan = &planner.Plan{Title: "Mudguard", Job: p.Plan.Job, Refused: &planner.Refusal{
		Part: "mudguard", Fact: "adhesive", Step: "step/spray-sealer",
		Reasons: []string{"Spray the promoter gives it, but only in the system waterborne.", "Warm with a flame gives it, but not on a heat-shy surface."},
	}}
	return p
}

func sampleChoices() Choices {
	return Choices{
		Substrates: []Choice{{Value: "bare-steel", Title: "Bare steel"}, {Value: "raw-abs", Title: "Raw ABS"}},
		Effects: []Choice{
			{Value: "solid", Title: "Solid colour", Roles: []string{"ground"}, Colours: []string{"ground"}},
			{Value: "fine-metallic", Title: "Fine metallic", Roles: []string{"effect"}, Colours: []string{"ground"}},
			{Value: "candy-over-fine-metallic", Title: "Candy over fine metallic", Roles: []string{"effect", "candy"}, Colours: []string{"ground", "candy"}},
			{Value: "pearl", Title: "Pearl over a solid ground", Roles: []string{"ground", "effect"}, Colours: []string{"ground", "pearl"}},
		},
		Finishes:    []Choice{{Value: "gloss", Title: "Gloss", Gloss: 90}, {Value: "satin", Title: "Satin", Gloss: 35}, {Value: "matt", Title: "Matt", Gloss: 8}},
		Systems:     []Choice{{Value: "waterborne", Title: "Waterborne"}, {Value: "solvent", Title: "Solvent"}},
		Care:        []Choice{{Value: "show", Title: "Show", Says: "Seen close and judged: nothing is let pass."}, {Value: "daily", Title: "Daily", Says: "Used and looked at: sound and good-looking."}, {Value: "rough", Title: "Rough", Says: "Must hold; looks come second."}},
		Applicators: []Choice{{Value: "fan-gun", Title: "Fan gun, low pressure"}, {Value: "airbrush", Title: "Airbrush"}},
		Designs: []Choice{
			{Value: "fade", Title: "Fade", Colours: []string{"design"}},
			{Value: "stripe", Title: "Stripe", Colours: []string{"shadow", "design", "highlight"}},
			{Value: "lettering", Title: "Lettering", Colours: []string{"shadow", "design"}},
		},
		Layers: []Choice{{Value: "drop shadow", Title: "Drop shadow", Kinds: []string{"lettering"}, Says: "lettering"}, {Value: "light line", Title: "Light line", Kinds: []string{"stripe"}, Says: "stripe"}},
		Forms:  []Choice{{Value: "lattice", Title: "Open work"}, {Value: "solid", Title: "Small object"}},
	}
}

func sampleForm() FormPage {
	p := FormPage{Frame: Frame{Title: "Plan a job", Here: AtPlan}, Choices: sampleChoices()}
	p.Form = NewForm(p.Choices)
	p.Form.Values["part0-name"] = "frame"
	p.Form.Values["part0-area"] = "0.55"
	p.Form.Values["part1-name"] = "blade"
	p.Form.Values["effect"] = "candy-over-fine-metallic"
	p.Form.Values["applicator"] = "fan-gun\nairbrush"
	p.Form.Values["design0-kind"], p.Form.Values["design0-with"] = "lettering", "drop shadow\nlight line"
	p.Form.Values["design1-name"] = "maker's name"
	p.Problems = []Problem{
		{Field: "part0-area", Message: `found "0.55", expected an area with its unit, such as 0.55 m2`},
		{Field: "finish", Message: "choose a finish"},
		{Field: "air", Message: `found "21 F to 22", expected one temperature, such as 21 C`},
		{Field: "design0-with", Message: "expected a layer that this design offers"},
		{Field: "design1", Message: "expected a design name of its own"},
		{Message: "No route was found in time."},
	}
	return p
}

func sampleNote() NotePage {
	links := []NoteLink{
		{Path: "step/spray-sealer", Kind: "step", Title: "Spray the sealer", Summary: "Lays an even shade."},
		{Path: "step/wipe-down", Kind: "step", Title: "Wipe down", Summary: "The last wipe."},
		{Path: "fault/nibs", Kind: "fault", Title: "Nibs", Summary: "Grains under the film."},
	}
	return NotePage{
		Frame: Frame{Title: "Tack off", Here: AtLookUp},
		Note: &content.Note{Kind: "step", Slug: "tack-off", Title: "Tack off", Also: []string{"tack rag", "last wipe"}, Says: "",
			Heads: []content.Head{{Level: 2, Text: "Why a sticky cloth", ID: "why-a-sticky-cloth"}, {Level: 3, Text: "When it may be left out", ID: "when-it-may-be-left-out"}}},
		Body: template.HTML(`<p>A tack rag picks up what air and cloth leave behind. Fold it loosely and <em>let it glide</em>; pressed hard, it leaves its resin, and the paint draws back from it.</p>
<h2 id="why-a-sticky-cloth">Why a sticky cloth</h2><p>Dust lies in the scratch of the <a href="/note/step/key-by-hand">keyed</a> surface. A dry cloth pushes it along.</p>
<table><thead><tr><th>Cloth</th><th>Passes</th></tr></thead><tbody><tr><td>fresh</td><td>1</td></tr><tr><td>old</td><td>do not</td></tr></tbody></table>
<blockquote><p>If it feels dry, it is a dust cloth.</p></blockquote>
<h3 id="when-it-may-be-left-out">When it may be left out</h3><ul><li>Never on a colour film.</li><li>Under a filler that is blocked anyway, <code>dust-free</code> buys nothing.</li></ul>`),
		MentionedBy: links,
		Figures:     []Figure{{Name: "Work", Value: "2 min and 4 min/m2"}, {Name: "Stays dust-free", Value: "30 min"}},
		Standing:    "common practice, no published source",
	}
}

func sampleJobs() []SavedJob {
	return []SavedJob{
		{ID: "k3v9", Title: "Touring frame and fork", Substrates: "Bare steel", Effect: "Candy over fine metallic", Finish: "Satin", Saved: at(1, 7, 50)},
		{ID: "p0q1", Substrates: "Raw polypropylene", Effect: "Solid colour", Finish: "Gloss", Saved: at(1, 7, 20), Refused: true},
	}
}

func sampleKinds() []KindCount {
	var kinds []KindCount
	for i, kind := range content.Kinds {
		kinds = append(kinds, KindCount{Kind: kind, Count: 3 + 7*i})
	}
	return kinds
}

// samples are a full page for every template, and the same with little in it.
func samples() map[string][]Page {
	jobs := sampleJobs()
	search := SearchPage{Frame: Frame{Title: "fisheye", Here: AtLookUp, Query: "fisheye"}, Kinds: sampleKinds()[:4], Total: 2, Suggest: "fish eye",
		Hits: []Hit{{Path: "fault/fisheyes", Kind: "fault", Title: "Fisheyes", Fragment: "Round craters: the <mark>fisheye</mark> has a bright bottom where paint drew back from grease."}, {Path: "step/degrease", Kind: "step", Title: "Degrease", Fragment: "Grease makes <mark>fisheyes</mark>."}}}
	var links []NoteLink
	for i := range 5 {
		links = append(links, NoteLink{Path: fmt.Sprintf("term/word-%d", i), Kind: "term", Title: fmt.Sprintf("Word %d", i), Summary: "What a painter means by it, in a sentence that is long enough to need a second line on a phone."})
	}
	return map[string][]Page{
		"home":   {HomePage{Frame: Frame{Here: ""}, Kinds: sampleKinds(), Recent: jobs}, HomePage{}},
		"search": {search, SearchPage{Frame: Frame{Query: "zzz"}}, SearchPage{Kinds: sampleKinds()}},
		"kind":   {KindPage{Frame: Frame{Title: "Words", Here: AtLookUp}, Kind: "term", Notes: links}, KindPage{Kind: "unheard-of"}},
		"note":   {sampleNote(), NotePage{Note: &content.Note{Kind: "term", Title: "Nib"}}},
		"form":   {sampleForm(), FormPage{Choices: sampleChoices(), Form: NewForm(sampleChoices())}, FormPage{}},
		"plan":   {samplePlanPage(), refusedPage(), PlanPage{Plan: &planner.Plan{}}},
		"without": {
			WithoutPage{ID: "k3v9", Job: "Touring frame", Verdict: "The job cannot be done so.", Difference: &planner.Difference{
				Without: "tack-off", Title: "Tack off", Answer: planner.Breaks,
				Breaks: []planner.Reason{{Fact: "dust-free", For: "spray-primer", Because: "Every fibre stands up."}, {Fact: "gun-clean", For: planner.Agreed, Because: "It sets."}}}},
			WithoutPage{ID: "k3v9", Verdict: "Something else takes its place.", Difference: &planner.Difference{
				Without: "denib", Title: "Denib", Answer: planner.Instead, Misses: []planner.Reason{{Fact: "smooth", For: "spray-ground", Because: "A nib shows.", Want: true}},
				Gone: []planner.Change{{Title: "Denib", Note: "step/denib", Work: 8}}, Come: []planner.Change{{Title: "Tack off", Note: "step/tack-off", Film: "Sealer", Work: 3}}}},
		},
		"whatif": whatIfSamples(), "edit": editSamples(), "coverage": coverageSamples(), "coverage-cell": cellSamples(),
		"workout": workOutSamples(), "room": roomSamples(), "quote": quoteSamples(),
		"how":      {HowPage{ID: "k3v9", Job: "Touring frame", N: 4, Step: "mix-and-stand", Heading: "Mix", Figures: []trace.Figure{plannedFigure()}}, HowPage{ID: "k3v9", Heading: "Gone"}},
		"workouts": {WorkOutIndex{Sheets: workout.Sheets()}, WorkOutIndex{}},
		"jobs":     {JobsPage{Frame: Frame{Title: "Jobs", Here: AtJobs}, Jobs: jobs}, JobsPage{}},
		"error":    {ErrorPage{Frame: Frame{Title: "Not found"}, Status: 404, Heading: "There is no such note", Detail: "Found step/tack-of; notes of this kind are listed under Steps.", Suggest: "/note/step/tack-off"}, ErrorPage{Heading: "Something went wrong"}},
	}
}
