package figure

import "strings"

// Status says how far a figure was checked against its source.
type Status string

// The statuses, strongest first.
const (
	Stated   Status = "stated"   // said by the maker or a machine's own manual, for this shop
	Read     Status = "read"     // seen in the source named
	Computed Status = "computed" // arithmetic on a published formula
	Derived  Status = "derived"  // worked out from other figures of the same catalogue
	Memory   Status = "memory"   // quoted without seeing the source
	Practice Status = "practice" // common practice, no published source
)

// Weaker returns the one of two statuses that proves less: what is made of two
// figures is worth no more than the weaker. An unknown status is the weakest.
func Weaker(a, b Status) Status {
	if rank(a) > rank(b) {
		return a
	}
	return b
}

func rank(s Status) int {
	for i, known := range [...]Status{Stated, Read, Computed, Derived, Memory, Practice} {
		if s == known {
			return i
		}
	}
	return 99
}

// ParseStatus reads the status column of a table. A composite such as
// "read+memory" counts as its weakest part.
func ParseStatus(text string) (Status, bool) {
	var out Status
	for i, word := range strings.FieldsFunc(text, func(r rune) bool { return r == '+' || r == ' ' }) {
		s := Status(word)
		if rank(s) == 99 {
			return "", false
		}
		if i == 0 {
			out = s
		} else {
			out = Weaker(out, s)
		}
	}
	return out, out != ""
}

// Source says where a figure comes from.
type Source struct {
	// Key names the rule or the row for ever, as "proportion.housing-depth":
	// findings, ledger entries and house rules cite it.
	Key string `json:"key"`
	// Title, Edition and Clause name the published work and the table, clause or
	// equation in it. All are empty for common practice.
	Title   string `json:"title,omitempty"`
	Edition string `json:"edition,omitempty"`
	Clause  string `json:"clause,omitempty"`
	Status  Status `json:"status"`
}

// Published reports whether a work is named.
func (s Source) Published() bool { return s.Title != "" }

// String returns the citation without its key: "Wood Handbook FPL-GTR-190
// (2010), Table 13-5", or the empty string for common practice.
func (s Source) String() string {
	var b strings.Builder
	b.WriteString(s.Title)
	if s.Edition != "" {
		b.WriteString(" (" + s.Edition + ")")
	}
	if s.Clause != "" {
		b.WriteString(", " + s.Clause)
	}
	return b.String()
}

// PracticeSource returns the source of a rule of the trade that no published
// work was found for.
func PracticeSource(key string) Source { return Source{Key: key, Status: Practice} }

// Of is a figure of any quantity: the value to use, the least and the greatest
// that sources give, and where it was found. Low and High equal Value where only
// one figure is known. The zero Of is an unknown figure.
type Of[T any] struct {
	Value  T      `json:"value"`
	Low    T      `json:"low"`
	High   T      `json:"high"`
	Source Source `json:"source"`
}

// Exactly returns a figure without a range.
func Exactly[T any](v T, s Source) Of[T] { return Of[T]{v, v, v, s} }

// Between returns a figure with the range that sources give.
func Between[T any](v, low, high T, s Source) Of[T] { return Of[T]{v, low, high, s} }

// Known reports whether there is a figure at all.
func (f Of[T]) Known() bool { return f.Source.Status != "" }

// Instead returns the figure with the value that the maker states in its place:
// the rule's key stays, so that it can still be cited, the published work does
// not.
func (f Of[T]) Instead(v T) Of[T] {
	return Exactly(v, Source{Key: f.Source.Key, Status: Stated})
}
