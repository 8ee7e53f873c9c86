package trial

import (
	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Builder makes a piece. Numbers are tenths of a millimetre throughout.
type Builder struct {
	Piece  piece.Piece
	Ledger *ledger.Ledger
}

// New returns an empty piece.
func New() *Builder { return &Builder{Ledger: ledger.New(nil)} }

// Tenth is the unit of all numbers that a Builder takes.
const Tenth = unit.Millimetre / 10

// Fig returns a figure of so many tenths of a millimetre, written in the document.
func (b *Builder) Fig(name string, tenths int64) piece.Figure {
	return b.Ledger.Leaf(name, unit.Length(tenths)*Tenth, ledger.Document, "")
}

// The frames in use, by how the part lies; all are right-handed.
var (
	GrainRight = piece.Frame{Length: piece.ToRight, Width: piece.ToBack, Thickness: piece.ToUp}
	GrainBack  = piece.Frame{Length: piece.ToBack, Width: piece.ToRight, Thickness: piece.ToDown}
	Tray       = piece.Frame{Length: piece.ToBack, Width: piece.ToLeft, Thickness: piece.ToUp}
	LeftSide   = piece.Frame{Length: piece.ToUp, Width: piece.ToBack, Thickness: piece.ToLeft}
	RightSide  = piece.Frame{Length: piece.ToUp, Width: piece.ToFront, Thickness: piece.ToRight}
	BackPanel  = piece.Frame{Length: piece.ToUp, Width: piece.ToRight, Thickness: piece.ToBack}
	Front      = piece.Frame{Length: piece.ToRight, Width: piece.ToUp, Thickness: piece.ToFront}
	SideLow    = piece.Frame{Length: piece.ToBack, Width: piece.ToUp, Thickness: piece.ToRight}
	SideHigh   = piece.Frame{Length: piece.ToBack, Width: piece.ToDown, Thickness: piece.ToLeft}
)

// Part adds a board from left, right, front, back, bottom, top. An address of
// more than one step is in the group that all but its last step name.
func (b *Builder) Part(name string, f piece.Frame, at ...int64) *piece.Part {
	a := address.Address(name)
	p := piece.Part{
		Address: a, Name: a.Last().Name, Group: a.Parent(),
		Form: piece.Board, Material: "oak", Frame: f,
	}
	for i := range 3 {
		p.Extent[i] = piece.Extent{Low: b.Fig(name+" low", at[2*i]), High: b.Fig(name+" high", at[2*i+1])}
	}
	var sizes [3]piece.Figure
	for k, d := range f.Directions() {
		axis, _ := d.Axis()
		sizes[k] = b.Ledger.Less(name+" size", p.Extent[axis].High, p.Extent[axis].Low)
	}
	p.Length, p.Width, p.Thickness = sizes[0], sizes[1], sizes[2]
	b.Piece.Parts = append(b.Piece.Parts, p)
	return &b.Piece.Parts[len(b.Piece.Parts)-1]
}

// Joint adds a glued joint of a depth, 0 for none; change may set the rest.
func (b *Builder) Joint(name string, kind piece.JointKind, a, c string, depth int64, change func(*piece.Joint)) {
	j := piece.Joint{
		Address: address.Address(name), Family: address.Address(name), Kind: kind,
		A: address.Address(a), B: address.Address(c), Glue: "pva",
	}
	if depth != 0 {
		j.Depth = b.Fig(name+" depth", depth)
	}
	if change != nil {
		change(&j)
	}
	b.Piece.Joints = append(b.Piece.Joints, j)
}

// Group adds a group; inside is the space that it moves in, "" for none.
func (b *Builder) Group(name, inside string) {
	a := address.Address(name)
	b.Piece.Groups = append(b.Piece.Groups, piece.Group{
		Address: a, Name: a.Last().Name, Parent: a.Parent(), Inside: address.Address(inside),
	})
}

// Space adds a clear space from left, right, front, back, bottom, top.
func (b *Builder) Space(name string, at ...int64) {
	s := piece.Space{Address: address.Address(name)}
	for i := range 3 {
		s.Extent[i] = piece.Extent{Low: b.Fig(name+" low", at[2*i]), High: b.Fig(name+" high", at[2*i+1])}
		s.Clear[i] = b.Ledger.Less(name+" clear", s.Extent[i].High, s.Extent[i].Low)
	}
	b.Piece.Spaces = append(b.Piece.Spaces, s)
}

// Slot adds a cut of a part's own: from a side, along a local axis from and to,
// near and far across, depth, and the radius of its corners.
func (b *Builder) Slot(part, name string, kind piece.CutKind, open piece.Side, run piece.Local, at ...int64) *piece.Cut {
	f := func(i int) piece.Figure { return b.Fig(name, at[i]) }
	s := piece.Slot{Open: open, Run: run, From: f(0), To: f(1), Near: f(2), Far: f(3), Depth: f(4), Corner: f(5)}
	a := address.Address(part)
	c := piece.Cut{Address: a + "." + address.Address(name), Kind: kind, Part: a, Slot: &s}
	for i := range b.Piece.Parts {
		if p := &b.Piece.Parts[i]; p.Address == a {
			s.StartOpen, s.EndOpen = s.From.Nm == 0, s.To.Nm == p.Sizes()[run].Nm
		}
	}
	b.Piece.Cuts = append(b.Piece.Cuts, c)
	return &b.Piece.Cuts[len(b.Piece.Cuts)-1]
}

// Find returns the part of an address, or nil.
func (b *Builder) Find(name string) *piece.Part {
	for i := range b.Piece.Parts {
		if string(b.Piece.Parts[i].Address) == name {
			return &b.Piece.Parts[i]
		}
	}
	return nil
}
