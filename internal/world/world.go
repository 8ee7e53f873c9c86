package world

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"unicode"
	"unicode/utf8"
)

// World is what is outside.
type World interface {
	// Read returns the bytes of a file, which the caller may change.
	Read(name string) ([]byte, error)
	// Write replaces a file, whole or not at all, and makes its folders.
	Write(name string, data []byte) error
	// Append adds to the end of a file, which it makes if there is none.
	Append(name string, data []byte) error
	// List returns the names of the files in a folder and in the folders below it,
	// sorted; the empty name is the world's own folder. A folder that is not there
	// has no files.
	List(folder string) ([]string, error)
	// Today returns the date. Nothing that is computed from it may reach a plan.
	Today() Date
}

// Limits on what a world holds.
const (
	MaxFile  = 64 << 20 // bytes of one file
	MaxName  = 512      // bytes of a name
	MaxFiles = 100_000  // that List returns
)

// ErrTooLarge is wrapped by errors about files beyond a limit.
var ErrTooLarge = errors.New("too large")

// CheckName returns an error unless name may name a file. Every World checks its
// names by it, so that no name leads out of its folder.
func CheckName(name string) error {
	switch {
	case len(name) > MaxName:
		return fmt.Errorf("file name of %d bytes: at most %d are taken: %w", len(name), MaxName, fs.ErrInvalid)
	case name == ".", !fs.ValidPath(name), strings.ContainsAny(name, `\:`), strings.ContainsFunc(name, unicode.IsControl):
		return fmt.Errorf("%q is no name for a file here: steps joined by slashes, none of them . or .., no backslash and no colon: %w", name, fs.ErrInvalid)
	case !utf8.ValidString(name):
		return fmt.Errorf("%q is no name for a file: not valid UTF-8: %w", name, fs.ErrInvalid)
	}
	return nil
}

// CheckFolder is CheckName for folders, of which the empty name is one.
func CheckFolder(name string) error {
	if name == "" {
		return nil
	}
	return CheckName(name)
}
