package scantling

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"slices"

	"scantling/internal/address"
	"scantling/internal/journal"
	"scantling/internal/piece"
	"scantling/internal/record"
	"scantling/internal/unit"
	"scantling/internal/world"
)

// Note is one thing to write into the as-built record: a reading (What and
// Value), a part that is cut (Cut), or one that is spoiled (Spoiled).
type Note struct {
	// Of is the address of a part, a space or a material.
	Of string
	// What names the reading: "thickness", "width front".
	What string
	// Value is the reading as the maker writes it: "17.6", "15 1/64 in".
	Value string
	Cut   bool
	// Sizes are length, width and thickness as cut; empty ones are as planned.
	Sizes   [3]string
	Spoiled bool
	// Humidity in the shop, in percent, as text; empty is not known.
	Humidity string
	Remark   string
}

// Errors of Record that are the maker's to mend.
var (
	ErrNoSuchThing = errors.New("there is no such part, space or material")
	ErrNothingSaid = errors.New("say what was measured and how much, or that the part is cut or spoiled")
)

// Record writes a note into the as-built record of a design document. The entry
// carries the date and the fingerprint of what was measured, as planned today,
// so that it is not applied to another thing of the same name later.
func Record(ctx context.Context, w world.World, document string, n Note) (record.Entry, error) {
	r, err := Plan(ctx, w, document, Options{})
	if err != nil {
		return record.Entry{}, err
	}
	e, err := r.entry(n, w.Today())
	if err != nil {
		return record.Entry{}, err
	}
	line, err := e.Line()
	if err != nil {
		return record.Entry{}, err
	}
	name := RecordName(document)
	data, err := w.Read(name)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return record.Entry{}, &FileError{RecordFile, name, err}
	}
	_, good, err := record.Read(data)
	if err != nil {
		return record.Entry{}, &FileError{RecordFile, name, err}
	}
	return e, w.Write(name, journal.Appended(data, good, line))
}

// entry makes the entry of a note.
func (r *Result) entry(n Note, today world.Date) (record.Entry, error) {
	of, err := address.Parse(n.Of)
	if err != nil {
		return record.Entry{}, err
	}
	e := record.Entry{Date: today, Address: of, Note: n.Remark}
	bare := r.Shop.Units.Unit()
	switch {
	case n.Spoiled:
		e.Kind = record.Spoiled
	case n.Cut:
		e.Kind = record.Cut
		if e.Sizes, err = r.sizesOf(of, n.Sizes, bare); err != nil {
			return record.Entry{}, err
		}
	case n.What != "" && n.Value != "":
		e.Kind, e.What = record.Reading, n.What
		if e.Value, err = unit.ParseValue(n.Value, bare); err != nil {
			return record.Entry{}, err
		}
	default:
		return record.Entry{}, ErrNothingSaid
	}
	if n.Humidity != "" {
		if e.Humidity, err = unit.ParseValue(n.Humidity+" %rh", 0); err != nil {
			return record.Entry{}, err
		}
	}
	print, ok := r.Evaluated.Fingerprint(of, e)
	if n.Spoiled {
		ok = slices.ContainsFunc(r.Plan.Piece.Parts, func(p piece.Part) bool { return p.Address == of })
	}
	if !ok {
		return record.Entry{}, fmt.Errorf("%s: %w", of, ErrNoSuchThing)
	}
	e.Fingerprint = print
	return e, e.Check()
}

// sizesOf reads the sizes of a cut part; those that are not said are as planned.
func (r *Result) sizesOf(of address.Address, said [3]string, bare unit.Length) ([3]unit.Length, error) {
	for _, p := range r.Plan.Piece.Parts {
		if p.Address != of {
			continue
		}
		var sizes [3]unit.Length
		for i, f := range p.Sizes() {
			sizes[i] = f.Nm
			if said[i] == "" {
				continue
			}
			l, err := unit.Parse(said[i], bare)
			if err != nil {
				return sizes, err
			}
			sizes[i] = l
		}
		return sizes, nil
	}
	return [3]unit.Length{}, fmt.Errorf("%s: %w", of, ErrNoSuchThing)
}
