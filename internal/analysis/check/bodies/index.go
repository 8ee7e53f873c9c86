package bodies

import (
	"strings"

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
	members   map[address.Address][]*piece.Part
	moves     []Move
	moved     bool
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
	if x.members == nil {
		x.members = map[address.Address][]*piece.Part{}
		for i := range x.Piece.Parts {
			p := &x.Piece.Parts[i]
			for g := p.Group; g != ""; g = g.Parent() {
				x.members[g] = append(x.members[g], p)
			}
		}
	}
	return x.members[group]
}

// Matches reports whether a is what the pattern names: a step of the pattern
// without a number stands for every number; keys stand for themselves.
func Matches(pattern, a address.Address) bool {
	if pattern == a {
		return true
	}
	p, q := string(pattern), string(a)
	for p != "" && q != "" {
		switch {
		case p[0] == q[0]:
			p, q = p[1:], q[1:]
			continue
		case q[0] != '[' || p[0] != '.':
			return false
		}
		end := strings.IndexByte(q, ']')
		if end < 0 || q[1] == '"' {
			return false
		}
		q = q[end+1:]
	}
	if p != "" || q == "" {
		return p == q
	}
	return q[0] == '[' && q[1] != '"' && strings.IndexByte(q, ']') == len(q)-1
}
