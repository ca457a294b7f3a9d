package store

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

func open(t *testing.T, folder string) *Store {
	t.Helper()
	s, err := Open(folder)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestPlansOutliveTheProcess(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "new", "data")
	s := open(t, folder)
	var want []Saved
	for i := range 3 {
		saved := Saved{
			Entry: Entry{Saved: time.Date(2026, 12, 1, 8, i, 0, 0, time.UTC), Title: fmt.Sprintf("Job %d", i), Substrates: []string{"bare-steel"}, Effect: "candy", Finish: "matt", Refused: i == 1},
			Job:   []byte("title: Job\n"), Plan: []byte(`{"title":"Job"}`),
		}
		id, err := s.Add(saved)
		if err != nil {
			t.Fatal(err)
		}
		saved.ID = id
		want = append([]Saved{saved}, want...)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}

	s = open(t, folder)
	defer s.Close()
	got, err := s.Entries()
	if err != nil {
		t.Fatal(err)
	}
	var entries []Entry
	for _, w := range want {
		entries = append(entries, w.Entry)
	}
	if diff := cmp.Diff(entries, got); diff != "" {
		t.Errorf("after reopening (-want +got):\n%s", diff)
	}
	one, err := s.Plan(want[1].ID)
	if err != nil || !cmp.Equal(one, want[1]) {
		t.Errorf("Plan(%q) = %+v, %v", want[1].ID, one, err)
	}
	if _, err := s.Plan("nosuch"); !errors.Is(err, ErrNotFound) {
		t.Errorf("an unknown id: %v, want ErrNotFound", err)
	}
}

func TestOpenSaysWhatIsWrong(t *testing.T) {
	folder := t.TempDir()
	s := open(t, folder)
	defer s.Close()
	if _, err := Open(folder); !errors.Is(err, ErrInUse) {
		t.Errorf("a folder in use: %v, want ErrInUse", err)
	}
	notFolder := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(notFolder, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(notFolder); err == nil || !strings.Contains(err.Error(), notFolder) {
		t.Errorf("a file for a folder: %v, want an error that names it", err)
	}
	damaged := t.TempDir()
	if err := os.WriteFile(filepath.Join(damaged, file), []byte("this is not a database, it is a sentence of some length"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(damaged); err == nil || !strings.Contains(err.Error(), file) {
		t.Errorf("a damaged file: %v, want an error that names it", err)
	}
}
