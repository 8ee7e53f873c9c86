package assembly

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/shape"
)

// Codes of the check's findings.
const (
	// Locked: parts or groups that no straight slide takes apart.
	Locked diag.Code = "assembly-locked"
	// Unjudged: a part whose shape is not known well enough, or too many parts.
	Unjudged diag.Code = "assembly-unknown"
	// Open: everything comes apart.
	Open diag.Code = "assembly-open"
)

// MaxLooks bounds the work for one group, counted in looks at two boxes at once.
const MaxLooks = 100_000_000

// MaxMembers bounds the parts and groups that are put together at once.
const MaxMembers = 2000

// Analysis declares the check.
var Analysis analysis.Check = analysis.Declare(analysis.Info{
	Name: "assembly",
	Doc:  "Can the piece be put together, group by group, by straight slides?",
	Kind: analysis.Judge, Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	return Judge(c.Piece, c.Cuts, marks.Analysis.Get(c)), nil
})

// Judge returns the findings for a piece with the cuts of its joints.
func Judge(p *piece.Piece, joints []piece.Cut, rows []plan.PartRow) []plan.Finding {
	j := judge{piece: p, wood: make([][]shape.Box, len(p.Parts)), marks: map[address.Address]string{}, rough: map[int]bool{}, parent: map[address.Address]address.Address{}}
	for i := range p.Groups {
		j.parent[p.Groups[i].Address] = p.Groups[i].Parent
	}
	for _, r := range rows {
		for _, a := range r.Members {
			j.marks[a] = r.Mark
		}
	}
	cuts := map[address.Address][]*piece.Cut{}
	for _, list := range [2][]piece.Cut{p.Cuts, joints} {
		for i := range list {
			cuts[list[i].Part] = append(cuts[list[i].Part], &list[i])
		}
	}
	for i := range p.Parts {
		p := &p.Parts[i]
		j.rough[i] = p.Form != piece.Board && p.Form != ""
		var ok bool
		if j.wood[i], ok = shape.Boxes(p, cuts[p.Address], true); !ok {
			j.rough[i] = true
		}
	}
	j.group("")
	for i := range p.Groups {
		j.group(p.Groups[i].Address)
	}
	if len(j.out) == 0 && len(p.Parts) > 1 {
		j.out = append(j.out, plan.Finding{
			Check: "assembly", Status: plan.Pass, Severity: diag.Note, Code: Open,
			Text: message.New("assembly.open", message.Count("parts", len(p.Parts))),
		})
	}
	return j.out
}

type judge struct {
	piece *piece.Piece
	wood  [][]shape.Box
	marks map[address.Address]string
	// rough are the parts whose box is not their shape.
	rough map[int]bool
	// parent is the group that a group stands in.
	parent map[address.Address]address.Address
	out    []plan.Finding
}

// members returns what is put together in a group: its own parts and, as one
// each, the groups directly in it.
func (j *judge) members(group address.Address) []member {
	var set []member
	inner := map[address.Address][]int{}
	var order []address.Address
	for i := range j.piece.Parts {
		p := &j.piece.Parts[i]
		if p.Group == group {
			set = append(set, gather(p.Address, []int{i}, j.wood))
			continue
		}
		if child, ok := j.childOf(group, p.Group); ok {
			if inner[child] == nil {
				order = append(order, child)
			}
			inner[child] = append(inner[child], i)
		}
	}
	for _, child := range order {
		set = append(set, gather(child, inner[child], j.wood))
	}
	return set
}

// childOf returns the group directly in outer that holds inner, if outer does.
func (j *judge) childOf(outer, inner address.Address) (address.Address, bool) {
	for range len(j.parent) + 1 {
		up, known := j.parent[inner]
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

// group judges what is put together in one group.
func (j *judge) group(group address.Address) {
	set := j.members(group)
	if len(set) < 2 {
		return
	}
	if len(set) > MaxMembers {
		j.out = append(j.out, plan.Finding{
			Check: "assembly", Status: plan.Unknown, Severity: diag.Warning, Code: Unjudged, Address: group,
			Text: message.New("assembly.too-many", message.Count("parts", len(set)), message.Count("limit", MaxMembers)),
		})
		return
	}
	t, ok := newTable(set)
	if !ok {
		j.out = append(j.out, plan.Finding{
			Check: "assembly", Status: plan.Unknown, Severity: diag.Warning, Code: Unjudged, Address: group,
			Text: message.New("assembly.too-much-work", message.Count("parts", len(set)), message.Count("limit", MaxLooks)),
		})
		return
	}
	all := make([]int, len(set))
	for i := range all {
		all[i] = i
	}
	for _, ring := range t.locked(all) {
		j.report(group, set, ring, t)
	}
}

// report tells of members that lock each other.
func (j *judge) report(group address.Address, set []member, ring []int, t table) {
	f := plan.Finding{
		Check: "assembly", Status: plan.Fail, Severity: diag.Error, Code: Locked, Address: group,
	}
	var names []message.Arg
	for _, i := range ring {
		names = append(names, message.Address("", set[i].name))
		for _, p := range set[i].parts {
			part := &j.piece.Parts[p]
			if j.rough[p] {
				f.Status, f.Severity, f.Code = plan.Unknown, diag.Warning, Unjudged
			}
			if m := j.marks[part.Address]; len(set[i].parts) == 1 && m != "" && !slices.Contains(f.Marks, m) {
				f.Marks = append(f.Marks, m)
			}
		}
	}
	first := ring[0]
	f.Address, f.Where = set[first].name, j.piece.Parts[set[first].parts[0]].Where
	key := "assembly.locked"
	if f.Status == plan.Unknown {
		key = "assembly.perhaps-locked"
	}
	args := []message.Arg{message.List("parts", names...), message.Address("part", set[first].name)}
	ways := [6]struct {
		way  piece.Direction
		axis int
		up   bool
	}{{piece.ToFront, 1, false}, {piece.ToUp, 2, true}, {piece.ToRight, 0, true}, {piece.ToLeft, 0, false}, {piece.ToBack, 1, true}, {piece.ToDown, 2, false}}
	for _, w := range ways {
		args = append(args, message.Address(string(w.way), j.blocker(set, ring, t, first, w.axis, w.up)))
	}
	f.Text = message.New(key, args...)
	f.Remedy = []diag.Remedy{{Text: message.New("assembly.shorten-or-open")}}
	j.out = append(j.out, f)
}

// blocker returns the first part of the others in the ring that is in a member's
// way along an axis, up or down it.
func (j *judge) blocker(set []member, ring []int, t table, i, axis int, up bool) address.Address {
	for _, k := range ring {
		from, to := i, k
		if !up {
			from, to = k, i
		}
		if k == i || !t.blocked[axis][from*t.n+to] {
			continue
		}
		for _, p := range set[k].parts {
			one := gather("", []int{p}, j.wood)
			a, b := &set[i], &one
			if !up {
				a, b = b, a
			}
			looks := 0
			if a.ahead(b, piece.Axis(axis), &looks) {
				return j.piece.Parts[p].Address
			}
		}
	}
	return ""
}
