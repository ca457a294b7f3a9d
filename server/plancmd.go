package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"coatwright/content"
	"coatwright/nearest"
	"coatwright/planner"
	"coatwright/planner/how"
	"coatwright/planner/library"
	"coatwright/planner/sheet"
	q "coatwright/quantity"
)

// formats are the ways in which a plan is written out.
var formats = []string{"text", "markdown", "json"}

// asked is what the plan command is asked besides the plan.
type asked struct{ format, units, how, without, with, move, before string }

// planCommand plans a job file. The file may stand before or after the flags.
func planCommand(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("coatwright plan", flag.ContinueOnError)
	flags.SetOutput(stderr)
	var ask asked
	flags.StringVar(&ask.format, "format", "text", "text, markdown or json")
	flags.StringVar(&ask.units, "units", q.Metric.Name, "metric, bar or us: what figures are written in")
	flags.StringVar(&ask.how, "how", "", `a step's id, or "totals": say how its figures come about`)
	flags.StringVar(&ask.without, "without", "", "a step's id: say what leaving it out changes")
	flags.StringVar(&ask.with, "with", "", `choices such as "room.airflow=1 m/s, clear=two-pack": say what they change`)
	flags.StringVar(&ask.move, "move", "", "a step's id: say what moving it does to the plan")
	flags.StringVar(&ask.before, "before", "", "the step's id that -move goes before; none: the end")
	flags.Usage = func() { fmt.Fprint(stderr, usage) }
	file, err := fileAndFlags(flags, args)
	if errors.Is(err, flag.ErrHelp) {
		return exitOK
	}
	if err == nil {
		err = ask.check()
	}
	if err != nil {
		fmt.Fprintln(stderr, "coatwright plan:", err)
		return exitMalformed
	}
	job, lib, code := jobFile(file, stderr)
	if job == nil {
		return code
	}
	return answer(job, lib, ask, stdout, stderr)
}

// answer writes the plan, or the answer to what was asked of it.
func answer(job *planner.Job, lib *library.Library, ask asked, stdout, stderr io.Writer) int {
	switch {
	case ask.without != "":
		d, err := planner.Without(job, lib, ask.without)
		return writeDifference(d, err, ask.format, stdout, stderr)
	case ask.with != "":
		d, err := withChoices(job, lib, ask.with)
		return writeDifference(d, err, ask.format, stdout, stderr)
	}
	plan, err := planner.New(job, lib)
	switch {
	case err != nil:
	case ask.move != "":
		return movedStep(plan, lib, ask, stdout, stderr)
	case ask.how != "":
		return writeHow(plan, lib, ask, stdout, stderr)
	default:
		err = writePlan(stdout, plan, ask)
	}
	if err != nil {
		fmt.Fprintln(stderr, "coatwright plan:", err)
		return exitFailed
	}
	if plan.Refused != nil {
		return exitFailed
	}
	return exitOK
}

// check says what of the flags does not fit together.
func (a asked) check() error {
	questions := 0
	for _, q := range []string{a.how, a.without, a.with, a.move} {
		if q != "" {
			questions++
		}
	}
	switch {
	case questions > 1:
		return fmt.Errorf("found more than one of -how, -without, -with and -move, expected one question at a time")
	case a.before != "" && a.move == "":
		return fmt.Errorf("found -before without -move, expected -move STEP -before STEP")
	}
	return errors.Join(oneOf("units", a.units, systemNames()), oneOf("format", a.format, formats))
}

// systemNames are the units that a flag may name.
func systemNames() []string {
	var names []string
	for _, s := range q.Systems() {
		names = append(names, s.Name)
	}
	return names
}

// oneOf says what is wrong with a word that a flag does not know.
func oneOf(flag, format string, known []string) error {
	if slices.Contains(known, format) {
		return nil
	}
	return fmt.Errorf("found the %s %q, expected %s or %s%s", flag, format, strings.Join(known[:len(known)-1], ", "), known[len(known)-1], nearest.Hint(nearest.To(format, known)))
}

// knownSteps says which of the ids no step of the plan has; "" is not asked.
func knownSteps(plan *planner.Plan, ids ...string) error {
	var known []string
	for _, s := range plan.Steps {
		known = append(known, s.ID)
	}
	for _, id := range ids {
		if id != "" && !slices.Contains(known, id) {
			return &planner.UnknownStepError{ID: id, Nearest: nearest.To(id, known)}
		}
	}
	return nil
}

