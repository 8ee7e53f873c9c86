package document

import (
	"math/big"

	"scantling/internal/diag"
)

// Expr is an unevaluated formula: one of [Number], [Text], [Truth], [Name],
// [Pick], [Call], [Unary], [Binary], [Choose], [List], [Object] and [Bad].
type Expr interface {
	// Place is where the formula stands.
	Place() diag.Place
}

// At is the place of a formula; every kind of formula embeds it.
type At struct{ where diag.Place }

// Place returns where the formula stands.
func (a At) Place() diag.Place { return a.where }

// Number is a bare number, exactly as written.
type Number struct {
	At
	Value *big.Rat
}

// Text is a quoted text. Each part is either plain words or a formula whose
// value is put in.
type Text struct {
	At
	Parts []TextPart
}

// TextPart is a stretch of a text; Formula is nil for plain words.
type TextPart struct {
	Words   string
	Formula Expr
}

// Plain returns the words of a text without formulas.
func (t *Text) Plain() (string, bool) {
	switch {
	case len(t.Parts) == 0:
		return "", true
	case len(t.Parts) == 1 && t.Parts[0].Formula == nil:
		return t.Parts[0].Words, true
	}
	return "", false
}

// Truth is true or false.
type Truth struct {
	At
	Yes bool
}

// Name is a dotted name: part.divider[nth - 1].top.
type Name struct {
	At
	Root  string
	Steps []Step
}

// Pick takes a member of a value that is not a name: share(a, 3)[nth].
type Pick struct {
	At
	From  Expr
	Steps []Step
}

// Step is one step of a name: a member, or an index if Index is set.
type Step struct {
	Member string
	Index  Expr
	Where  diag.Place
}

// Call is a function with its arguments.
type Call struct {
	At
	Func string
	Args []Expr
}

// Unary is a sign before a formula: "-" or "not".
type Unary struct {
	At
	Sign string
	X    Expr
}

// Binary is a sign between two formulas: + - * / == != < <= > >= and or.
type Binary struct {
	At
	Sign string
	X, Y Expr
}

// Choose is: If ? Then : Else.
type Choose struct {
	At
	If, Then, Else Expr
}

// List is a row of formulas in brackets.
type List struct {
	At
	Items []Expr
}

// Object is a set of named formulas in braces, in order.
type Object struct {
	At
	Fields []Field
}

// Field is one named formula of an object.
type Field struct {
	Name  string
	Where diag.Place
	Value Expr
}

// Bad stands where a formula could not be read; it has been reported.
type Bad struct{ At }
