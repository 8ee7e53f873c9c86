package typeset

import (
	"strconv"
	"strings"

	"scantling/internal/page"
)

// Where head and foot stand: clear of the text, in millimetres.
const (
	headClear = 7   // baseline of the head above the text
	ruleClear = 5   // rule of the head above the text
	footRule  = 4   // rule of the foot below the text
	footClear = 5   // top of the foot below the text
	leastEdge = 10  // margin below which there is no head or foot
	smallEdge = 0.8 // size of both in body text
)

// running sets head and foot of every page, as artifacts.
func (f *filler) running() {
	s := f.settings
	parts := f.parts()
	for i := range f.doc.Pages {
		p := &f.doc.Pages[i]
		say := strings.NewReplacer("{page}", strconv.Itoa(i+1), "{pages}", strconv.Itoa(len(f.doc.Pages)), "{part}", parts[i])
		if top := s.Margins.Top; i >= s.Running.Skip && top >= leastEdge {
			f.edge(p, say.Replace(s.Running.HeadLeft), say.Replace(s.Running.HeadRight), top-headClear, top-ruleClear)
		}
		if s.Margins.Bottom >= leastEdge {
			bottom := p.Size.Height - s.Margins.Bottom
			f.edge(p, say.Replace(s.Running.FootLeft), say.Replace(s.Running.FootRight), bottom+footClear+float64(s.Size*smallEdge), bottom+footRule)
		}
	}
}

// parts returns, for each page, the heading of level 1 under which it begins; on
// the first pages the first that comes.
func (f *filler) parts() []string {
	parts := make([]string, len(f.doc.Pages))
	atTop := f.settings.Margins.Top + 5
	part, next := "", 0
	for i := range parts {
		for next < len(f.doc.Outline) {
			h := f.doc.Outline[next]
			if begins := h.Page < i || h.Page == i && h.Y <= atTop; !begins && (part != "" || h.Page > i) {
				break
			}
			if h.Level == 1 {
				part = h.Title
			}
			next++
		}
		parts[i] = part
	}
	return parts
}

// edge sets one line at the head or foot with its rule.
func (f *filler) edge(p *page.Page, left, right string, y, rule float64) {
	if left == "" && right == "" {
		return
	}
	inside := f.settings.Margins.Inside(f.settings.Page())
	st := style{size: float64(f.settings.Size * smallEdge), colour: page.InkSoft}
	right = clip(right, st, inside.Width()/2)
	left = clip(left, st, inside.Width()-page.TextWidth(st.weight, st.size, right)-6)
	for _, t := range []page.Text{
		{At: page.Point{X: inside.Min.X, Y: y}, String: left},
		{At: page.Point{X: inside.Max.X, Y: y}, String: right, Align: page.End},
	} {
		if t.String != "" {
			t.Size, t.Colour = st.size, st.colour
			p.Add("", page.Artifact, t)
		}
	}
	p.Add("", page.Artifact, page.Stroke{
		Path:  page.Line(page.Point{X: inside.Min.X, Y: rule}, page.Point{X: inside.Max.X, Y: rule}),
		Width: page.W018, Colour: page.Rule,
	})
}

// clip shortens text to a width.
func clip(text string, st style, width float64) string {
	if page.TextWidth(st.weight, st.size, text) <= width {
		return text
	}
	r := []rune(text)
	low, high := 0, len(r)
	for low < high {
		mid := (low + high + 1) / 2
		if page.TextWidth(st.weight, st.size, string(r[:mid])+"…") <= width {
			low = mid
		} else {
			high = mid - 1
		}
	}
	if low == 0 {
		return ""
	}
	return string(r[:low]) + "…"
}
