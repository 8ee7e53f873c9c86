package written

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
)

// Limits on a file.
const (
	MaxBytes  = 2 << 20
	maxValues = 500_000
	maxDepth  = 8
	maxFaults = 20
	maxID     = 100 // bytes of a name
)

// kind is what a value of JSON is.
type kind string

const (
	object kind = "an object in braces"
	array  kind = "a list in brackets"
	text   kind = "a text"
	number kind = "a number"
	truth  kind = "true or false"
	null   kind = "null"
)

// node is a value with the byte at which it ends.
type node struct {
	kind   kind
	text   string // of a text or number
	yes    bool
	fields []field
	items  []node
	at     int64
}

type field struct {
	name  string
	value node
}

// Fault is one thing that is wrong with a file.
type Fault struct {
	Line int
	// Path is the place in the file, as parts[2].length.
	Path string
	// Text says what is wrong and what would do.
	Text string
}

// Error writes the fault as "line 12, parts[2].length: ...".
func (f Fault) Error() string {
	where := fmt.Sprintf("line %d", f.Line)
	if f.Path != "" {
		where += ", " + f.Path
	}
	return where + ": " + f.Text
}

// Faults is everything that was found wrong, at most 20.
type Faults []Fault

// Error writes the faults, one a line.
func (fs Faults) Error() string {
	var lines []string
	for _, f := range fs {
		lines = append(lines, f.Error())
	}
	return strings.Join(lines, "\n")
}

// tree reads JSON as nodes that remember where they stand.
type tree struct {
	data []byte
	dec  *json.Decoder
	n    int
}

var (
	errDeep   = fmt.Errorf("braces and brackets nest more than %d deep, which no problem needs", maxDepth)
	errBehind = errors.New("something stands behind the end of the problem")
	errMany   = fmt.Errorf("there are more than %d values", maxValues)
)

// parse reads the one value of a file.
func parse(data []byte) (node, error) {
	if len(data) > MaxBytes {
		return node{}, Faults{{1, "", fmt.Sprintf("the file has %d bytes; at most %d are read", len(data), MaxBytes)}}
	}
	t := tree{data: data, dec: json.NewDecoder(bytes.NewReader(data))}
	t.dec.UseNumber()
	n, err := t.value(0)
	if err == nil {
		if _, err = t.dec.Token(); err == nil {
			err = errBehind
		} else if err == io.EOF {
			return n, nil
		}
	}
	return node{}, Faults{{line(data, t.dec.InputOffset()), "", syntax(err)}}
}

// syntax says what is wrong with the JSON itself.
func syntax(err error) string {
	if err == errDeep || err == errMany || err == errBehind {
		return err.Error()
	}
	if err == io.EOF || errors.Is(err, io.ErrUnexpectedEOF) {
		return "the file ends too soon: a brace, bracket or quotation mark is not closed"
	}
	return "this is not JSON: " + strings.TrimPrefix(err.Error(), "json: ")
}

// line returns the line of a byte, from 1.
func line(data []byte, at int64) int {
	return 1 + bytes.Count(data[:min(max(at, 0), int64(len(data)))], []byte("\n"))
}

func (t *tree) value(depth int) (node, error) {
	tok, err := t.dec.Token()
	if err != nil {
		return node{}, err
	}
	if t.n++; t.n > maxValues {
		return node{}, errMany
	}
	n := node{at: t.dec.InputOffset()}
	switch v := tok.(type) {
	case json.Delim:
		if depth == maxDepth {
			return n, errDeep
		}
		if v == '{' {
			return t.object(n, depth)
		}
		return t.array(n, depth)
	case string:
		n.kind, n.text = text, v
	case json.Number:
		n.kind, n.text = number, v.String()
	case bool:
		n.kind, n.yes = truth, v
	default:
		n.kind = null
	}
	return n, nil
}

func (t *tree) object(n node, depth int) (node, error) {
	n.kind = object
	for t.dec.More() {
		key, err := t.dec.Token()
		if err != nil {
			return n, err
		}
		name, _ := key.(string)
		v, err := t.value(depth + 1)
		if err != nil {
			return n, err
		}
		n.fields = append(n.fields, field{name, v})
	}
	_, err := t.dec.Token()
	return n, err
}

func (t *tree) array(n node, depth int) (node, error) {
	n.kind = array
	for t.dec.More() {
		v, err := t.value(depth + 1)
		if err != nil {
			return n, err
		}
		n.items = append(n.items, v)
	}
	_, err := t.dec.Token()
	return n, err
}
