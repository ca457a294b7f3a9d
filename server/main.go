// The server command is coatwright: it serves the notes and the planner to
// browsers, plans a job file, criticises an edited plan, and checks a folder of
// notes.
//
//	go run ./server [-listen 127.0.0.1:8080] [-data ./data]
//	go run ./server plan FILE [-format text|markdown|json]
//	go run ./server plan FILE -how STEP
//	go run ./server plan FILE -without STEP
//	go run ./server plan FILE -with CHOICES
//	go run ./server plan FILE -move STEP [-before STEP]
//	go run ./server critique PLAN.json [-format text|json]
//	go run ./server check DIR
package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"

	"coatwright/nearest"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	code := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}

// Exit codes.
const (
	exitOK        = 0
	exitFailed    = 1 // a job refused, a note in error, a server that could not start
	exitMalformed = 2 // a job file or a command line that cannot be read
)

const usage = `coatwright keeps a paint shop's notes and plans its jobs.

  coatwright [-listen 127.0.0.1:8080] [-data ./data]   serve notes and planner
  coatwright plan FILE [-format text|markdown|json]    plan a job file ("-" reads standard input)
                       [-units metric|bar|us]          ... its figures in these units
  coatwright plan FILE -how STEP|totals                say how the figures of a step come about
  coatwright plan FILE -without STEP                   say what leaving out a step changes
  coatwright plan FILE -with "room.airflow=1 m/s, clear=two-pack"
                                                       say what other choices change
  coatwright plan FILE -move STEP [-before STEP]       say what moving a step does to the plan
  coatwright quote FILE -rates RATES [-format text|json]
                                                       say what a job comes to at a shop's rates
  coatwright critique PLAN.json [-format text|json]    say what is wrong with a plan edited by hand
  coatwright check DIR                                 check a folder of notes
  coatwright help                                      show this
`

// run does one command and returns its exit code.
func run(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	if len(args) == 0 || strings.HasPrefix(args[0], "-") {
		return serveCommand(ctx, args, stdout, stderr)
	}
	switch args[0] {
	case "plan":
		return planCommand(args[1:], stdout, stderr)
	case "quote":
		return quoteCommand(args[1:], stdout, stderr)
	case "critique":
		return critiqueCommand(args[1:], stdout, stderr)
	case "check":
		return checkCommand(args[1:], stdout, stderr)
	case "health":
		return healthCommand(ctx, args[1:], stderr)
	case "help":
		fmt.Fprint(stdout, usage)
		return exitOK
	}
	near := nearest.To(args[0], []string{"plan", "quote", "critique", "check", "help"})
	fmt.Fprintf(stderr, "coatwright: found the command %q, expected plan, quote, critique, check or help%s\n", args[0], nearest.Hint(near))
	return exitMalformed
}
