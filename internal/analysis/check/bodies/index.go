package bodies

import (
	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/joinery"
	"scantling/internal/piece"
)

// Index finds things of a piece by address.
type Index struct {
	Piece     *piece.Piece
	parts     map[address.Address]*piece.Part
	cuts      map[address.Address][]*piece.Cut
	all       map[address.Address]*piece.Cut
	materials map[string]*piece.Material
	gone      map[address.Address][]Box
	wood      map[address.Address][]Box
}

// Of indexes the piece of a context.
func Of(c *analysis.Context) *Index {
	x := &Index{
		Piece: c.Piece, parts: map[address.Address]*piece.Part{}, cuts: map[address.Address][]*piece.Cut{},
		all: map[address.Address]*piece.Cut{}, materials: map[string]*piece.Material{}, gone: map[address.Address][]Box{}, wood: map[address.Address][]Box{},
	}
	for i := range c.Piece.Parts {
		x.parts[c.Piece.Parts[i].Address] = &c.Piece.Parts[i]
	}
	for i := range c.Piece.Materials {
		x.materials[c.Piece.Materials[i].Name] = &c.Piece.Materials[i]
	}
	for _, list := range [2][]piece.Cut{c.Piece.Cuts, c.Cuts} {
		for i := range list {
			cut := &list[i]
			x.cuts[cut.Part] = append(x.cuts[cut.Part], cut)
			x.all[cut.Address] = cut
			p := x.parts[cut.Part]
			if p == nil {
				continue
			}
			for _, b := range joinery.Around(p, cut) {
				x.gone[cut.Part] = append(x.gone[cut.Part], boxOf(b))
			}
		}
	}
	return x
}

// Part returns a part, or nil.
func (x *Index) Part(a address.Address) *piece.Part { return x.parts[a] }

// Cuts returns the cuts of a part, its own before those of joints.
func (x *Index) Cuts(part address.Address) []*piece.Cut { return x.cuts[part] }

// Cut returns a cut, or nil.
func (x *Index) Cut(a address.Address) *piece.Cut { return x.all[a] }

// Material returns what a part is made of; false if the piece does not say.
func (x *Index) Material(p *piece.Part) (piece.Material, bool) {
	m, ok := x.materials[p.Material]
	if !ok {
		return piece.Material{Name: p.Material}, false
	}
	return *m, true
}

// Sheet reports whether a part is of sheet goods, which do not move.
func (x *Index) Sheet(p *piece.Part) bool {
	m, _ := x.Material(p)
	return m.Sheet
}

// Members returns the parts of a group and of the groups in it.
func (x *Index) Members(group address.Address) []*piece.Part {
	var out []*piece.Part
	for i := range x.Piece.Parts {
		if p := &x.Piece.Parts[i]; p.Group == group || group.Has(p.Group) && p.Group != "" {
			out = append(out, p)
		}
	}
	return out
}

// Matches reports whether a is what the pattern names: a step of the pattern
// without a number stands for every number.
func Matches(pattern, a address.Address) bool {
	if pattern == a {
		return true
	}
	ps, errP := pattern.Steps()
	as, errA := a.Steps()
	if errP != nil || errA != nil || len(ps) != len(as) || len(ps) == 0 {
		return false
	}
	for i := range ps {
		bare := ps[i].Index == 0 && !ps[i].HasKey && ps[i].Name == as[i].Name
		if ps[i] != as[i] && !bare {
			return false
		}
	}
	return true
}
