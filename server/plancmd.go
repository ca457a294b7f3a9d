package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"slices"

	"coatwright/content"
	"coatwright/nearest"
	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/planner/sheet"
)

// formats are the ways in which a plan is written out.
var formats = []string{"text", "markdown", "json"}

// planCommand plans a job file. The file may stand before or after the flags.
func planCommand(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("coatwright plan", flag.ContinueOnError)
	flags.SetOutput(stderr)
	format := flags.String("format", "text", "text, markdown or json")
	without := flags.String("without", "", "a step's id: say what leaving it out changes")
	flags.Usage = func() { fmt.Fprint(stderr, usage) }
	file, err := fileAndFlags(flags, args)
	if errors.Is(err, flag.ErrHelp) {
		return exitOK
	}
	if err != nil {
		fmt.Fprintln(stderr, "coatwright plan:", err)
		return exitMalformed
	}
	if !slices.Contains(formats, *format) {
		fmt.Fprintf(stderr, "coatwright plan: found the format %q, expected text, markdown or json", *format)
		if near := nearest.To(*format, formats); near != "" {
			fmt.Fprintf(stderr, "; did you mean %q?", near)
		}
		fmt.Fprintln(stderr)
		return exitMalformed
	}
	job, lib, code := jobFile(file, stderr)
	if job == nil {
		return code
	}
	if *without != "" {
		return withoutStep(job, lib, *without, *format, stdout, stderr)
	}
	plan, err := planner.New(job, lib)
	if err != nil {
		fmt.Fprintln(stderr, "coatwright plan:", err)
		return exitFailed
	}
	if err := writePlan(stdout, plan, *format); err != nil {
		fmt.Fprintln(stderr, "coatwright plan:", err)
		return exitFailed
	}
	if plan.Refused != nil {
		return exitFailed
	}
	return exitOK
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

// withoutStep says what leaving out one step of the plan changes. It exits with
// 1 when the job cannot be done so.
func withoutStep(job *planner.Job, lib *library.Library, step, format string, stdout, stderr io.Writer) int {
	d, err := planner.Without(job, lib, step)
	if err != nil {
		fmt.Fprintln(stderr, "coatwright plan:", err)
		return exitMalformed
	}
	if format == "json" {
		err = writeJSON(stdout, d)
	} else {
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
func readJob(file string) ([]byte, error) {
	in := io.Reader(os.Stdin)
	if file != "-" {
		f, err := os.Open(file)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		in = f
	}
	document, err := io.ReadAll(io.LimitReader(in, maxBody+1))
	if err == nil && len(document) > maxBody {
		err = fmt.Errorf("%s: a job document may have at most %d kB", file, maxBody>>10)
	}
	return document, err
}

func writePlan(w io.Writer, plan *planner.Plan, format string) error {
	switch format {
	case "json":
		return writeJSON(w, plan)
	case "markdown":
		return sheet.Markdown(w, plan)
	}
	return sheet.Text(w, plan)
}

func writeJSON(w io.Writer, v any) error {
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", "  ")
	return out.Encode(v)
}
