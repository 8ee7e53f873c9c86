package journal

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"unicode/utf8"
)

// Limits on a journal.
const (
	MaxBytes = 32 << 20
	MaxLines = 200_000
	MaxLine  = 1 << 20 // bytes of one line
)

// Fault is a line that cannot be read.
type Fault struct {
	Line int // from 1
	Err  error
}

// Error names the line.
func (f *Fault) Error() string { return fmt.Sprintf("line %d: %v", f.Line, f.Err) }

// Unwrap returns what was wrong with the line.
func (f *Fault) Unwrap() error { return f.Err }

// Read hands each line of a journal to take, in order, and returns how many
// bytes of the journal are good. Empty lines count for nothing. Reading ends at
// the first line that cannot be read or that take refuses, with a [*Fault].
//
// A last line that has no line end and cannot be read was torn while it was
// written: it is left out, and good is less than the length of data. Cut the
// file to its good bytes before anything is appended.
func Read[T any](data []byte, take func(line int, entry T) error) (good int, err error) {
	if len(data) > MaxBytes {
		return 0, fmt.Errorf("journal of %d bytes; at most %d are read", len(data), MaxBytes)
	}
	for number := 1; good < len(data); number++ {
		line, _, whole := bytes.Cut(data[good:], []byte("\n"))
		next := good + len(line)
		if whole {
			next++
		}
		if text := bytes.TrimSpace(line); len(text) > 0 {
			var entry T
			if err := decode(text, number, &entry); err != nil {
				if !whole {
					return good, nil
				}
				return good, &Fault{number, err}
			}
			if err := take(number, entry); err != nil {
				return good, &Fault{number, err}
			}
		}
		good = next
	}
	return good, nil
}

func decode(text []byte, number int, into any) error {
	switch {
	case number > MaxLines:
		return fmt.Errorf("more than %d lines", MaxLines)
	case len(text) > MaxLine:
		return fmt.Errorf("%d bytes; at most %d are read", len(text), MaxLine)
	case !utf8.Valid(text):
		return errors.New("not valid UTF-8")
	case text[0] != '{':
		return errors.New("an entry in braces should stand here")
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		return err
	}
	if _, err := d.Token(); err != io.EOF {
		return errors.New("something stands behind the entry")
	}
	return nil
}

// Line writes an entry as a line, with its end, to be appended.
func Line(entry any) ([]byte, error) {
	text, err := json.Marshal(entry)
	if err != nil {
		return nil, err
	}
	if len(text) > MaxLine {
		return nil, fmt.Errorf("entry of %d bytes; at most %d are written", len(text), MaxLine)
	}
	return append(text, '\n'), nil
}

// Appended returns the whole of a journal with a line added: data, of which the
// first good bytes are good, without what was torn, with a line end before the
// new line if the last one lacks it.
func Appended(data []byte, good int, line []byte) []byte {
	out := append(make([]byte, 0, good+len(line)+1), data[:good]...)
	if good > 0 && out[good-1] != '\n' {
		out = append(out, '\n')
	}
	return append(out, line...)
}
