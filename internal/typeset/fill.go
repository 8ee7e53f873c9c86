package typeset

import (
	"scantling/internal/page"
)

// MaxPages bounds a document; what is beyond is left out and noted.
const MaxPages = 2000

// Set sets the blocks on pages.
func Set(s Settings, blocks []Block) (page.Document, []Note) {
	s = s.repaired()
	headings := findHeadings(blocks, 0, nil)
	doc, notes := pass(s, blocks, headings, nil)
	if hasContents(blocks, 0) {
		// The contents take the same room whatever the numbers are, as digits
		// are tabular and stand at the right.
		pages := map[string]int{}
		for _, a := range doc.Anchors {
			pages[a.Name] = a.Page
		}
		doc, notes = pass(s, blocks, headings, pages)
	}
	return doc, notes
}

func pass(s Settings, blocks []Block, headings []Heading, pages map[string]int) (page.Document, []Note) {
	width, height := s.column()
	c := &composer{settings: s, column: height, tree: page.NewTree(), pages: pages, headings: headings}
	slabs := c.blocks(blocks, page.Root, width, 0)
	f := filler{settings: s, width: width, bottom: s.Margins.Top + height}
	f.doc = page.Document{Title: s.Title, Language: s.Language}
	f.newPage()
	for i := 0; i < len(slabs) && len(f.doc.Pages) <= MaxPages; {
		j := i + 1
		for j < len(slabs) && slabs[j-1].keep && !slabs[j].newPage {
			j++
		}
		f.place(slabs[i:j])
		i = j
	}
	if len(f.doc.Pages) > MaxPages {
		c.note(Note{Kind: TooLong, Wanted: float64(len(f.doc.Pages)), Got: MaxPages})
		f.doc.Pages = f.doc.Pages[:MaxPages]
	}
	f.doc.Tree = c.tree
	f.running()
	return f.doc, c.notes
}

// filler stacks slabs into columns and pages.
type filler struct {
	settings Settings
	doc      page.Document
	width    float64
	bottom   float64
	column   int
	y        float64
	top      bool // nothing stands in the column yet
}

// tiny forgives the rounding of sums of heights.
const tiny = 1e-6

func (f *filler) newPage() {
	f.doc.Pages = append(f.doc.Pages, page.Page{Size: f.settings.Page()})
	f.column, f.y, f.top = 0, f.settings.Margins.Top, true
}

func (f *filler) newColumn() {
	if f.column+1 < f.settings.Columns {
		f.column++
		f.y, f.top = f.settings.Margins.Top, true
		return
	}
	f.newPage()
}

// place stacks slabs that belong together, on a new column if they do not fit
// on this one; if they fit on none, they are parted.
func (f *filler) place(group []slab) {
	if group[0].newPage && !(f.top && f.column == 0) {
		f.newPage()
	}
	need := stacked(group)
	if !f.top {
		need += group[0].before
	}
	if f.y+need > f.bottom+tiny && !f.top {
		f.newColumn()
	}
	for i := range group {
		s := &group[i]
		if !f.top && f.y+s.before+s.height > f.bottom+tiny {
			f.newColumn()
		}
		switch {
		case !f.top:
			f.y += s.before
		case s.head != nil && f.y+s.head.height+s.height <= f.bottom+tiny:
			f.emit(s.head)
		}
		if s.height > 0 {
			f.emit(s)
		}
	}
}

func (f *filler) emit(s *slab) {
	p := &f.doc.Pages[len(f.doc.Pages)-1]
	d := page.Point{X: f.settings.Margins.Left + float64(float64(f.column)*(f.width+f.settings.Gutter)), Y: f.y}
	placed := page.Drawing{Items: s.items, Blocks: s.blocks}.Placed(1, d)
	p.Items = append(p.Items, placed.Items...)
	p.Blocks = append(p.Blocks, placed.Blocks...)
	n := len(f.doc.Pages) - 1
	for _, a := range s.anchors {
		f.doc.Anchors = append(f.doc.Anchors, page.Anchor{Name: a, Page: n, Y: f.y})
	}
	if h := s.heading; h != nil {
		f.doc.Outline = append(f.doc.Outline, page.Heading{Title: h.Text, Level: h.Level, Page: n, Y: f.y})
	}
	f.y += s.height
	f.top = false
}
