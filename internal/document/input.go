package document

import (
	"fmt"

	"scantling/internal/diag"
)

// given are the attributes by which an input states its value, one of them each.
var given = []string{"count", "length", "angle", "number", "choice", "text", "yes", "material", "things", "head"}

// Given returns the attribute that states the value of an input block, or nil.
// Its name is the input's kind: count, length, number, choice, text, yes,
// material, things or head.
func (b *Block) Given() *Attribute {
	for _, name := range given {
		if a := b.Attribute(name); a != nil {
			return a
		}
	}
	return nil
}

// Input returns the block of the input of that name, or nil.
func (f *File) Input(name string) *Block {
	for _, b := range f.Of("input") {
		if b.Label() == name {
			return b
		}
	}
	return nil
}

// SetInput returns the edit that writes a new value, as document text, in the
// place of an input's present one. It returns an error where the document has
// no such input, or the text is not one formula.
func (f *File) SetInput(name, text string) (diag.Edit, error) {
	b := f.Input(name)
	if b == nil {
		return diag.Edit{}, fmt.Errorf("the document has no input %q", name)
	}
	a := b.Given()
	if a == nil {
		return diag.Edit{}, fmt.Errorf("input %q states no value that could be replaced", name)
	}
	return f.SetValue(a, text)
}

// SetValue returns the edit that writes a new formula, as document text, in the
// place of an attribute's present one: nothing but its bytes.
func (f *File) SetValue(a *Attribute, text string) (diag.Edit, error) {
	if _, err := ParseFormula(text); err != nil {
		return diag.Edit{}, err
	}
	at := a.Value.Place()
	return diag.Edit{File: f.Name, Start: at.Start, End: at.End, Old: f.Written(at), New: text}, nil
}
