package assembly

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/apart"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
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

// Analysis declares the check.
var Analysis analysis.Check = analysis.Declare(analysis.Info{
	Name: "assembly",
	Doc:  "Can the piece be put together, group by group, by straight slides?",
	Kind: analysis.Judge, Requires: []analysis.Analysis{apart.Analysis, marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	return Judge(c.Piece, apart.Analysis.Get(c), marks.Analysis.Get(c)), nil
})

// Judge returns the findings for a piece and how it comes apart.
func Judge(p *piece.Piece, t apart.Taken, rows []plan.PartRow) []plan.Finding {
	j := judge{piece: p, marks: map[address.Address]string{}}
	for _, r := range rows {
		for _, a := range r.Members {
			j.marks[a] = r.Mark
		}
	}
	for i := range t.Groups {
		j.group(&t.Groups[i])
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
	marks map[address.Address]string
	out   []plan.Finding
}

// group judges what is put together in one group.
func (j *judge) group(g *apart.Group) {
	unknown := plan.Finding{Check: "assembly", Status: plan.Unknown, Severity: diag.Warning, Code: Unjudged, Address: g.Address}
	switch parts := message.Count("parts", g.Members); {
	case g.TooMany:
		unknown.Text = message.New("assembly.too-many", parts, message.Count("limit", apart.MaxMembers))
		j.out = append(j.out, unknown)
		return
	case g.TooMuch:
		unknown.Text = message.New("assembly.too-much-work", parts, message.Count("limit", apart.MaxLooks))
		j.out = append(j.out, unknown)
		return
	}
	told := map[int]bool{}
	for i := range g.Locked {
		j.report(&g.Locked[i])
		for _, m := range g.Locked[i].Members {
			for _, p := range m.Parts {
				told[p] = true
			}
		}
	}
	for _, u := range g.Unsure {
		if told[u.Part] {
			continue
		}
		part := &j.piece.Parts[u.Part]
		f := unknown
		f.Address, f.Where = part.Address, part.Where
		f.Text = message.New("assembly.unverified", message.Address("part", part.Address), message.Text("why", u.Why))
		if m := j.marks[part.Address]; m != "" {
			f.Marks = []string{m}
		}
		j.out = append(j.out, f)
	}
}

// report tells of members that lock each other.
func (j *judge) report(ring *apart.Ring) {
	f := plan.Finding{Check: "assembly", Status: plan.Fail, Severity: diag.Error, Code: Locked}
	key := "assembly.locked"
	if !ring.Sure {
		f.Status, f.Severity, f.Code = plan.Unknown, diag.Warning, Unjudged
		key = "assembly.perhaps-locked"
	}
	var names []message.Arg
	for _, m := range ring.Members {
		names = append(names, message.Address("", m.Name))
		if mark := j.marks[m.Name]; mark != "" && !slices.Contains(f.Marks, mark) {
			f.Marks = append(f.Marks, mark)
		}
	}
	first := ring.Members[0]
	f.Address, f.Where = first.Name, j.piece.Parts[first.Parts[0]].Where
	args := []message.Arg{message.List("parts", names...), message.Address("part", first.Name)}
	for _, way := range []piece.Direction{piece.ToFront, piece.ToUp, piece.ToRight, piece.ToLeft, piece.ToBack, piece.ToDown} {
		args = append(args, message.Address(string(way), ring.Blocks[way]))
	}
	f.Text = message.New(key, args...)
	f.Remedy = []diag.Remedy{{Text: message.New("assembly.shorten-or-open")}}
	j.out = append(j.out, f)
}
