package calendar

import (
	"bufio"
	"encoding/csv"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

const psplib = "../../testdata/psplib/"

// Published: the critical path of projects of PSPLIB set J30 (Kolisch and
// Sprecher, European Journal of Operational Research 96 (1996) 205-216); see
// testdata/psplib/README.md. One period is one hour, and nobody is short of
// painters.
func TestCriticalPath(t *testing.T) {
	f, err := os.Open(psplib + "j30_makespans.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	file, path := slices.Index(rows[0], "file"), slices.Index(rows[0], "critical_path")
	start := at(t, "2026-12-01 08:00")
	for _, row := range rows[1:] {
		acts := readProject(t, psplib+row[file])
		shop := Shop{Hours: hours(t, "Mon-Sun 00:00-24:00"), Painters: len(acts)}
		slots, err := Schedule(acts, shop, start)
		if err != nil {
			t.Fatal(err)
		}
		if err := verify(acts, shop, start, slots); err != nil {
			t.Errorf("%s: %v", row[file], err)
		}
		want := time.Duration(number(t, row[path])) * time.Hour
		if got := makespan(slots).Sub(start); got != want {
			t.Errorf("%s: makespan %v, want the critical path of %v", row[file], got, want)
		}
	}
}

// readProject reads the durations and the successors of an .sm file. A job is
// numbered from 1, and its successors have higher numbers.
func readProject(t *testing.T, name string) []Activity {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var acts []Activity
	var arrows [][2]int // from a job to its successor, as indexes
	section := ""
	for lines := bufio.NewScanner(f); lines.Scan(); {
		fields := strings.Fields(lines.Text())
		switch {
		case strings.HasSuffix(lines.Text(), ":"):
			section = lines.Text()
		case len(fields) < 3 || strings.Trim(fields[0], "0123456789") != "":
			// A heading or a rule.
		case section == "PRECEDENCE RELATIONS:":
			acts = append(acts, Activity{ID: fields[0]})
			for _, successor := range fields[3:] {
				arrows = append(arrows, [2]int{len(acts) - 1, number(t, successor) - 1})
			}
		case section == "REQUESTS/DURATIONS:":
			acts[number(t, fields[0])-1].Work = time.Duration(number(t, fields[2])) * time.Hour
		}
	}
	for _, a := range arrows {
		acts[a[1]].Lags = append(acts[a[1]].Lags, Lag{After: a[0]})
	}
	return acts
}

func number(t *testing.T, s string) int {
	t.Helper()
	n, err := strconv.Atoi(s)
	if err != nil {
		t.Fatal(err)
	}
	return n
}
