package collision

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/geom/solid"
	"scantling/internal/joinery"
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

// MaxLooks bounds the work, counted in looks at two boxes at once.
const MaxLooks = 200_000_000

// Analysis declares the check.
var Analysis analysis.Check = analysis.Declare(analysis.Info{
	Name: "collision",
	Doc:  "Do any two finished parts claim the same wood?",
	Kind: analysis.Judge, Solids: true, Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	return Judge(c.Piece, c.Shapes(), marks.Analysis.Get(c), c.Ledger), nil
})

// judge gathers findings.
type judge struct {
	joints map[[2]address.Address]address.Address
	marks  map[address.Address]string
	told   map[int]bool // parts that have been told of as unverified
	fouled map[[2]address.Address]bool
	ledger *ledger.Ledger
	shapes *shape.Shapes
	out    []plan.Finding
}

// Judge returns the findings for the parts of a piece.
func Judge(p *piece.Piece, shapes *shape.Shapes, rows []plan.PartRow, l *ledger.Ledger) []plan.Finding {
	j := judge{
		joints: map[[2]address.Address]address.Address{}, marks: map[address.Address]string{},
		told: map[int]bool{}, fouled: map[[2]address.Address]bool{}, ledger: l, shapes: shapes,
	}
	for _, r := range rows {
		for _, a := range r.Members {
			j.marks[a] = r.Mark
		}
	}
	for _, x := range p.Joints {
		j.joints[pair(x.A, x.B)] = x.Address
	}
	m := measuredOf(p, l)
	looks := 0
	pairs := near(p, &looks)
	wood := make([][]shape.Box, len(p.Parts))
	for _, ij := range pairs {
		for _, i := range ij {
			if wood[i] == nil {
				wood[i], _ = shape.Boxes(&p.Parts[i], shapes.CutsOf(p.Parts[i].Address), false)
			}
		}
		if looks += len(wood[ij[0]]) * len(wood[ij[1]]); looks > MaxLooks {
			break
		}
		if share(wood[ij[0]], wood[ij[1]]) && !m.clears(&p.Parts[ij[0]], &p.Parts[ij[1]]) {
			j.look(ij[0], ij[1])
		}
	}
	j.fittings(p, &looks)
	if looks > MaxLooks {
		j.out = append(j.out, plan.Finding{
			Check: "collision", Status: plan.Unknown, Severity: diag.Warning, Code: Unjudged,
			Text: message.New("collision.too-much-work", message.Count("parts", len(p.Parts)), message.Count("limit", MaxLooks)),
		})
	}
	if len(j.out) == 0 && len(p.Parts) > 1 {
		j.out = append(j.out, plan.Finding{
			Check: "collision", Status: plan.Pass, Severity: diag.Note, Code: Clear,
			Text: message.New("collision.clear", message.Count("parts", len(p.Parts)), message.Count("pairs", len(pairs))),
		})
	}
	return j.out
}

// near returns the pairs of parts whose uncut bodies overlap, in order: sort and
// sweep from left to right. It stops where it has looked more than MaxLooks times.
func near(p *piece.Piece, looks *int) [][2]int {
	order := make([]int, len(p.Parts))
	stands := make([][3]piece.Extent, len(p.Parts))
	for i := range order {
		order[i], stands[i] = i, joinery.Stands(&p.Parts[i])
	}
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Compare(stands[i][0].Low.Nm, stands[j][0].Low.Nm)
	})
	var out [][2]int
	for n, i := range order {
		a := &stands[i]
		for _, k := range order[n+1:] {
			b := &stands[k]
			if b[0].Low.Nm >= a[0].High.Nm {
				break
			}
			if *looks++; *looks > MaxLooks {
				return nil
			}
			if a[1].Low.Nm < b[1].High.Nm && b[1].Low.Nm < a[1].High.Nm && a[2].Low.Nm < b[2].High.Nm && b[2].Low.Nm < a[2].High.Nm {
				out = append(out, [2]int{min(i, k), max(i, k)})
			}
		}
	}
	slices.SortFunc(out, func(a, b [2]int) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	return out
}

// share reports whether any two boxes share a volume.
func share(a, b []shape.Box) bool {
	for _, x := range a {
		for _, y := range b {
			if x.Overlaps(y) {
				return true
			}
		}
	}
	return false
}

func pair(a, b address.Address) [2]address.Address {
	if a > b {
		a, b = b, a
	}
	return [2]address.Address{a, b}
}

// look judges one pair by its solids.
func (j *judge) look(i, k int) {
	a, b := j.shapes.At(i), j.shapes.At(k)
	bad := false
	for n, s := range [2]*shape.Shape{a, b} {
		ok, why := s.Verified()
		if part := [2]int{i, k}[n]; !ok && !j.told[part] {
			j.told[part] = true
			j.unknown(s, nil, why)
		}
		bad = bad || !ok
	}
	if bad {
		return
	}
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
