// Package store keeps what a shop makes: its saved plans and its settings. It owns the
// one bbolt file of a data folder and nothing else; it knows ids and bytes, not
// paint. A plan is kept as it was agreed: later notes do not change it.
package store

import (
	"bytes"
	"crypto/rand"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"go.etcd.io/bbolt"
	bbolterrors "go.etcd.io/bbolt/errors"
)

// ErrNotFound says that no plan has the id.
var ErrNotFound = errors.New("store: no such plan")

// ErrInUse says that another process has the data folder open.
var ErrInUse = errors.New("store: the data folder is in use by another coatwright")

// Saved is a plan as it was agreed.
type Saved struct {
	Entry
	Job  []byte // the job document
	Plan []byte // the plan as JSON
}

// Entry is a plan's line in the list: what can be shown without the plan.
type Entry struct {
	ID         string    `json:"id"`
	Saved      time.Time `json:"saved"`
	Title      string    `json:"title"`
	Substrates []string  `json:"substrates"` // slugs
	Effect     string    `json:"effect"`
	Finish     string    `json:"finish"`
	Refused    bool      `json:"refused"`
}

// Store is a data folder. It is safe for concurrent use.
type Store struct{ db *bbolt.DB }

// Buckets, each by id: entries are read to list, jobs and plans only to open.
var (
	entries  = []byte("entries")
	jobs     = []byte("jobs")
	plans    = []byte("plans")
	settings = []byte("settings") // by name
)

// file is the bbolt file's name in the data folder.
const file = "coatwright.db"

// lockWait is how long Open waits for another process to let go: long enough
// for one that is just shutting down.
const lockWait = 2 * time.Second

// Open opens the data folder, making it when there is none. The error is
// ErrInUse, or one of the file system that names the path.
func Open(folder string) (*Store, error) {
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return nil, fmt.Errorf("store: making the data folder: %w", err)
	}
	path := filepath.Join(folder, file)
	db, err := bbolt.Open(path, 0o600, &bbolt.Options{Timeout: lockWait})
	if errors.Is(err, bbolterrors.ErrTimeout) {
		return nil, fmt.Errorf("%w (%s)", ErrInUse, path)
	}
	if err != nil {
		return nil, fmt.Errorf("store: opening %s: %w", path, err)
	}
	err = db.Update(func(tx *bbolt.Tx) error {
		for _, bucket := range [][]byte{entries, jobs, plans, settings} {
			if _, err := tx.CreateBucketIfNotExists(bucket); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		db.Close()
		return nil, fmt.Errorf("store: preparing %s: %w", path, err)
	}
	return &Store{db}, nil
}

// Close lets the data folder go.
func (s *Store) Close() error { return s.db.Close() }

// Add keeps a plan under a new id and returns the id.
func (s *Store) Add(saved Saved) (string, error) {
	err := s.db.Update(func(tx *bbolt.Tx) error {
		saved.ID = newID()
		for tx.Bucket(entries).Get([]byte(saved.ID)) != nil {
			saved.ID = newID()
		}
		entry, err := json.Marshal(saved.Entry)
		if err != nil {
			return err
		}
		key := []byte(saved.ID)
		return errors.Join(tx.Bucket(entries).Put(key, entry), tx.Bucket(jobs).Put(key, saved.Job), tx.Bucket(plans).Put(key, saved.Plan))
	})
	if err != nil {
		return "", fmt.Errorf("store: saving a plan: %w", err)
	}
	return saved.ID, nil
}

// newID is eight letters and digits that are easy to read aloud: enough that
// nobody guesses an address, short enough to write on a job sheet.
func newID() string {
	const letters = "23456789abcdefghjkmnpqrstuvwxyz"
	id := make([]byte, 8)
	if _, err := rand.Read(id); err != nil {
		panic("store: no random numbers: " + err.Error())
	}
	for i, b := range id {
		id[i] = letters[int(b)%len(letters)]
	}
	return string(id)
}

// Plan returns the plan with the id. The error is ErrNotFound when there is none.
func (s *Store) Plan(id string) (Saved, error) {
	var saved Saved
	err := s.db.View(func(tx *bbolt.Tx) error {
		entry := tx.Bucket(entries).Get([]byte(id))
		if entry == nil {
			return ErrNotFound
		}
		// What bbolt hands out lives only as long as the transaction.
		saved.Job = bytes.Clone(tx.Bucket(jobs).Get([]byte(id)))
		saved.Plan = bytes.Clone(tx.Bucket(plans).Get([]byte(id)))
		return json.Unmarshal(entry, &saved.Entry)
	})
	return saved, err
}

// Entries returns the entries of all plans, the newest first.
func (s *Store) Entries() ([]Entry, error) {
	var all []Entry
	err := s.db.View(func(tx *bbolt.Tx) error {
		return tx.Bucket(entries).ForEach(func(_, value []byte) error {
			var e Entry
			if err := json.Unmarshal(value, &e); err != nil {
				return err
			}
			all = append(all, e)
			return nil
		})
	})
	if err != nil {
		return nil, fmt.Errorf("store: listing plans: %w", err)
	}
	slices.SortFunc(all, func(a, b Entry) int {
		if c := b.Saved.Compare(a.Saved); c != 0 {
			return c
		}
		return strings.Compare(a.ID, b.ID)
	})
	return all, nil
}

// Setting returns a document that the shop set, nil where it set none.
func (s *Store) Setting(name string) ([]byte, error) {
	var document []byte
	err := s.db.View(func(tx *bbolt.Tx) error {
		document = bytes.Clone(tx.Bucket(settings).Get([]byte(name)))
		return nil
	})
	return document, err
}

// SetSetting keeps a document under a name, in place of the one before.
func (s *Store) SetSetting(name string, document []byte) error {
	err := s.db.Update(func(tx *bbolt.Tx) error { return tx.Bucket(settings).Put([]byte(name), document) })
	if err != nil {
		return fmt.Errorf("store: keeping the setting %s: %w", name, err)
	}
	return nil
}
