package main

import (
	"errors"
	"flag"
	"fmt"
	"io"

	"coatwright/planner"
	"coatwright/planner/library"
	"coatwright/planner/quote"
	"coatwright/planner/sheet"
	q "coatwright/quantity"
)

// quoteFormats are the ways in which a quote is written out.
var quoteFormats = []string{"text", "json"}

// quoteCommand plans a job file and reckons it with a file of rates.
func quoteCommand(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("coatwright quote", flag.ContinueOnError)
	flags.SetOutput(stderr)
	format := flags.String("format", "text", "text or json")
	units := flags.String("units", q.Metric.Name, "metric, bar or us: what figures are written in")
	ratesFile := flags.String("rates", "", "the file of the shop's rates")
	flags.Usage = func() { fmt.Fprint(stderr, usage) }
	file, err := fileAndFlags(flags, args)
	if errors.Is(err, flag.ErrHelp) {
		return exitOK
	}
	if err == nil {
		err = errors.Join(oneOf("format", *format, quoteFormats), oneOf("units", *units, systemNames()))
	}
	if err == nil && *ratesFile == "" {
		err = errors.New("found no rates, expected -rates FILE")
	}
	if err != nil {
		fmt.Fprintln(stderr, "coatwright quote:", err)
		return exitMalformed
	}
	job, lib, code := jobFile(file, stderr)
	if job == nil {
		return code
	}
	document, err := readJob(*ratesFile)
	if err != nil {
		fmt.Fprintln(stderr, "coatwright quote:", err)
		return exitMalformed
	}
	rates, err := quote.ParseRates(*ratesFile, document, lib)
	if err != nil {
		fmt.Fprintln(stderr, err)
		return exitMalformed
	}
	plan, err := planner.New(job, lib)
	if err == nil && plan.Refused == nil {
		err = writeQuote(stdout, plan, rates, lib, *format, q.SystemNamed(*units))
	} else if err == nil {
		err = errors.Join(sheet.Text(stderr, plan, q.SystemNamed(*units)), errors.New("there is no plan, and so no quote"))
	}
	if err != nil {
		fmt.Fprintln(stderr, "coatwright quote:", err)
		return exitFailed
	}
	return exitOK
}

// writeQuote reckons a plan and writes what it comes to.
func writeQuote(w io.Writer, plan *planner.Plan, rates *quote.Rates, lib *library.Library, format string, units *q.System) error {
	quoted, err := quote.Of(plan, rates, lib)
	if err != nil {
		return err
	}
	if format == "json" {
		return writeJSON(w, quoted)
	}
	return sheet.Quote(w, plan.Title, quoted, units)
}
