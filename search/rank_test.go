package search

import (
	"bufio"
	"bytes"
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write testdata/rank.txt anew")

// leastRank is the mean reciprocal rank below which search has become worse
// than it may be.
const leastRank = 0.85

// TestRank asks the questions of testdata/rank.txt. Each of its lines is
//
//	question -> the note that should win -> its rank among the hits, or none
//
// so that a change of analysis or of weights shows as a change of ranks.
func TestRank(t *testing.T) {
	const golden = "testdata/rank.txt"
	ix := open(t, t.TempDir(), builtIn(t))
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	var got bytes.Buffer
	sum, questions := 0.0, 0
	for lines := bufio.NewScanner(bytes.NewReader(want)); lines.Scan(); {
		line := lines.Text()
		if strings.HasPrefix(line, "mean reciprocal rank") {
			continue
		}
		if line == "" || strings.HasPrefix(line, "#") {
			fmt.Fprintln(&got, line)
			continue
		}
		fields := strings.Split(line, " -> ")
		if len(fields) < 2 || ix.notes[fields[1]] == nil {
			t.Fatalf("%s: %q: want a question -> a note -> a rank", golden, line)
		}
		rank := slices.Index(paths(ask(t, ix, Query{Text: fields[0]}).Hits), fields[1]) + 1
		questions++
		if rank == 0 {
			fmt.Fprintf(&got, "%s -> %s -> none\n", fields[0], fields[1])
			continue
		}
		sum += 1 / float64(rank)
		fmt.Fprintf(&got, "%s -> %s -> %d\n", fields[0], fields[1], rank)
	}
	mean := sum / float64(questions)
	fmt.Fprintf(&got, "mean reciprocal rank of %d questions: %.3f\n", questions, mean)
	if *update {
		if err := os.WriteFile(golden, got.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	} else if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got.String(), "\n")); diff != "" {
		t.Errorf("ranks have changed; if for the better, go test ./search -run Rank -update (-want +got):\n%s", diff)
	}
	if mean < leastRank {
		t.Errorf("mean reciprocal rank %.3f, want at least %.2f", mean, leastRank)
	}
}

// TestTitlesWin looks up every note of the library by its title.
func TestTitlesWin(t *testing.T) {
	notes := builtIn(t)
	ix := open(t, t.TempDir(), notes)
	for _, n := range notes {
		hits := ask(t, ix, Query{Text: n.Title}).Hits
		if len(hits) == 0 || !strings.EqualFold(hits[0].Title, n.Title) {
			t.Errorf("%q finds %v, want %s first", n.Title, paths(hits), n.Path())
		}
	}
}
