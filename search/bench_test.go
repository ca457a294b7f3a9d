package search

import (
	"context"
	"os"
	"testing"
)

// BenchmarkBuild is what the first start costs beyond reading the notes.
func BenchmarkBuild(b *testing.B) {
	notes, dir := builtIn(b), b.TempDir()
	for b.Loop() {
		if err := os.RemoveAll(dir); err != nil {
			b.Fatal(err)
		}
		ix, err := Open(dir, notes)
		if err != nil {
			b.Fatal(err)
		}
		ix.Close()
	}
}

// BenchmarkOpen is what every other start costs.
func BenchmarkOpen(b *testing.B) {
	notes, dir := builtIn(b), b.TempDir()
	open(b, dir, notes)
	for b.Loop() {
		ix, err := Open(dir, notes)
		if err != nil {
			b.Fatal(err)
		}
		ix.Close()
	}
}

func BenchmarkSearch(b *testing.B) {
	ix := open(b, b.TempDir(), builtIn(b))
	for name, q := range map[string]Query{
		"word":     {Text: "candy"},
		"sentence": {Text: "why does my paint peel off the plastic mudguard"},
		"kind":     {Text: "candy coats", Kind: "fault"},
		"slips":    {Text: "fisheys in my poliprop clearcoatt"},
		"longest":  {Text: "sanding paint coat film clear water gun tape dust gloss air dry grit epoxy primer sealer thinner metal plastic wipe cloth filler scratch wet"},
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				ask(b, ix, q)
			}
		})
	}
}

func BenchmarkPrefix(b *testing.B) {
	ix := open(b, b.TempDir(), builtIn(b))
	for _, text := range []string{"s", "tac", "candy co", "poliprop"} {
		b.Run(text, func(b *testing.B) {
			for b.Loop() {
				if _, err := ix.Prefix(context.Background(), text, 8); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
