package evaluate

import (
	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/record"
	"scantling/internal/shop"
)

// Sources are the documents that a piece comes from, and what goes before them.
type Sources struct {
	// Document is the design document.
	Document document.Source
	// Shop is the shop document; without a text the built-in shop of the
	// document's units is used.
	Shop document.Source
	// Recipes are further recipes beside the built-in ones; one of the same name
	// goes before a built-in one.
	Recipes []document.Source
	// Choices is the choices file; it may be empty.
	Choices document.Source
	// Inputs are the values that the user has set, by name, as document text:
	// `4`, `"black walnut"`, `"13 3/4 in"`.
	Inputs map[string]string
	// Record is the as-built record.
	Record record.Record
	// Limits bound the work; zero is [DefaultLimits].
	Limits Limits
}

// Result is what a set of documents comes to.
type Result struct {
	Piece       *piece.Piece
	Shop        *shop.Shop
	Ledger      *ledger.Ledger
	Diagnostics diag.List
	// Document is the design document as read, for edits of its inputs.
	Document *document.File
	// Planned is the piece as it is without the record; the same as Piece where
	// there is none.
	Planned *piece.Piece
	// Unplaced are entries of the record that fit nothing any more, or another
	// thing than what was measured; none of them is applied. Placed counts those
	// that are.
	Unplaced []record.Unplaced
	Placed   int
	Work     Work
}

// Limits bound the work of one evaluation.
type Limits struct {
	Formulas int // formulas worked out
	Parts    int // parts, spaces, groups and cuts in all
	Chain    int // values that wait for each other
	Pairs    int // pairs of parts that joints are held against
	Faults   int // diagnostics
}

// DefaultLimits let a piece of 3 000 parts pass with room to spare.
var DefaultLimits = Limits{Formulas: 4_000_000, Parts: 60_000, Chain: 4_000, Pairs: 20_000_000, Faults: 500}

// Work counts what an evaluation took.
type Work struct {
	Formulas, Parts, Chain, Pairs, Entries int
}
