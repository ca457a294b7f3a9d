package search

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/mapping"

	"coatwright/content"
)

// version is raised with any change of what is indexed that neither the mapping
// nor the tables of spelling.go show.
const version = 2

// Open opens the index in dir, or builds it when there is none, when it is
// damaged, or when it is of other notes. An error is one of writing dir.
//
// Below dir each index has a folder named after what it was built from. A new
// one is built beside it and renamed when it is complete, so a crash leaves the
// old or the new.
func Open(dir string, notes []*content.Note) (*Index, error) {
	m, err := newMapping()
	if err != nil {
		return nil, fmt.Errorf("search: mapping: %w", err)
	}
	name, err := fingerprint(m, notes)
	if err != nil {
		return nil, fmt.Errorf("search: fingerprint: %w", err)
	}
	home := filepath.Join(dir, name)
	index, err := openSealed(home)
	if err != nil {
		if err := build(dir, home, m, notes); err != nil {
			return nil, fmt.Errorf("search: building the index in %s: %w", dir, err)
		}
		if index, err = openSealed(home); err != nil {
			return nil, fmt.Errorf("search: the index just built in %s: %w", home, err)
		}
	}
	words, err := readVocabulary(index)
	if err != nil {
		return nil, errors.Join(fmt.Errorf("search: reading %s: %w", home, err), index.Close())
	}
	ix := &Index{bleve: index, words: words, notes: map[string]*content.Note{}}
	for _, n := range notes {
		ix.notes[n.Path()] = n
	}
	return ix, nil
}

// openSealed opens an index that is as it was when it was built. bleve does not
// verify what it maps into memory, and a damaged file would end the process.
func openSealed(home string) (bleve.Index, error) {
	if err := verify(home); err != nil {
		return nil, err
	}
	return bleve.OpenUsing(home, map[string]any{"read_only": true})
}

// fingerprint names what an index is made of.
func fingerprint(m mapping.IndexMapping, notes []*content.Note) (string, error) {
	hash := sha256.New()
	to := json.NewEncoder(hash)
	if err := errors.Join(to.Encode(version), to.Encode(m)); err != nil {
		return "", err
	}
	fmt.Fprintln(hash, ukWords, ukStarts, ukEnds, smallWords)
	for _, n := range notes {
		err := to.Encode([]any{n.Path(), n.Title, n.Also, n.SeenAs, n.Says, n.Heads, n.Text})
		if err != nil {
			return "", err
		}
	}
	return hex.EncodeToString(hash.Sum(nil)[:8]), nil
}

// build makes the index and puts it at home, below dir, in place of any other.
func build(dir, home string, m *mapping.IndexMappingImpl, notes []*content.Note) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	work, err := os.MkdirTemp(dir, "building-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(work)
	fresh := filepath.Join(work, "index")
	if err := write(fresh, work, m, notes); err != nil {
		return err
	}
	if err := seal(fresh); err != nil {
		return err
	}
	// A folder cannot be renamed over another. What stands there is damaged.
	if err := os.RemoveAll(home); err != nil {
		return err
	}
	if err := os.Rename(fresh, home); err != nil {
		return err
	}
	return removeOthers(dir, home, work)
}

// write indexes the notes in one batch, as one segment.
func write(fresh, work string, m *mapping.IndexMappingImpl, notes []*content.Note) error {
	if len(notes) == 0 {
		return writeNothing(fresh, m)
	}
	builder, err := bleve.NewBuilder(fresh, m, map[string]any{"buildPathPrefix": work})
	if err != nil {
		return err
	}
	for _, n := range notes {
		if err := builder.Index(n.Path(), newDocument(n, m)); err != nil {
			return errors.Join(err, builder.Close())
		}
	}
	return builder.Close()
}

// writeNothing makes an index without notes, which bleve's builder cannot.
func writeNothing(fresh string, m *mapping.IndexMappingImpl) error {
	index, err := bleve.New(fresh, m)
	if err != nil {
		return err
	}
	return index.Close()
}

// removeOthers removes the indexes of other notes, and what a crash left.
func removeOthers(dir string, keep ...string) error {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return err
	}
	for _, e := range entries {
		path := filepath.Join(dir, e.Name())
		if path != keep[0] && path != keep[1] {
			err = errors.Join(err, os.RemoveAll(path))
		}
	}
	return err
}
