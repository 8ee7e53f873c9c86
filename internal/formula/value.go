package formula

import (
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/unit"
)

// Kind is what a value is.
type Kind int

// The kinds of value. Nothing stands for what could not be worked out and has
// been reported.
const (
	Nothing   Kind = iota
	Quantity       // a number with its dimension
	Text           // words, or a length that is not yet asked for
	Truth          // yes or no
	List           // values in order
	Object         // named values
	Reference      // a thing of the piece: a part, a material, a space
)

// Value is the result of a formula.
type Value struct {
	Kind Kind
	// Entry is the value's line in the ledger; 0 for a literal that has none yet,
	// for objects and references.
	Entry ledger.ID
	// Is is the quantity, the text or the truth.
	Is     unit.Value
	Items  []Value
	Fields []Field
	// Ref is what a reference points at; only the scope knows its type. It may
	// stand beside a list or an object, which then has members of its own.
	Ref any
	// Position is set for a length that is a place along an axis.
	Position *Position
	// Loose says that a count was multiplied by a bare number, which may have been
	// meant as a length: nth * 50.
	Loose bool
	// Where is the formula that the value was written with.
	Where diag.Place
}

// Field is one named value of an object.
type Field struct {
	Name  string
	Value Value
}

// Position says where a length is a place: along Axis in a Frame, and at a Face
// if nothing was added to it. Frame and Face are the scope's.
type Position struct {
	Axis  int
	Frame any
	Face  any
}

// OK reports whether there is a value.
func (v Value) OK() bool { return v.Kind != Nothing }

// Field returns a field of an object.
func (v Value) Field(name string) (Value, bool) {
	for _, f := range v.Fields {
		if f.Name == name {
			return f.Value, true
		}
	}
	return Value{}, false
}

// Word says what the value is, as a key of the catalogue, for diagnostics.
func (v Value) Word() string {
	switch v.Kind {
	case Quantity:
		if v.Position != nil {
			return "kind.position"
		}
		return "kind." + string(v.Is.Dim())
	case Text:
		return "kind.text"
	case Truth:
		return "kind.truth"
	case List:
		return "kind.list"
	case Object:
		return "kind.object"
	case Reference:
		return "kind.reference"
	}
	return "kind.nothing"
}

// plainly returns the value without its being a position.
func (v Value) plainly() Value {
	v.Position = nil
	return v
}

// At returns the value at another position, or as a plain length for nil.
func (v Value) At(p *Position) Value {
	v.Position = p
	return v
}
