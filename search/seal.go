package search

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// sealName is the file, beside the index's own, with the sum of each of them.
const sealName = "seal"

var errDamaged = errors.New("the index is damaged or incomplete")

// seal writes the sums of all files below home. It is the last file written.
func seal(home string) error {
	sums, err := sumFiles(home)
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(home, sealName), sums, 0o644)
}

// verify compares the files below home with their sums.
func verify(home string) error {
	want, err := os.ReadFile(filepath.Join(home, sealName))
	if err != nil {
		return err
	}
	sums, err := sumFiles(home)
	if err != nil {
		return err
	}
	if !bytes.Equal(sums, want) {
		return errDamaged
	}
	return nil
}

// sumFiles lists the files below home, in order, with their SHA-256 sums.
func sumFiles(home string) ([]byte, error) {
	var sums bytes.Buffer
	tree := os.DirFS(home)
	err := fs.WalkDir(tree, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || name == sealName {
			return err
		}
		data, err := fs.ReadFile(tree, name)
		if err != nil {
			return err
		}
		fmt.Fprintf(&sums, "%x  %s\n", sha256.Sum256(data), name)
		return nil
	})
	return sums.Bytes(), err
}
