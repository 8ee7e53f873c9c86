package rows

import (
	"cmp"
	"encoding/binary"
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Analysis declares the rows as an analysis.
var Analysis = analysis.Declare(analysis.Info{
	Name: "rows",
	Doc:  "Which stretches of wood and air add up along straight lines through the piece?",
	Kind: analysis.Derive,
}, func(c *analysis.Context) ([]plan.Row, diag.List) {
	return Derive(c.Piece, c.Cuts, c.Ledger)
})

// Derive returns the rows of a piece: of its spaces, of the groups that move in
// spaces, of its series; joints are the cuts that joints make. Where no line can
// be drawn there is no row, and a line with the same wood as an earlier one is not
// drawn again. Where the work exceeds [MaxLooks] the rest is left out, and a note
// says so.
func Derive(p *piece.Piece, joints []piece.Cut, l *ledger.Ledger) ([]plan.Row, diag.List) {
	l.Learn(Functions())
	m := newModel(p, joints, l)
	var out []plan.Row
	for i := range p.Spaces {
		if m.tired() {
			break
		}
		s := &p.Spaces[i]
		out = append(out, m.through(s.Address, "row.space", regionOf(s.Extent), false)...)
	}
	for i := range p.Groups {
		if g := &p.Groups[i]; g.Inside != "" && !m.tired() {
			if r, ok := m.around(g.Address); ok {
				out = append(out, m.through(g.Address, "row.group", r, true)...)
			}
		}
	}
	for i := range p.Series {
		if m.tired() {
			break
		}
		if row, ok := m.series(&p.Series[i]); ok {
			out = append(out, row)
		}
	}
	if m.tired() {
		return out, diag.List{{
			Severity: diag.Note, Code: CodeLeftOut,
			Text: message.New("row.left-out", message.Count("rows", len(out)), message.Count("limit", MaxLooks)),
		}}
	}
	return out, nil
}

// CodeLeftOut: so many parts and cuts lie in the way of lines that not all rows
// were worked out. It comes from pieces of many thousands of parts.
const CodeLeftOut diag.Code = "rows-left-out"

// MaxLooks bounds the work, counted in looks at boxes.
const MaxLooks = 500_000_000

// maxLooks is MaxLooks; tests make it smaller.
var maxLooks = MaxLooks

func (m *model) tired() bool { return *m.looks > maxLooks }

// around returns the box around all parts of a group.
func (m *model) around(group address.Address) (region, bool) {
	var r region
	found := false
	for _, b := range m.blocks {
		if !group.Has(b.part.Group) {
			continue
		}
		for a := range 3 {
			if !found || b.body.lo[a] < r.lo[a] {
				r.lo[a] = b.body.lo[a]
			}
			if !found || b.body.hi[a] > r.hi[a] {
				r.hi[a] = b.body.hi[a]
			}
		}
		found = true
	}
	return r, found
}

// places are where lines are tried, in parts of 32 of a region, the middle first.
var places = [...]unit.Length{16, 11, 21, 8, 24, 5, 27, 3, 29}

// through returns a row along each axis through a region. richest asks for the
// line with the most terms inside the region; otherwise the first that can be
// drawn is taken.
func (m *model) through(a address.Address, title string, r region, richest bool) []plan.Row {
	var out []plan.Row
	for _, axis := range [3]piece.Axis{piece.Right, piece.Back, piece.Up} {
		if !richest && m.inBand(axis, r) {
			continue
		}
		near := m.over(axis, r)
		lines := linesIn(axis, r)
		if richest {
			lines = near.inside(r).byTerms(lines, r)
		}
		for _, l := range lines {
			if wood, ok := near.wood(l); !ok || len(wood) == 0 {
				continue
			}
			m.bands[axis] = append(m.bands[axis], near.band(l, r))
			if m.fresh(l, near) {
				out = append(out, near.row(l, r, a, message.New(title, message.Address("of", a), message.Word("axis", axisKey(axis)))))
			}
			break
		}
	}
	return out
}

// linesIn returns the lines along an axis that are tried in a region, those near
// the middle first.
func linesIn(axis piece.Axis, r region) []line {
	l := line{axis: axis}
	x := l.across()
	var out []line
	for _, p := range places {
		for _, q := range places {
			l.at[x[0]] = r.lo[x[0]] + (r.hi[x[0]]-r.lo[x[0]])*p/32
			l.at[x[1]] = r.lo[x[1]] + (r.hi[x[1]]-r.lo[x[1]])*q/32
			out = append(out, l)
		}
	}
	return out
}

// inside returns the model of the parts that reach into a region: a line's terms
// within a drawer do not depend on the drawers below it.
func (m *model) inside(r region) *model {
	out := *m
	out.blocks = nil
	for _, b := range m.blocks {
		apart := false
		for a := range 3 {
			apart = apart || b.body.hi[a] <= r.lo[a] || b.body.lo[a] >= r.hi[a]
		}
		if !apart {
			out.blocks = append(out.blocks, b)
		}
	}
	return &out
}

// byTerms returns the lines that can be drawn, those with the most stretches of
// wood first, among equals those with the widest band, then in the order given.
func (m *model) byTerms(lines []line, r region) []line {
	type ranked struct {
		line  line
		terms int
		area  float64
	}
	var list []ranked
	for _, l := range lines {
		if wood, ok := m.wood(l); ok && len(wood) > 0 {
			list = append(list, ranked{l, len(wood), m.band(l, r).area()})
		}
	}
	slices.SortStableFunc(list, func(a, b ranked) int {
		return cmp.Or(cmp.Compare(b.terms, a.terms), cmp.Compare(b.area, a.area))
	})
	out := make([]line, len(list))
	for i, x := range list {
		out[i] = x.line
	}
	return out
}

// inBand reports whether the line through the middle of a region lies in the band
// of a row that has been drawn: it would be that row again.
func (m *model) inBand(axis piece.Axis, r region) bool {
	l := line{axis: axis}
	for _, f := range m.bands[axis] {
		inside := true
		for k, a := range l.across() {
			mid := r.lo[a] + (r.hi[a]-r.lo[a])/2
			inside = inside && mid > f.lo[k] && mid < f.hi[k]
		}
		if inside {
			return true
		}
	}
	return false
}

// fresh reports whether no row with the very same stretches of wood has been drawn
// before: three openings over each other have one row upwards.
func (m *model) fresh(l line, near *model) bool {
	wood, _ := near.wood(l)
	key := make([]byte, 0, 1+8*len(wood))
	key = append(key, byte(l.axis))
	for _, s := range wood {
		key = binary.LittleEndian.AppendUint32(key, uint32(s.b.index))
		key = binary.LittleEndian.AppendUint64(key, uint64(s.from))
		key = binary.LittleEndian.AppendUint64(key, uint64(s.to))
	}
	if m.drawn[string(key)] {
		return false
	}
	m.drawn[string(key)] = true
	return true
}

func axisKey(a piece.Axis) string { return [3]string{"axis.right", "axis.back", "axis.up"}[a] }

// axisName is the key of a row's address.
func axisName(a piece.Axis) string { return [3]string{"right", "back", "up"}[a] }

// series returns the row across the mouths of a series: just below the surface,
// where along the run all its cuts are met.
func (m *model) series(s *piece.Series) (plan.Row, bool) {
	var b *block
	for _, c := range m.blocks {
		if c.part.Address == s.Part {
			b = c
		}
	}
	if b == nil {
		return plan.Row{}, false
	}
	var own []placedAir
	for _, a := range b.airs {
		if a.cut.Series == s.Address && a.cut.Slot != nil && len(a.taken) > 0 {
			own = append(own, a)
		}
	}
	if len(own) == 0 {
		return plan.Row{}, false
	}
	slot := own[0].cut.Slot
	open, high := slot.Open.Axis()
	openAxis, sign := b.part.Frame.Directions()[open].Axis()
	runAxis, _ := b.part.Frame.Directions()[slot.Run].Axis()
	l := line{axis: 3 - openAxis - runAxis}
	// The last box of a cut lies at its mouth.
	layer := own[0].taken[len(own[0].taken)-1]
	from, to := layer.lo[runAxis], layer.hi[runAxis]
	thin := layer.hi[openAxis] - layer.lo[openAxis]
	for _, a := range own {
		t := a.taken[len(a.taken)-1]
		thin = min(thin, t.hi[openAxis]-t.lo[openAxis])
		from, to = max(from, t.lo[runAxis]), min(to, t.hi[runAxis])
	}
	l.at[openAxis] = b.body.lo[openAxis] + thin/2
	if high == (sign > 0) {
		l.at[openAxis] = b.body.hi[openAxis] - thin/2
	}
	near := m.over(l.axis, b.body)
	for _, at := range stations(b, runAxis, from, to) {
		l.at[runAxis] = at
		wood, ok := near.wood(l)
		if ok && meetsAll(wood, own) && m.fresh(l, near) {
			return near.row(l, b.body, s.Address, message.New("row.series", message.Address("of", s.Address))), true
		}
	}
	return plan.Row{}, false
}

// stations returns the middles of the stretches between all limits of cuts along
// an axis, the longest first.
func stations(b *block, a piece.Axis, from, to unit.Length) []unit.Length {
	at := []unit.Length{from, to}
	for _, c := range b.airs {
		for _, t := range c.taken {
			for _, x := range [2]unit.Length{t.lo[a], t.hi[a]} {
				if x > from && x < to {
					at = append(at, x)
				}
			}
		}
	}
	slices.Sort(at)
	at = slices.Compact(at)
	type gap struct{ from, to unit.Length }
	var gaps []gap
	for i := 1; i < len(at); i++ {
		gaps = append(gaps, gap{at[i-1], at[i]})
	}
	slices.SortStableFunc(gaps, func(x, y gap) int { return cmp.Compare(y.to-y.from, x.to-x.from) })
	out := make([]unit.Length, len(gaps))
	for i, g := range gaps {
		out[i] = g.from + (g.to-g.from)/2
	}
	return out
}

// meetsAll reports whether the line passes from wood into every cut.
func meetsAll(wood []stretch, own []placedAir) bool {
	met := map[*piece.Cut]bool{}
	for _, s := range wood {
		met[s.before], met[s.behind] = true, true
	}
	for _, a := range own {
		if !met[a.cut] {
			return false
		}
	}
	return true
}
