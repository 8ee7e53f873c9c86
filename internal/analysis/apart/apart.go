package apart

import (
	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/diag"
	"scantling/internal/geom/vec"
	"scantling/internal/joinery"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/shape"
	"scantling/internal/unit"
)

// Bounds of the work.
const (
	// MaxMembers bounds the parts and groups that are put together at once.
	MaxMembers = 2000
	// MaxLooks bounds the work by boxes, counted in looks at two boxes at once.
	MaxLooks = 100_000_000
	// MaxSweeps bounds how often a solid is swept past another.
	MaxSweeps = 4000
)

// Member is what moves as one: a part, or a group with all its parts.
type Member struct {
	Name  address.Address
	Parts []int // indices of the piece's parts
}

// Ring is a set of members that do not come apart along any way looked at.
type Ring struct {
	Members []Member
	// Blocks says of the first member which part of the others is in its way, by
	// direction.
	Blocks map[piece.Direction]address.Address
	// Sure is not set where a shape was not known, or the work became too much.
	Sure bool
}

// Group is how one group comes apart; the address "" is the whole piece.
type Group struct {
	Address address.Address
	Members int
	// TooMany says that there are more than MaxMembers, and TooMuch that more than
	// MaxLooks would be needed: nothing more is known then.
	TooMany, TooMuch bool
	Locked           []Ring
	// Unsure are the parts of their own whose solids are not verified, with why.
	Unsure []Unsure
}

// Unsure is a part whose solid is not verified.
type Unsure struct {
	Part int
	Why  string
}

// Taken is how the piece comes apart.
type Taken struct {
	Groups   []Group
	Removals []plan.Removal
	// Looks and Sweeps are how much work it was.
	Looks, Sweeps int
}

// Analysis declares the analysis.
var Analysis = analysis.Declare(analysis.Info{
	Name: "apart",
	Doc:  "In which order, and which way, do the parts slide off each other?",
	Kind: analysis.Derive, Solids: true,
}, func(c *analysis.Context) (Taken, diag.List) {
	return Of(c.Piece, c.Joints, c.Shapes(), c.Ledger), nil
})

// work is what is known of the parts.
type work struct {
	piece  *piece.Piece
	shapes *shape.Shapes
	timber []timber
	halves []half
	ways   []way
	bounds map[[2]int][]vec.V3
	// lowered are the joints with the way in which they go.
	lowered []joinery.Lowered
	reach   float64
	unsure  map[int]bool
	parent  map[address.Address]address.Address
	looks   int
	sweeps  int
	// guessed says that something was taken as in the way without being known.
	guessed bool
}

// Of takes a piece apart. The ledger takes how far everything slides.
func Of(p *piece.Piece, lowered []joinery.Lowered, shapes *shape.Shapes, l *ledger.Ledger) Taken {
	w := &work{piece: p, shapes: shapes, ways: waysOf(p), bounds: boundsOf(p, lowered), lowered: lowered, unsure: map[int]bool{}, parent: map[address.Address]address.Address{}}
	for i := range p.Groups {
		w.parent[p.Groups[i].Address] = p.Groups[i].Parent
	}
	var out Taken
	for i := range p.Parts {
		w.timber = append(w.timber, timberOf(&p.Parts[i], shapes.CutsOf(p.Parts[i].Address)))
		ok, _ := shapes.At(i).Verified()
		w.unsure[i] = !ok
	}
	w.halve()
	w.reach = reach(w.timber)
	groups := []address.Address{""}
	for i := range p.Groups {
		groups = append(groups, p.Groups[i].Address)
	}
	for _, a := range groups {
		g, removals := w.group(a, l)
		if g.Members > 1 {
			out.Groups = append(out.Groups, g)
			out.Removals = append(out.Removals, removals...)
		}
	}
	out.Looks, out.Sweeps = w.looks, w.sweeps
	return out
}

// group takes one group apart.
func (w *work) group(a address.Address, l *ledger.Ledger) (Group, []plan.Removal) {
	g := &gathering{work: w, group: a, members: w.members(a), states: make([][]state, len(w.ways)), joined: map[[2]int]byte{}}
	out := Group{Address: a, Members: len(g.members)}
	switch {
	case out.Members < 2:
		return out, nil
	case out.Members > MaxMembers:
		out.TooMany = true
		return out, nil
	}
	for _, m := range g.members {
		if one := m.parts[0]; len(m.parts) == 1 && w.unsure[one] {
			_, why := w.solid(one).Verified()
			out.Unsure = append(out.Unsure, Unsure{w.own(one), why})
		}
	}
	of := map[address.Address]int{}
	for k, m := range g.members {
		for _, i := range m.parts {
			of[w.piece.Parts[w.own(i)].Address] = k
		}
	}
	for _, j := range w.lowered {
		i, okI := of[j.A]
		k, okK := of[j.B]
		if axis, _ := j.Entry.Axis(); okI && okK && i != k && !w.parted(a, j.A, j.B) {
			g.entries = append(g.entries, entry{i, k, int(axis)})
			g.joined[[2]int{min(i, k), max(i, k)}] |= 1 << axis
		}
	}
	all := make([]int, out.Members)
	for i := range all {
		all[i] = i
	}
	w.guessed = false
	g.take(all)
	if w.looks > MaxLooks {
		out.TooMuch = true
		return out, nil
	}
	for _, ring := range g.locked {
		out.Locked = append(out.Locked, g.tell(g.smallest(ring)))
	}
	return out, g.plan(l)
}

// members returns what is put together in a group: its own parts and, as one
// each, the groups directly in it.
func (w *work) members(group address.Address) []member {
	var set []member
	inner := map[address.Address][]int{}
	var order []address.Address
	for i := range w.piece.Parts {
		p := &w.piece.Parts[i]
		if p.Group == group {
			set = append(set, w.gather(p.Address, []int{i}))
			continue
		}
		if child, ok := w.childOf(group, p.Group); ok {
			if inner[child] == nil {
				order = append(order, child)
			}
			inner[child] = append(inner[child], i)
		}
	}
	for _, child := range order {
		set = append(set, w.opened(child, inner[child])...)
	}
	return set
}

func (w *work) gather(name address.Address, parts []int) member {
	var hulls []shape.Box
	for _, i := range parts {
		hulls = append(hulls, w.timber[i].hull)
	}
	return member{name, parts, around(hulls)}
}

// childOf returns the group directly in outer that holds inner, if outer does.
func (w *work) childOf(outer, inner address.Address) (address.Address, bool) {
	for range len(w.parent) + 1 {
		up, known := w.parent[inner]
		switch {
		case inner == "":
			return "", false
		case up == outer:
			return inner, true
		case !known:
			return "", false
		}
		inner = up
	}
	return "", false
}

// plan returns the removals as the plan holds them.
func (g *gathering) plan(l *ledger.Ledger) []plan.Removal {
	var out []plan.Removal
	for _, r := range g.removals {
		p := plan.Removal{Group: g.group}
		for _, i := range r.taken {
			p.Taken = append(p.Taken, g.members[i].name)
		}
		w := g.ways[r.way]
		d := w.dir
		if !r.up {
			d = d.Mul(-1)
		}
		p.Along = [3]float64{d.X + 0, d.Y + 0, d.Z + 0}
		if w.axis >= 0 {
			sign := 1
			if !r.up {
				sign = -1
			}
			p.Way = piece.Toward(piece.Axis(w.axis), sign)
		}
		p.Far = l.Leaf("apart."+string(p.Taken[0]), unit.FromMillimetres(r.far), ledger.Derived, "apart.source")
		out = append(out, p)
	}
	return out
}
