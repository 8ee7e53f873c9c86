package typeset

import (
	"scantling/internal/font"
	"scantling/internal/page"
)

// Settings say on what and how to set.
type Settings struct {
	Title    string
	Language string // BCP 47, "en-GB"
	Paper    page.Paper
	// Turned lays the paper on its side.
	Turned  bool
	Margins page.Margins
	// Size is the em of body text in millimetres; 0 is 10.5 points.
	Size float64
	// Columns is 1 or 2; Gutter is the space between two, 0 being 8 mm.
	Columns int
	Gutter  float64
	// Running stands at the head and foot of every page.
	Running Running
}

// Running is what stands at the head and foot of every page. "{page}" and
// "{pages}" become the numbers, "{part}" the heading of level 1
// under which the page begins.
type Running struct {
	HeadLeft, HeadRight, FootLeft, FootRight string
	// Skip leaves out the head on that many first pages (a cover).
	Skip int
}

// Default returns settings for a booklet on the given paper: margins of 18 mm,
// 20 at the head and foot, one column.
func Default(p page.Paper) Settings {
	return Settings{
		Paper: p, Language: "en-GB", Columns: 1,
		Margins: page.Margins{Left: 18, Top: 20, Right: 18, Bottom: 20},
	}
}

// Least sizes: smaller ones are raised, so that bad settings still set something.
const (
	leastSize   = 1.5 // em of body text
	mostSize    = 20
	leastColumn = 25 // width and height of the area for text
)

func (s Settings) repaired() Settings {
	if !(s.Size >= leastSize) {
		if s.Size > 0 {
			s.Size = leastSize
		} else {
			s.Size = page.Pt(10.5)
		}
	}
	s.Size = min(s.Size, mostSize)
	if !(s.Gutter > 0 && s.Gutter < 40) {
		s.Gutter = 8
	}
	if s.Columns != 2 {
		s.Columns = 1
	}
	for _, m := range []*float64{&s.Margins.Left, &s.Margins.Top, &s.Margins.Right, &s.Margins.Bottom} {
		if !(*m >= 0 && *m < 80) {
			*m = 18
		}
	}
	return s
}

// Page returns the size of a page.
func (s Settings) Page() page.Size {
	if s.Turned {
		return s.Paper.Size().Turned()
	}
	return s.Paper.Size()
}

// Column returns the width and height that a figure may take at most: those of
// a column, less what a caption of two lines needs.
func (s Settings) Column() page.Size {
	s = s.repaired()
	width, height := s.column()
	return page.Size{Width: width, Height: height - float64(2*leading*s.Size) - captionGap}
}

func (s Settings) column() (width, height float64) {
	inside := s.Margins.Inside(s.Page())
	width = inside.Width()
	if s.Columns == 2 {
		width = (width - s.Gutter) / 2
	}
	return max(width, leastColumn), max(inside.Height(), leastColumn)
}

// leading is the distance of baselines in em.
const leading = 1.36

// captionGap is the space between a figure and its caption.
const captionGap = 2

// style is how a stretch of text looks and what it belongs to.
type style struct {
	weight  font.Weight
	size    float64
	colour  page.Colour
	link    string
	address string
	node    page.NodeID
}

func (s Settings) manner(m Manner) style {
	st := style{size: s.Size}
	switch m {
	case Small:
		st.size = s.Size * 0.86
	case Lead:
		st.size = s.Size * 1.3
	}
	return st
}

func (s Settings) heading(level int) (st style, before, after float64) {
	st = style{weight: font.Bold}
	switch level {
	case 1:
		st.size = s.Size * 2.0
		return st, s.Size * 2.4, s.Size * 0.7
	case 2:
		st.size = s.Size * 1.4
		return st, s.Size * 1.9, s.Size * 0.4
	}
	st.size = s.Size * 1.1
	return st, s.Size * 1.3, s.Size * 0.2
}
