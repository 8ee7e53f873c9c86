package cli

import (
	"bytes"
	"io"
	"unicode"
	"unicode/utf8"
)

// plainWriter lets printable text, tabs and line ends through. Names come from
// documents that strangers wrote; a terminal must not obey them.
type plainWriter struct{ to io.Writer }

// Write implements [io.Writer]. It counts the bytes that it was given.
func (w plainWriter) Write(text []byte) (int, error) {
	clean := text
	if !tame(text) {
		clean = bytes.Map(func(r rune) rune {
			if commands(r) {
				return utf8.RuneError
			}
			return r
		}, text)
	}
	if n, err := w.to.Write(clean); err != nil {
		return min(n, len(text)), err
	}
	return len(text), nil
}

func tame(text []byte) bool { return bytes.IndexFunc(text, commands) < 0 }

// commands reports whether a terminal may do something on a character: control
// characters, and those that turn the direction of writing.
func commands(r rune) bool {
	return unicode.IsControl(r) && r != '\n' && r != '\t' || unicode.Is(unicode.Bidi_Control, r)
}
