package document

import (
	"slices"

	"scantling/internal/diag"
)

// Version is the version of the language that this program reads.
const Version = 1

// Source is the text of one document with the name that places refer to.
type Source struct {
	Name string
	Text []byte
}

// Kind is what a document declares.
type Kind string

// The kinds of document.
const (
	Piece   Kind = "piece"
	Recipe  Kind = "recipe"
	Shop    Kind = "shop"
	Choices Kind = "choices"
)

// File is a document as read.
type File struct {
	Name string
	Kind Kind
	Text []byte
	// Head is the block that gives the document its kind; nil if there is none.
	Head *Block
	// Blocks holds all blocks at the outermost level in order, Head among them.
	Blocks []*Block
	// Lost says that a part of the text could not be read even as a broken block:
	// a name that seems to be missing may have been declared there.
	Lost bool
	// Misread are the names of blocks whose word is not known.
	Misread []string
	Work    Work
}

// Of returns the outermost blocks of one type, in order.
func (f *File) Of(kind string) []*Block {
	var out []*Block
	for _, b := range f.Blocks {
		if b.Type == kind {
			out = append(out, b)
		}
	}
	return out
}

// Block is a word with labels and a body.
type Block struct {
	Type   string
	Labels []string
	// Where is the head of the block, from its word to its last label.
	Where diag.Place
	// Whole is the block to its closing brace, LabelAt the place of each label.
	Whole   diag.Place
	LabelAt []diag.Place
	// Attributes and Blocks are the body, in order.
	Attributes []*Attribute
	Blocks     []*Block
	// Broken says that the body was not read to its end; Unsure that something in
	// it was not understood. What seems to be missing may then be there.
	Broken, Unsure bool
}

// Label returns the block's first label, or nothing.
func (b *Block) Label() string {
	if len(b.Labels) == 0 {
		return ""
	}
	return b.Labels[0]
}

// Attribute returns the attribute of that name, or nil.
func (b *Block) Attribute(name string) *Attribute {
	if b == nil {
		return nil
	}
	i := slices.IndexFunc(b.Attributes, func(a *Attribute) bool { return a.Name == name })
	if i < 0 {
		return nil
	}
	return b.Attributes[i]
}

// Has reports whether the block has the attribute.
func (b *Block) Has(name string) bool { return b.Attribute(name) != nil }

// Attribute is a name with its formula.
type Attribute struct {
	Name string
	// Where is the name's own place, Whole the name to the end of its formula.
	Where diag.Place
	Whole diag.Place
	Value Expr
}