// fileAndFlags takes one file name from args, wherever it stands.
func fileAndFlags(flags *flag.FlagSet, args []string) (string, error) {
	var files []string
	for len(args) > 0 {
		if err := flags.Parse(args); err != nil {
			return "", err
		}
		args = flags.Args()
		if len(args) > 0 {
			files, args = append(files, args[0]), args[1:]
		}
	}
	if len(files) != 1 {
		return "", fmt.Errorf("found %d files, expected one", len(files))
	}
	return files[0], nil
}

// jobFile reads a job file against the built-in notes; a nil job comes with an
// exit code.
func jobFile(file string, stderr io.Writer) (*planner.Job, *library.Library, int) {
	document, err := readJob(file)
	if err != nil {
		fmt.Fprintln(stderr, "coatwright plan:", err)
		return nil, nil, exitMalformed
	}
	notes, err := content.Load(content.BuiltIn(), nil)
	if err != nil {
		fmt.Fprintln(stderr, err)
		return nil, nil, exitFailed
	}
	job, err := planner.ParseJob(file, document, notes.Planner())
	if err != nil {
		fmt.Fprintln(stderr, err)
		return nil, nil, exitMalformed
	}
	return job, notes.Planner(), exitOK
}

// withChoices says what choices made otherwise change.
func withChoices(job *planner.Job, lib *library.Library, text string) (*planner.Difference, error) {
	choices, err := planner.ParseAlternative(text)
	if err != nil {
		return nil, fmt.Errorf("-with: %w", err)
	}
	plan, err := planner.New(job, lib)
	if err != nil {
		return nil, err
	}
	return planner.With(plan, lib, choices)
}

// writeDifference writes the answer to a what-if, or why there is none. It exits
// with 1 when the job cannot be done so.
func writeDifference(d *planner.Difference, err error, format string, stdout, stderr io.Writer) int {
	if err != nil {
		fmt.Fprintln(stderr, "coatwright plan:", err)
		return exitMalformed
	}
	switch format {
	case "json":
		err = writeJSON(stdout, d)
	case "markdown":
		err = sheet.DifferenceMarkdown(stdout, d)
	default:
		err = sheet.Difference(stdout, d)
	}
	if err != nil {
		fmt.Fprintln(stderr, "coatwright plan:", err)
		return exitFailed
	}
	if d.Answer == planner.Breaks {
		return exitFailed
	}
	return exitOK
}

// readJob reads a job document, "-" from standard input.
func readJob(file string) ([]byte, error) { return readFile(file, maxBody) }

// readFile reads a file of at most so many bytes, "-" from standard input.
func readFile(file string, most int64) ([]byte, error) {
	in := io.Reader(os.Stdin)
	if file != "-" {
		f, err := os.Open(file)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		in = f
	}
	src, err := io.ReadAll(io.LimitReader(in, most+1))
	if err == nil && int64(len(src)) > most {
		err = fmt.Errorf("%s: it has more than the %d kB that are read", file, most>>10)
	}
	return src, err
}

func writePlan(w io.Writer, plan *planner.Plan, ask asked) error {
	units := q.SystemNamed(ask.units)
	switch ask.format {
	case "json":
		return writeJSON(w, plan)
	case "markdown":
		return sheet.Markdown(w, plan, units)
	}
	return sheet.Text(w, plan, units)
}

// writeHow writes how the figures of a step, or of the whole plan, come about.
func writeHow(plan *planner.Plan, lib *library.Library, ask asked, stdout, stderr io.Writer) int {
	figures, err := how.Totals(plan, lib), error(nil)
	if ask.how != "totals" {
		figures, err = how.Step(plan, lib, ask.how)
	}
	if err != nil {
		fmt.Fprintln(stderr, "coatwright plan:", err)
		return exitMalformed
	}
	if ask.format == "json" {
		err = writeJSON(stdout, figures)
	} else {
		err = sheet.Figures(stdout, figures, q.SystemNamed(ask.units))
	}
	if err != nil {
		fmt.Fprintln(stderr, "coatwright plan:", err)
		return exitFailed
	}
	return exitOK
}

func writeJSON(w io.Writer, v any) error {
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", "  ")
	return out.Encode(v)
}
