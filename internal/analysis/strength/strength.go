package strength

import (
	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/estimate"
	"scantling/internal/diag"
	"scantling/internal/joinery"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/shape"
	"scantling/internal/shop"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// Analysis is [Derive] as a declared analysis.
var Analysis = analysis.Declare(analysis.Info{
	Name: "strength", Kind: analysis.Derive, Solids: true,
	Doc: "What does load do to the piece: do shelves sag, do cases rack, does it tip, what do its joints bear, how do its drawers run?",
}, func(c *analysis.Context) (plan.Strength, diag.List) {
	return Derive(Input{Piece: c.Piece, Joints: c.Joints, Shop: c.Shop, Ledger: c.Ledger, Shapes: c.Shapes()}), nil
})

// Input is what [Derive] reads.
type Input struct {
	Piece  *piece.Piece
	Joints []joinery.Lowered
	Shop   *shop.Shop
	Ledger *ledger.Ledger
	// Shapes are the finished parts, for their masses and centres of gravity.
	Shapes *shape.Shapes
}

// Derive estimates the strength of a piece.
func Derive(in Input) plan.Strength {
	e := estimator{
		Input: in, maker: estimate.New(in.Ledger, Functions()),
		parts: map[address.Address]*piece.Part{}, materials: map[string]piece.Material{}, woods: map[string]wood{},
		joints: map[address.Address]*piece.Joint{}, at: map[address.Address][]*joinery.Lowered{}, masses: map[address.Address]plan.Estimate{}, goes: map[address.Address]*move{},
	}
	for i := range in.Piece.Parts {
		p := &in.Piece.Parts[i]
		e.parts[p.Address] = p
		if low := p.Extent[piece.Up].Low.Nm; i == 0 || low < e.floor {
			e.floor = low
		}
		e.top = max(e.top, p.Extent[piece.Up].High.Nm)
	}
	for _, m := range in.Piece.Materials {
		e.materials[m.Name] = m
	}
	for i := range in.Piece.Joints {
		e.joints[in.Piece.Joints[i].Address] = &in.Piece.Joints[i]
	}
	for i := range in.Joints {
		l := &in.Joints[i]
		e.at[l.A], e.at[l.B] = append(e.at[l.A], l), append(e.at[l.B], l)
	}
	e.moves = e.moving()
	e.carried()
	out := plan.Strength{Joints: e.holds(), Drawers: e.runs(), Shelves: e.shelves()}
	out.Cases = e.cases(out.Joints)
	out.Standing = e.standing()
	return out
}

// estimator is one run of Derive.
type estimator struct {
	Input
	maker *estimate.Maker
	parts map[address.Address]*piece.Part
	// floor and top are how far down and up the piece reaches, the top no less than nought.
	floor, top unit.Length
	materials  map[string]piece.Material
	woods      map[string]wood
	joints     map[address.Address]*piece.Joint
	// at are the joints that a part takes part in.
	at     map[address.Address][]*joinery.Lowered
	masses map[address.Address]plan.Estimate
	moves  []move
	// goes is what parts and groups go with, as they are asked for.
	goes map[address.Address]*move
	// cargo is what the contents weigh, where it stands.
	cargo []cargo
}

// wood is a timber or a kind of sheet by its name.
type wood struct {
	species timber.Species
	known   bool
}

// wood returns the material of a part and its timber; not known for sheet goods.
func (e *estimator) wood(p *piece.Part) (piece.Material, wood) {
	m := e.materials[p.Material]
	if m.Sheet {
		return m, wood{}
	}
	w, ok := e.woods[m.Species]
	if !ok {
		s, err := e.Shop.Wood(m.Species)
		w = wood{s, err == nil}
		e.woods[m.Species] = w
	}
	return m, w
}

// sawn returns the way of sawing that a material's own word means.
func sawn(word string) timber.Sawn {
	switch word {
	case "flat":
		return timber.FlatSawn
	case "quarter":
		return timber.QuarterSawn
	}
	return timber.SawnUnknown
}
