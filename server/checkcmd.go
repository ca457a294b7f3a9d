package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"coatwright/content"
	"coatwright/strictyaml"
)

// checkCommand lints a folder of notes. The folder lies over the built-in
// library: links to built-in notes are good, and its own words.yaml, if it has
// one, takes the place of the built-in words.
func checkCommand(args []string, stdout, stderr io.Writer) int {
	if len(args) != 1 {
		fmt.Fprintf(stderr, "coatwright check: found %d folders, expected one\n", len(args))
		return exitMalformed
	}
	info, err := os.Stat(args[0])
	if err == nil && !info.IsDir() {
		err = fmt.Errorf("%s is a file, expected a folder of notes", args[0])
	}
	if err != nil {
		fmt.Fprintln(stderr, "coatwright check:", err)
		return exitMalformed
	}
	return check(os.DirFS(args[0]), args[0], stdout, stderr)
}

func check(tree fs.FS, name string, stdout, stderr io.Writer) int {
	notes, err := content.Load(tree, content.BuiltIn())
	var problems strictyaml.Problems
	if errors.As(err, &problems) {
		fmt.Fprintln(stdout, problems.Error())
		fmt.Fprintf(stderr, "coatwright check: %d problems in %s\n", len(problems), name)
		return exitFailed
	}
	if err != nil {
		fmt.Fprintln(stderr, "coatwright check:", err)
		return exitFailed
	}
	own, err := fs.Glob(tree, "*/*.md")
	if err != nil {
		fmt.Fprintln(stderr, "coatwright check:", err)
		return exitFailed
	}
	fmt.Fprintf(stdout, "%s: %d notes, no problems (with the built-in library %d)\n", name, len(own), len(notes.Notes()))
	return exitOK
}
