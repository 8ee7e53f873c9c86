package rows

import (
	"cmp"
	_ "embed" // the help
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/analysis/check/reach"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/analysis/marks"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Codes of the findings.
const (
	// CodeOpen: a row of equal spaces leaves another one at its end.
	//
	// Example: three dividers 80 apart, and 79.5 behind the last.
	CodeOpen diag.Code = "row-does-not-close"
	// CodeUnjudged: too many rows beside too many parts.
	//
	// Example: 2 000 repeats among 20 000 parts.
	CodeUnjudged diag.Code = "rows-not-judged"
	// CodeCloses: all rows close.
	//
	// Example: three dividers 80 apart, 300 between the walls.
	CodeCloses diag.Code = "rows-close"
)

// rule is the house's own difference that closes.
const rule = "row closes"

var usual = verdict.Practice("check.row-closes", unit.Millimetre/10)

// equal is how far spaces differ that are stated alike: what rounding leaves.
const equal = unit.Micrometre

// MaxLooks bounds the work, counted in looks at a part.
const MaxLooks = 20_000_000

//go:embed doc.go
var source string

// Analysis is the check.
var Analysis = analysis.Declare(analysis.Info{
	Name: "row sums", Kind: analysis.Judge, Doc: verdict.Help(source), Requires: []analysis.Analysis{marks.Analysis},
}, func(c *analysis.Context) ([]plan.Finding, diag.List) {
	j := judge{Context: c, index: bodies.Of(c), out: verdict.Of("row sums", c)}
	j.closes = j.out.Limit(rule, usual)
	families := j.families()
	if looks := len(families) * len(c.Piece.Parts); looks > MaxLooks {
		j.out.Unknown(CodeUnjudged, message.New("check.rows.too-many", message.Count("rows", len(families)), message.Count("parts", len(c.Piece.Parts))), "", diag.Place{})
	} else {
		for _, f := range families {
			for _, a := range [3]piece.Axis{piece.Right, piece.Back, piece.Up} {
				j.row(f, a)
			}
		}
	}
	return j.out.Done(CodeCloses, message.New("check.rows.close")), nil
})

type judge struct {
	*analysis.Context
	index  *bodies.Index
	out    *verdict.Findings
	closes verdict.Limit
}

// families lists the parts that one block of the document repeats, in order.
func (j *judge) families() [][]*piece.Part {
	at := map[address.Address]int{}
	var out [][]*piece.Part
	for i := range j.Piece.Parts {
		p := &j.Piece.Parts[i]
		last := p.Address.Last()
		if last.Index == 0 || p.Tilt != nil {
			continue
		}
		family := p.Address.Parent().Child(last.Name)
		n, ok := at[family]
		if !ok {
			n = len(out)
			at[family], out = n, append(out, nil)
		}
		out[n] = append(out[n], p)
	}
	return slices.DeleteFunc(out, func(f []*piece.Part) bool { return len(f) < 2 })
}

// wall is where a row begins or ends.
type wall struct {
	at   piece.Figure
	part address.Address
}

// row judges a family along an axis, if it stands in one line between two walls.
func (j *judge) row(family []*piece.Part, a piece.Axis) {
	row := slices.Clone(family)
	slices.SortStableFunc(row, func(p, q *piece.Part) int { return cmp.Compare(p.Extent[a].Low.Nm, q.Extent[a].Low.Nm) })
	gap := row[1].Extent[a].Low.Nm - row[0].Extent[a].High.Nm
	if gap <= 0 {
		return
	}
	first := bodies.Body(row[0])
	for i, p := range row[1:] {
		b := bodies.Body(p)
		between := p.Extent[a].Low.Nm - row[i].Extent[a].High.Nm
		if between < gap-equal || between > gap+equal || b[(a+1)%3] != first[(a+1)%3] || b[(a+2)%3] != first[(a+2)%3] {
			return
		}
	}
	low, high, ok := j.walls(row, a)
	if !ok {
		return
	}
	j.out.Judged()
	name := string(row[0].Address) + ".row"
	ends := [2]piece.Figure{j.Ledger.Less(name+".first", row[0].Extent[a].Low, low.at), j.Ledger.Less(name+".last", high.at, row[len(row)-1].Extent[a].High)}
	off := [2]unit.Length{away(ends[0].Nm - gap), away(ends[1].Nm - gap)}
	end := 1
	if off[1] < off[0] {
		end = 0
	}
	if off[1-end] > equal || off[end] <= j.closes.Nm || off[end] > gap/10 {
		return
	}
	j.told(row, a, ends[end], [2]wall{low, high}, end)
}

func away(l unit.Length) unit.Length { return max(l, -l) }

// told tells of a row with its sum: all parts and spaces as they are stated, against the
// room.
func (j *judge) told(row []*piece.Part, a piece.Axis, odd piece.Figure, walls [2]wall, end int) {
	name := string(row[0].Address) + ".row"
	space := j.Ledger.Less(name+".space", row[1].Extent[a].Low, row[0].Extent[a].High)
	var wood []piece.Figure
	var marks []address.Address
	for _, p := range row {
		local, _ := p.Frame.LocalOf(a)
		wood, marks = append(wood, p.Sizes()[local]), append(marks, p.Address)
	}
	spaces := j.Ledger.Times(name+".spaces", space, int64(len(row)+1), 1)
	parts := j.Ledger.Sum(name+".parts", wood...)
	sum := j.Ledger.Sum(name+".sum", parts, spaces)
	room := j.Ledger.Less(name+".room", walls[1].at, walls[0].at)
	key, which := "check.rows.short", "rows.first"
	if sum.Nm < room.Nm {
		key = "check.rows.spare"
	}
	if end == 1 {
		which = "rows.last"
	}
	x := plan.Finding{Status: plan.Fail, Severity: diag.Warning, Code: CodeOpen, Address: row[0].Address, Where: row[0].Where, Is: &sum, Limit: &room, Source: j.closes.Source, Rule: rule,
		Text: message.New(key, message.Text("mark", j.out.Mark(row[0].Address)), message.Count("count", len(row)), message.Length("parts", parts.Nm), message.Count("spaces", len(row)+1),
			message.Length("space", space.Nm), message.Length("sum", sum.Nm), message.Length("room", room.Nm), message.Length("off", away(sum.Nm-room.Nm)),
			message.Word("which", which), message.Length("odd", odd.Nm))}
	x.Remedy = []diag.Remedy{reach.Rewrite(j.Context, message.New("check.rows.close-it", message.Length("to", sum.Nm)), room, sum.Nm, unit.Nearest)}
	j.out.Add(x, marks...)
}

// walls returns where a row begins and ends: the bounds of a measured space that it
// stands in, or the nearest parts on both sides.
func (j *judge) walls(row []*piece.Part, a piece.Axis) (low, high wall, ok bool) {
	first, last := bodies.Body(row[0]), bodies.Body(row[len(row)-1])
	for i := range j.Piece.Spaces {
		s := &j.Piece.Spaces[i]
		e, _ := j.Ledger.Entry(s.Clear[a].Entry)
		b := bodies.BoxOf(s.Extent)
		if (e.Origin == ledger.Measured || e.Origin == ledger.FromMeasured) && b.Overlaps(first) && b.Overlaps(last) && b[a].Low < first[a].Low && last[a].High < b[a].High {
			return wall{at: s.Extent[a].Low}, wall{at: s.Extent[a].High}, true
		}
	}
	foundLow, foundHigh := false, false
	for i := range j.Piece.Parts {
		p := &j.Piece.Parts[i]
		b := bodies.Body(p)
		if p.Tilt != nil || !b[(a+1)%3].Overlaps(first[(a+1)%3]) || !b[(a+2)%3].Overlaps(first[(a+2)%3]) {
			continue
		}
		switch {
		case b[a].High <= first[a].Low && (!foundLow || b[a].High > low.at.Nm):
			low, foundLow = wall{p.Extent[a].High, p.Address}, true
		case b[a].Low >= last[a].High && (!foundHigh || b[a].Low < high.at.Nm):
			high, foundHigh = wall{p.Extent[a].Low, p.Address}, true
		}
	}
	return low, high, foundLow && foundHigh
}
