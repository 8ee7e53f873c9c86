package sheets

import (
	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/coarse"
	"scantling/internal/optimise/cover"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/sawing"
)

// parcels is the filling of a sheet with parcels.
type parcels struct {
	m    *model
	root *ceiling.Parcel
}

// parcelled returns the pattern of a filling with parcels in true sizes, or nil if
// it is empty, does not fit or cannot be sawn.
func (m *model) parcelled(stock int, root *ceiling.Parcel) *cover.Pattern {
	if m.exact != m {
		t := &m.exact.stock[stock]
		root, m = coarse.True(m.truly).Parcel(root, t.x, t.y), m.exact
	}
	p := m.newParcels(stock, root)
	if len(p.Use) == 0 {
		return nil
	}
	return m.feedable(p)
}

func (m *model) newParcels(stock int, root *ceiling.Parcel) *cover.Pattern {
	var entries []cover.Entry
	root.Walk(func(p *ceiling.Parcel) {
		if p.Piece != nil {
			entries = append(entries, cover.Entry{Kind: p.Piece.Kind, N: 1})
		}
	})
	return cover.NewPattern(stock, entries, &parcels{m, root})
}

func (f *parcels) block(_ int, pick picks, _ way) *sawing.Block {
	return f.m.parcelBlock(f.root, pick)
}

func (m *model) parcelBlock(p *ceiling.Parcel, pick picks) *sawing.Block {
	if p == nil {
		return nil
	}
	if p.Cut == problem.Any {
		if p.Piece == nil {
			return nil
		}
		src := pick(p.Piece.Kind)
		return m.within(m.part(src.part, m.turned(src.part, p.Piece.X, p.Piece.Y), p.Piece.X, p.Piece.Y), p.X, p.Y)
	}
	var kids []sawing.Kid
	if b := m.parcelBlock(p.Parts[0], pick); b != nil {
		kids = append(kids, sawing.Kid{At: 0, Block: b})
	}
	if b := m.parcelBlock(p.Parts[1], pick); b != nil {
		kids = append(kids, sawing.Kid{At: p.At, Block: b})
	}
	if kids == nil {
		return nil
	}
	return m.sized(p.X, p.Y, p.Cut, kids)
}

// without leaves out the piece that is worth least.
func (f *parcels) without(stock int) *cover.Pattern {
	var worst *ceiling.Parcel
	f.root.Walk(func(p *ceiling.Parcel) {
		if p.Piece != nil && (worst == nil || f.m.kinds[p.Piece.Kind].value < f.m.kinds[worst.Piece.Kind].value) {
			worst = p
		}
	})
	if worst == nil {
		return nil
	}
	root := f.root.Less(worst)
	if root == nil {
		return nil
	}
	return f.m.newParcels(stock, root)
}
