package area

import (
	"errors"
	"fmt"
)

// Error says which measure of a shape cannot be so, and what could.
type Error struct {
	Key      string // the way to the measure: "thickness", "tubes[1].to"
	Found    string
	Expected string
}

func (e *Error) Error() string {
	return fmt.Sprintf("%s: found %s, expected %s", e.Key, e.Found, e.Expected)
}

// below is err, an *Error of something that stands under key.
func below(key string, err error) error {
	var e *Error
	if !errors.As(err, &e) {
		return err
	}
	return &Error{join(key, e.Key), e.Found, e.Expected}
}
