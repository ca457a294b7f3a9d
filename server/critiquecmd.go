package main

import (
	"errors"
	"flag"
	"fmt"
	"io"

	"coatwright/content"
	"coatwright/planner"
	"coatwright/planner/critique"
	"coatwright/planner/library"
	"coatwright/planner/sheet"
)

// critiqueFormats are the ways in which a critique is written out.
var critiqueFormats = []string{"text", "json"}

// maxPlan is the largest plan file that is read. A plan of forty parts has 1 MB.
const maxPlan = 8 << 20

// critiqueCommand says what is wrong with a plan that was edited by hand. It
// exits with 1 when a need is not met and not kept so on purpose.
func critiqueCommand(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("coatwright critique", flag.ContinueOnError)
	flags.SetOutput(stderr)
	format := flags.String("format", "text", "text or json")
	flags.Usage = func() { fmt.Fprint(stderr, usage) }
	file, err := fileAndFlags(flags, args)
	if errors.Is(err, flag.ErrHelp) {
		return exitOK
	}
	if err == nil {
		err = oneOf("format", *format, critiqueFormats)
	}
	if err != nil {
		fmt.Fprintln(stderr, "coatwright critique:", err)
		return exitMalformed
	}
	src, err := readFile(file, maxPlan)
	if err != nil {
		fmt.Fprintln(stderr, "coatwright critique:", err)
		return exitMalformed
	}
	notes, err := content.Load(content.BuiltIn(), nil)
	if err != nil {
		fmt.Fprintln(stderr, err)
		return exitFailed
	}
	plan, err := parsePlan(file, src, notes.Planner())
	if err != nil {
		fmt.Fprintln(stderr, err)
		return exitMalformed
	}
	return writeCritique(plan, notes.Planner(), *format, stdout, stderr)
}

// movedStep says what moving a step does to the plan.
func movedStep(plan *planner.Plan, lib *library.Library, ask asked, stdout, stderr io.Writer) int {
	if plan.Refused != nil {
		fmt.Fprintln(stderr, "coatwright plan: there is no plan of this job to move a step in")
		return exitFailed
	}
	if err := knownSteps(plan, ask.move, ask.before); err != nil {
		fmt.Fprintln(stderr, "coatwright plan:", err)
		return exitMalformed
	}
	edited, err := critique.Apply(plan, lib, critique.Repair{Do: critique.Move, Step: ask.move, Before: ask.before})
	if err != nil {
		fmt.Fprintln(stderr, "coatwright plan:", err)
		return exitMalformed
	}
	return writeCritique(edited, lib, ask.format, stdout, stderr)
}

// writeCritique criticises the plan. A critique has no markdown of its own: as
// markdown it is written as text.
func writeCritique(plan *planner.Plan, lib *library.Library, format string, stdout, stderr io.Writer) int {
	c, err := critique.Of(plan, lib)
	if err == nil && format == "json" {
		err = writeJSON(stdout, c)
	} else if err == nil {
		err = sheet.Critique(stdout, c, plan)
	}
	if err != nil {
		fmt.Fprintln(stderr, "coatwright:", err)
		return exitFailed
	}
	if c.Open > 0 {
		return exitFailed
	}
	return exitOK
}
