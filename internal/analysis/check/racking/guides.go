package racking

import (
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// strips reports whether strips of wood guide a drawer at both sides. The walls of its
// case and the dividers beside it are no strips: they are there for any drawer. Common
// practice, no source: a strip is at most half as high as the drawer, goes along at least
// half of its length, and leaves it no more from side to side than its fit does.
func strips(p *piece.Piece, m bodies.Move) bool {
	if m.Fit == nil {
		return false
	}
	long, high := span(m.Extent[piece.Back]), span(m.Extent[piece.Up])
	drawer := beside(m)
	left, right := unit.Length(0), unit.Length(0)
	found := [2]bool{}
	for i := range p.Parts {
		part := &p.Parts[i]
		e := part.Extent
		along, up := span(e[piece.Back]), span(e[piece.Up])
		if m.Has(part.Address) || 2*up.Size() > high.Size() || up.Common(high) != up || 2*along.Common(long).Size() < long.Size() {
			continue
		}
		switch across := span(e[piece.Right]); {
		case across.High <= drawer.Low && (!found[0] || across.High > left):
			left, found[0] = across.High, true
		case across.Low >= drawer.High && (!found[1] || across.Low < right):
			right, found[1] = across.Low, true
		}
	}
	return found[0] && found[1] && (right-left)-drawer.Size() <= m.Fit.Sides.Nm
}

// beside is what the drawer takes from side to side behind its fronts.
func beside(m bodies.Move) bodies.Span {
	var out bodies.Span
	found := false
	fronts := m.Fronts()
	for _, p := range m.Parts {
		isFront := false
		for _, f := range fronts {
			isFront = isFront || f == p
		}
		if isFront && len(fronts) < len(m.Parts) {
			continue
		}
		s := span(p.Extent[piece.Right])
		if !found {
			out, found = s, true
		}
		out.Low, out.High = min(out.Low, s.Low), max(out.High, s.High)
	}
	return out
}

func span(e piece.Extent) bodies.Span { return bodies.Span{Low: e.Low.Nm, High: e.High.Nm} }
