package diag

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/message"
)

// Severity orders diagnostics.
type Severity string

// Severities, least first. Only Error makes a command end with status 1.
const (
	Note    Severity = "note"
	Warning Severity = "warning"
	Error   Severity = "error"
)

func (s Severity) rank() int {
	switch s {
	case Error:
		return 2
	case Warning:
		return 1
	}
	return 0
}

// Code names a kind of diagnostic for ever, as "unknown-name".
type Code string

// Place is a stretch of a document in bytes, with the line and column of its
// start (both from 1, the column in bytes) for people.
type Place struct {
	File   string `json:"file,omitempty"`
	Start  int    `json:"start,omitempty"`
	End    int    `json:"end,omitempty"`
	Line   int    `json:"line,omitempty"`
	Column int    `json:"column,omitempty"`
}

// IsZero reports whether the place is nowhere.
func (p Place) IsZero() bool { return p == Place{} }

// Edit replaces a stretch of a document. It is refused where the document is no
// longer the one that it was made for or Old no longer stands there.
type Edit struct {
	File string `json:"file"`
	// Before is the hash of the whole document before the edit (see package edit).
	Before string `json:"before,omitempty"`
	Start  int    `json:"start"`
	End    int    `json:"end"`
	Old    string `json:"old"`
	New    string `json:"new"`
}

// Remedy is one way out.
type Remedy struct {
	Text  message.Message `json:"text"`
	Edits []Edit          `json:"edits,omitempty"`
}

// Related is another place that took part.
type Related struct {
	Text  message.Message `json:"text"`
	Where Place           `json:"where"`
}

// Diagnostic is one thing to tell about a document.
type Diagnostic struct {
	Severity Severity        `json:"severity"`
	Code     Code            `json:"code"`
	Text     message.Message `json:"text"`
	Where    Place           `json:"where,omitzero"`
	Address  address.Address `json:"address,omitempty"`
	Remedies []Remedy        `json:"remedies,omitempty"`
	Related  []Related       `json:"related,omitempty"`
}

// List is what a stage reports.
type List []Diagnostic

// HasErrors reports whether any diagnostic is an error.
func (l List) HasErrors() bool {
	return slices.ContainsFunc(l, func(d Diagnostic) bool { return d.Severity == Error })
}

// Sorted returns the list in reading order: by file, place, code and address.
func (l List) Sorted() List {
	out := slices.Clone(l)
	slices.SortStableFunc(out, func(a, b Diagnostic) int {
		return cmp.Or(
			cmp.Compare(a.Where.File, b.Where.File),
			cmp.Compare(a.Where.Start, b.Where.Start),
			cmp.Compare(b.Severity.rank(), a.Severity.rank()),
			cmp.Compare(a.Code, b.Code),
			address.Compare(a.Address, b.Address),
		)
	})
	return out
}
