package address

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Address is the printed form of an address; the empty address is the piece
// itself. Two addresses are the same thing if and only if they are equal.
type Address string

// Step is one step of an address: a name with, at most, an index or a key.
type Step struct {
	Name  string
	Index int    // counts from 1; 0 means none
	Key   string // used when HasKey
	// HasKey tells an empty key from none.
	HasKey bool
}

// Limits on what Parse accepts, so that a stranger's text stays small.
const (
	MaxSteps = 32
	MaxBytes = 1024
	MaxIndex = 1_000_000
)

// String prints the step as it stands in a document.
func (s Step) String() string {
	switch {
	case s.HasKey:
		return s.Name + "[" + strconv.Quote(s.Key) + "]"
	case s.Index > 0:
		return s.Name + "[" + strconv.Itoa(s.Index) + "]"
	}
	return s.Name
}

// Join prints steps as an address.
func Join(steps ...Step) Address {
	var b strings.Builder
	for i, s := range steps {
		if i > 0 {
			b.WriteByte('.')
		}
		b.WriteString(s.String())
	}
	return Address(b.String())
}

// Child returns the address of a plain name below a.
func (a Address) Child(name string) Address { return a.child(Step{Name: name}) }

// Nth returns the address of the nth thing of that name below a, from 1.
func (a Address) Nth(name string, n int) Address { return a.child(Step{Name: name, Index: n}) }

// Keyed returns the address of the thing with that key below a.
func (a Address) Keyed(name, key string) Address {
	return a.child(Step{Name: name, Key: key, HasKey: true})
}

func (a Address) child(s Step) Address {
	if a == "" {
		return Address(s.String())
	}
	return a + "." + Address(s.String())
}

// Parent returns the address without its last step.
func (a Address) Parent() Address {
	steps, err := a.Steps()
	if err != nil || len(steps) == 0 {
		return ""
	}
	return Join(steps[:len(steps)-1]...)
}

// Last returns the last step, or the zero step of the empty address.
func (a Address) Last() Step {
	steps, err := a.Steps()
	if err != nil || len(steps) == 0 {
		return Step{}
	}
	return steps[len(steps)-1]
}

// Steps takes the address apart.
func (a Address) Steps() ([]Step, error) { return parse(string(a)) }

// Has reports whether b is a or lies below it.
func (a Address) Has(b Address) bool {
	if a == "" || a == b {
		return true
	}
	rest, ok := strings.CutPrefix(string(b), string(a))
	return ok && rest[0] == '.'
}

// Parse reads an address and returns it in its one printed form.
func Parse(s string) (Address, error) {
	steps, err := parse(s)
	if err != nil {
		return "", err
	}
	return Join(steps...), nil
}

// Compare orders addresses as a reader would: step by step, names by letter,
// indices by number, keys by their leading number and then by letter.
func Compare(a, b Address) int {
	as, errA := a.Steps()
	bs, errB := b.Steps()
	if errA != nil || errB != nil {
		return cmp.Compare(a, b)
	}
	for i := range min(len(as), len(bs)) {
		if c := compareSteps(as[i], bs[i]); c != 0 {
			return c
		}
	}
	return cmp.Compare(len(as), len(bs))
}

func compareSteps(a, b Step) int {
	if c := cmp.Compare(a.Name, b.Name); c != 0 {
		return c
	}
	if c := cmp.Compare(a.Index, b.Index); c != 0 {
		return c
	}
	if c := cmp.Compare(leadingNumber(a.Key), leadingNumber(b.Key)); c != 0 {
		return c
	}
	return cmp.Compare(a.Key, b.Key)
}

func leadingNumber(key string) float64 {
	end := strings.IndexFunc(key, func(r rune) bool { return (r < '0' || r > '9') && r != '.' })
	if end < 0 {
		end = len(key)
	}
	n, err := strconv.ParseFloat(key[:end], 64)
	if err != nil {
		return 0
	}
	return n
}

func parse(s string) ([]Step, error) {
	if s == "" {
		return nil, nil
	}
	if len(s) > MaxBytes {
		return nil, fmt.Errorf("address is %d bytes long; at most %d are read", len(s), MaxBytes)
	}
	if !utf8.ValidString(s) {
		return nil, fmt.Errorf("address is not valid UTF-8")
	}
	var steps []Step
	rest := s
	for {
		step, tail, err := parseStep(rest)
		if err != nil {
			return nil, fmt.Errorf("address %q: %w", s, err)
		}
		if steps = append(steps, step); len(steps) > MaxSteps {
			return nil, fmt.Errorf("address has more than %d steps", MaxSteps)
		}
		if tail == "" {
			return steps, nil
		}
		if tail[0] != '.' {
			return nil, fmt.Errorf("address %q: a dot should stand before %q", s, tail)
		}
		rest = tail[1:]
	}
}

func parseStep(s string) (Step, string, error) {
	end := 0
	for end < len(s) && nameByte(s[end], end) {
		end++
	}
	if end == 0 {
		return Step{}, "", fmt.Errorf("a name should stand at %q", s)
	}
	step, rest := Step{Name: s[:end]}, s[end:]
	if !strings.HasPrefix(rest, "[") {
		return step, rest, nil
	}
	if strings.HasPrefix(rest, `["`) {
		quoted, err := strconv.QuotedPrefix(rest[1:])
		if err != nil {
			return Step{}, "", fmt.Errorf("the key at %q is not closed", rest)
		}
		key, err := strconv.Unquote(quoted)
		rest = rest[1+len(quoted):]
		if err != nil || !strings.HasPrefix(rest, "]") {
			return Step{}, "", fmt.Errorf("the key is not closed by a bracket before %q", rest)
		}
		step.Key, step.HasKey = key, true
		return step, rest[1:], nil
	}
	digits, tail, ok := strings.Cut(rest[1:], "]")
	n, err := strconv.Atoi(digits)
	if !ok || err != nil || n < 1 || n > MaxIndex || strconv.Itoa(n) != digits {
		return Step{}, "", fmt.Errorf("the index at %q should be a whole number from 1 to %d", rest, MaxIndex)
	}
	step.Index = n
	return step, tail, nil
}

// nameByte reports whether b may stand at position i of a name: letters,
// digits, underscore and hyphen, and any letter beyond ASCII; no digit first.
func nameByte(b byte, i int) bool {
	switch {
	case b >= 'a' && b <= 'z', b >= 'A' && b <= 'Z', b == '_', b >= utf8.RuneSelf:
		return true
	case b >= '0' && b <= '9', b == '-':
		return i > 0
	}
	return false
}
