package collision

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/geom/solid"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/shape"
	"scantling/internal/unit"
)

// Codes of the check's findings.
const (
	// Overlap: two finished parts share wood.
	Overlap diag.Code = "parts-collide"
	// Unjudged: a part or a pair could not be looked at.
	Unjudged diag.Code = "collision-unknown"
	// Clear: no two parts share wood.
	Clear diag.Code = "parts-clear"
)

// Limit is the depth from which parts collide. It is the kernel's own measure of
// a touch, half a micrometre, twice: far below what can be cut.
const Limit = unit.Micrometre

// Check declares the check.
var Check analysis.Check = analysis.Declare(analysis.Info{
	Name: "collision",
	Doc:  "Do any two finished parts claim the same wood?",
	Kind: analysis.Judge, Solids: true, Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	shapes := c.Shapes().Solve(max(1, c.Workers))
	return Judge(c.Piece, shapes, marks.Analysis.Get(c), c.Ledger), nil
})

// judge gathers findings.
type judge struct {
	joints map[[2]address.Address]address.Address
	marks  map[address.Address]string
	ledger *ledger.Ledger
	out    []plan.Finding
}

// Judge returns the findings for the shapes of a piece's parts.
func Judge(p *piece.Piece, shapes []*shape.Shape, rows []plan.PartRow, l *ledger.Ledger) []plan.Finding {
	j := judge{joints: map[[2]address.Address]address.Address{}, marks: map[address.Address]string{}, ledger: l}
	for _, r := range rows {
		for _, a := range r.Members {
			j.marks[a] = r.Mark
		}
	}
	for _, x := range p.Joints {
		j.joints[pair(x.A, x.B)] = x.Address
	}
	var good []*shape.Shape
	var placed []solid.Placed
	for _, s := range shapes {
		if ok, why := s.Verified(); !ok {
			j.unknown(s, nil, why)
			continue
		}
		good, placed = append(good, s), append(placed, s.Placed())
	}
	pairs := solid.Pairs(placed, 0)
	for _, ij := range pairs {
		j.look(good[ij[0]], good[ij[1]])
	}
	if len(j.out) == 0 && len(good) > 1 {
		j.out = append(j.out, plan.Finding{
			Check: "collision", Status: plan.Pass, Severity: diag.Note, Code: Clear,
			Text: message.New("collision.clear", message.Count("parts", len(good)), message.Count("pairs", len(pairs))),
		})
	}
	return j.out
}

func pair(a, b address.Address) [2]address.Address {
	if a > b {
		a, b = b, a
	}
	return [2]address.Address{a, b}
}

// look judges one pair.
func (j *judge) look(a, b *shape.Shape) {
	o := solid.Interference(a.Placed(), b.Placed())
	if o.Status != solid.Verified {
		j.unknown(a, b, o.Reason)
		return
	}
	depth := min(unit.FromMillimetres(o.Depth), boxes(a.Placed(), b.Placed()))
	if depth < Limit || o.Volume <= 0 {
		return
	}
	pa, pb := a.Part, b.Part
	is := j.ledger.Leaf(string(pa.Address)+".in."+string(pb.Address), depth, ledger.Derived, "collision.source")
	limit := j.ledger.Leaf("collision.limit", 0, ledger.Derived, "")
	args := []message.Arg{message.Address("a", pa.Address), message.Address("b", pb.Address), message.Length("depth", depth)}
	f := plan.Finding{
		Check: "collision", Status: plan.Fail, Severity: diag.Error, Code: Overlap,
		Address: pa.Address, Marks: j.marksOf(pa.Address, pb.Address), Is: &is, Limit: &limit, Where: pa.Where,
	}
	if joint, ok := j.joints[pair(pa.Address, pb.Address)]; ok {
		f.Text = message.New("collision.in-joint", append(args, message.Address("joint", joint))...)
		f.Remedy = []diag.Remedy{{Text: message.New("collision.say-which-goes-over")}}
	} else {
		f.Text = message.New("collision.no-joint", args...)
		f.Remedy = []diag.Remedy{{Text: message.New("collision.add-a-joint")}, {Text: message.New("collision.move-apart", message.LengthRounded("by", depth, unit.Up))}}
	}
	j.out = append(j.out, f)
}

// boxes returns how far the boxes round two placed solids are in each other: the
// solids themselves cannot be deeper.
func boxes(a, b solid.Placed) unit.Length {
	loA, hiA := a.Bounds()
	loB, hiB := b.Bounds()
	least := unit.MaxLength
	for axis := range 3 {
		d := min(hiA.At(axis), hiB.At(axis)) - max(loA.At(axis), loB.At(axis))
		least = min(least, unit.FromMillimetres(d))
	}
	return least
}

// unknown says that a part, or a pair, could not be judged, and why.
func (j *judge) unknown(a, b *shape.Shape, why string) {
	f := plan.Finding{
		Check: "collision", Status: plan.Unknown, Severity: diag.Warning, Code: Unjudged,
		Address: a.Part.Address, Marks: j.marksOf(a.Part.Address), Where: a.Part.Where,
		Text: message.New("collision.unverified", message.Address("part", a.Part.Address), message.Text("why", why)),
	}
	if b != nil {
		f.Marks = j.marksOf(a.Part.Address, b.Part.Address)
		f.Text = message.New("collision.pair-unverified", message.Address("a", a.Part.Address), message.Address("b", b.Part.Address), message.Text("why", why))
	}
	j.out = append(j.out, f)
}

func (j *judge) marksOf(parts ...address.Address) []string {
	var out []string
	for _, a := range parts {
		if m := j.marks[a]; m != "" && !slices.Contains(out, m) {
			out = append(out, m)
		}
	}
	return out
}
