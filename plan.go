package scantling

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"

	"scantling/internal/build"
	"scantling/internal/document"
	"scantling/internal/evaluate"
	"scantling/internal/ledger"
	"scantling/internal/record"
	"scantling/internal/world"
)

// Options say how a plan is made.
type Options struct {
	// Inputs are values that go before those of the document, by name, as document
	// text: `4`, `"black walnut"`, `"13 3/4 in"`.
	Inputs map[string]string
	// NoRecord leaves the as-built record out.
	NoRecord bool
}

// Result is a plan with what it was made from; its methods write it.
type Result struct {
	build.Result
	// Name is the design document's name in its world.
	Name string
}

// Role says what a file is to a piece.
type Role string

// The roles.
const (
	DesignFile Role = "design"
	ShopFile   Role = "shop"
	RecordFile Role = "record"
)

// FileError says which file of a piece could not be read, and why: it is not
// there ([fs.ErrNotExist]), may not be read, is too large, or is a record that
// holds something else.
type FileError struct {
	Role Role
	// Name is the file's name in its world.
	Name string
	Err  error
}

// Error implements error.
func (e *FileError) Error() string {
	return fmt.Sprintf("the %s file %s cannot be read: %v", e.Role, e.Name, e.Err)
}

// Unwrap returns the cause.
func (e *FileError) Unwrap() error { return e.Err }

// Plan reads a design document with its shop, its record and its recipes from a
// world, and plans the piece. An error means that the outside failed: a file
// that is not there or cannot be read. What is wrong with the documents stands
// in the plan.
func Plan(ctx context.Context, w world.World, name string, o Options) (*Result, error) {
	src, err := Load(w, name, o)
	if err != nil {
		return nil, err
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	r, err := build.Run(src)
	if err != nil {
		return nil, err
	}
	return &Result{r, name}, nil
}

// Load reads the documents that a plan is made from. The shop document is the
// one that the piece names; without one, the built-in shop of the document's
// units serves. The record lies beside the document ([RecordName]).
func Load(w world.World, name string, o Options) (evaluate.Sources, error) {
	text, err := w.Read(name)
	if err != nil {
		return evaluate.Sources{}, &FileError{DesignFile, name, err}
	}
	src := evaluate.Sources{Document: document.Source{Name: path.Base(name), Text: text}, Inputs: o.Inputs}
	if shop := shopOf(src.Document); shop != "" {
		beside := path.Join(path.Dir(name), shop)
		text, err := w.Read(beside)
		if err != nil {
			return evaluate.Sources{}, &FileError{ShopFile, beside, err}
		}
		src.Shop = document.Source{Name: shop, Text: text}
	}
	if o.NoRecord {
		return src, nil
	}
	lines, err := w.Read(RecordName(name))
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return src, nil
	case err != nil:
		return evaluate.Sources{}, &FileError{RecordFile, RecordName(name), err}
	}
	entries, _, err := record.Read(lines)
	if err != nil {
		return evaluate.Sources{}, &FileError{RecordFile, RecordName(name), err}
	}
	src.Record = entries
	return src, nil
}

// RecordName names the as-built record of a design document: the document's name
// with .record.jsonl in the place of .piece.hcl.
func RecordName(document string) string {
	return strings.TrimSuffix(strings.TrimSuffix(document, ".hcl"), ".piece") + ".record.jsonl"
}

// shopOf returns the name of the shop document that a piece names.
func shopOf(src document.Source) string {
	file, _ := document.Read(src, document.DefaultLimits)
	for _, b := range file.Of("piece") {
		if a := b.Attribute("shop"); a != nil {
			if text, ok := a.Value.(*document.Text); ok {
				if name, plain := text.Plain(); plain {
					return name
				}
			}
		}
	}
	return ""
}

// Functions returns the pure functions that the plan's ledger calls, so that a
// stored plan can be held against its own arithmetic.
func (r *Result) Functions() ledger.Functions { return build.Functions() }
