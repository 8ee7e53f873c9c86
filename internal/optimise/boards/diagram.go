package boards

import (
	"cmp"
	"slices"

	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/sawing"
	"scantling/internal/unit"
)

// order is a way of sawing the pieces of a board one after the other.
type order int

const (
	longFirst  order = iota
	shortFirst       // keeps the piece at the saw long
	restFirst        // the rest of the board off first, then short pieces first
)

// piece is one thing to cut from a board.
type piece struct {
	w      int64
	source source
}

// tree lays the pieces of each segment in a row and cuts them off.
func (m *model) tree(t *stock, segs [][]piece, o order) *problem.Node {
	s := m.p.Stock[t.index]
	var kids []sawing.Kid
	for i, seg := range segs {
		seg = slices.Clone(seg)
		slices.SortStableFunc(seg, func(a, b piece) int {
			if o == longFirst {
				return cmp.Compare(b.w, a.w)
			}
			return cmp.Compare(a.w, b.w)
		})
		at := t.at[i]
		if o == restFirst {
			at += t.caps[i]
			for _, pc := range seg {
				at -= pc.w
			}
		}
		for _, pc := range seg {
			kids = append(kids, sawing.Kid{At: at, Block: m.block(pc)})
			at += pc.w
		}
	}
	usable := s.Usable(problem.Boards)
	f := sawing.Frame{
		Origin: problem.Point{Along: s.Trim.Start}, Scale: m.scale, Kerf: m.p.Kerf,
		Useful: m.p.Useful, Form: problem.Boards,
	}
	return f.Tree(&sawing.Block{Length: int64(usable.Length/m.scale) + m.kerf, Direction: problem.Crosscut, Kids: kids}, usable)
}

func (m *model) block(pc piece) *sawing.Block {
	if pc.source.sequence < 0 {
		return sawing.Part(pc.source.part, false, pc.w, 0)
	}
	row := &sawing.Block{Length: pc.w, Direction: problem.Crosscut}
	at := int64(0)
	for _, i := range m.p.Sequences[pc.source.sequence].Parts {
		w := int64(m.p.Parts[i].Length/m.scale) + m.kerf
		row.Kids = append(row.Kids, sawing.Kid{At: at, Block: sawing.Part(i, false, w, 0)})
		at += w
	}
	return row
}

// sawn returns the first order of sawing that feeds no piece that is too short.
func (m *model) sawn(t *stock, segs [][]piece) (*problem.Node, bool) {
	var root *problem.Node
	for _, o := range []order{longFirst, shortFirst, restFirst} {
		root = m.tree(t, segs, o)
		if sawing.Feeds(root, m.p.Feed, problem.Boards) {
			return root, true
		}
	}
	return root, false
}

// feedable takes the shortest pieces out of a pattern until it can be sawn, and
// returns nil if nothing is left.
func (m *model) feedable(p *cover.Pattern) *cover.Pattern {
	if m.p.Feed.Long == 0 {
		return p
	}
	for {
		if len(p.Use) == 0 {
			return nil
		}
		longest := p.Use[0].Kind
		if len(segments(p)) == 1 && !m.composite(longest) && unit.Length(m.kinds[longest].w-m.kerf)*m.scale >= m.p.Feed.Long {
			return p
		}
		segs := make([][]piece, len(segments(p)))
		for i, seg := range segments(p) {
			for _, e := range seg {
				for range e.N {
					segs[i] = append(segs[i], piece{m.kinds[e.Kind].w, m.kinds[e.Kind].sources[0]})
				}
			}
		}
		if _, ok := m.sawn(&m.stock[p.Stock], segs); ok {
			return p
		}
		p = without(p, p.Use[len(p.Use)-1].Kind)
	}
}

// composite says whether some piece of kind k is a sequence that is sawn on.
func (m *model) composite(k int) bool {
	return slices.ContainsFunc(m.kinds[k].sources, func(s source) bool { return s.sequence >= 0 })
}

// without returns p less one piece of kind k.
func without(p *cover.Pattern, k int) *cover.Pattern {
	segs := make([][]cover.Entry, len(segments(p)))
	done := false
	for i := range segments(p) {
		for _, e := range segments(p)[i] {
			if e.Kind == k && !done {
				done = true
				e.N--
			}
			if e.N > 0 {
				segs[i] = append(segs[i], e)
			}
		}
	}
	return newPattern(p.Stock, segs)
}

// diagrams hands the parts out to the patterns and builds their cuts.
func (m *model) diagrams(uses []cover.Use) []problem.Diagram {
	queues := make([][]source, len(m.kinds))
	for k := range m.kinds {
		queues[k] = slices.Clone(m.kinds[k].sources)
	}
	var out []problem.Diagram
	for _, u := range uses {
		for n := u.N; n > 0; {
			run := n
			for _, e := range u.Pattern.Use {
				run = min(run, queues[e.Kind][0].quantity/e.N)
			}
			run = max(run, 1)
			segs := m.deal(u.Pattern, queues, run)
			root, _ := m.sawn(&m.stock[u.Pattern.Stock], segs)
			out = append(out, problem.Diagram{Stock: m.stock[u.Pattern.Stock].index, Copies: run, Root: root})
			n -= run
		}
	}
	return out
}

// deal takes the pieces for run boards of pattern p off the queues.
func (m *model) deal(p *cover.Pattern, queues [][]source, run int) [][]piece {
	segs := make([][]piece, len(segments(p)))
	for i, seg := range segments(p) {
		for _, e := range seg {
			q := &queues[e.Kind]
			for range e.N {
				segs[i] = append(segs[i], piece{m.kinds[e.Kind].w, (*q)[0]})
				(*q)[0].quantity -= run
				if (*q)[0].quantity == 0 && len(*q) > 1 {
					*q = (*q)[1:]
				}
			}
		}
	}
	return segs
}
