// Package store keeps what a shop makes: for now, its saved plans. It owns the
// one bbolt file of a data folder and nothing else; it knows ids and bytes, not
// paint. A plan is kept as it was agreed: later notes do not change it.
package store

import (
	"crypto/rand"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"time"

	"go.etcd.io/bbolt"
)

// ErrNotFound says that no plan has the id.
var ErrNotFound = errors.New("store: no such plan")

// ErrInUse says that another process has the data folder open.
var ErrInUse = errors.New("store: the data folder is in use by another coatwright")

// Saved is a plan as it was agreed.
type Saved struct {
	ID    string          `json:"id"`
	Saved time.Time       `json:"saved"`
	Title string          `json:"title"`
	Job   []byte          `json:"job"`  // the job document
	Plan  json.RawMessage `json:"plan"` // the plan as JSON
}

// Store is a data folder. It is safe for concurrent use.
type Store struct{ db *bbolt.DB }

var plans = []byte("plans")

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
	if errors.Is(err, bbolt.ErrTimeout) {
		return nil, fmt.Errorf("%w (%s)", ErrInUse, path)
	}
	if err != nil {
		return nil, fmt.Errorf("store: opening %s: %w", path, err)
	}
	err = db.Update(func(tx *bbolt.Tx) error {
		_, err := tx.CreateBucketIfNotExists(plans)
		return err
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
		b := tx.Bucket(plans)
		saved.ID = newID()
		for b.Get([]byte(saved.ID)) != nil {
			saved.ID = newID()
		}
		value, err := json.Marshal(saved)
		if err != nil {
			return err
		}
		return b.Put([]byte(saved.ID), value)
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
		value := tx.Bucket(plans).Get([]byte(id))
		if value == nil {
			return ErrNotFound
		}
		return json.Unmarshal(value, &saved)
	})
	return saved, err
}

// Plans returns all plans, the newest first.
func (s *Store) Plans() ([]Saved, error) {
	var all []Saved
	err := s.db.View(func(tx *bbolt.Tx) error {
		return tx.Bucket(plans).ForEach(func(_, value []byte) error {
			var saved Saved
			if err := json.Unmarshal(value, &saved); err != nil {
				return err
			}
			all = append(all, saved)
			return nil
		})
	})
	if err != nil {
		return nil, fmt.Errorf("store: listing plans: %w", err)
	}
	slices.SortFunc(all, func(a, b Saved) int {
		if c := b.Saved.Compare(a.Saved); c != 0 {
			return c
		}
		return slices.Compare([]byte(a.ID), []byte(b.ID))
	})
	return all, nil
}
