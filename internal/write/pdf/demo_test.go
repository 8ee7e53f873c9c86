package pdf

import (
	"fmt"

	"scantling/internal/page"
	"scantling/internal/typeset"
)

// demo is a short booklet with one of everything.
func demo(paper page.Paper) (typeset.Settings, []typeset.Block) {
	s := typeset.Default(paper)
	s.Title = "Needle chest: a page of everything"
	s.Running = typeset.Running{
		HeadLeft: "{part}", HeadRight: "Needle chest",
		FootLeft: "Revision B", FootRight: "page {page} of {pages}", Skip: 1,
	}
	return s, []typeset.Block{
		typeset.Heading{Level: 1, Text: "Needle chest", Anchor: "cover", Unlisted: true},
		typeset.Paragraph{Manner: typeset.Lead, Spans: typeset.Plain("Four drawers for straight needles, 380 wide, 412 deep, 296 high.")},
		typeset.Contents{},
		typeset.Heading{Level: 1, Text: "Cut", NewPage: true, Anchor: "cut"},
		typeset.Paragraph{Spans: []typeset.Span{
			{Text: "Set the fence "}, {Text: "5 3⁄8 in (136.5)", Bold: true},
			{Text: " from the cutter; the round-nose cutter is ⌀ 6.35 and sinks 1⁄8 in. Turn the sides face down → the groove lies below. A board of 63⁄64 in cleans up to 7⁄8 in; measured 17.6 ± 0.1, so ≤ 18. See "},
			{Text: "the set-up card", Link: "card"}, {Text: ", and tick ☐ when done ✓. Signs: ■ stop, ▲ check, ● note, ⚠ caution, 12′ 6″, AVAIL To Type."},
		}},
		parts(60),
		typeset.Heading{Level: 2, Text: "Drawer side, B2"},
		typeset.Figure{Drawing: side(), Caption: typeset.Plain("B2, drawer side: 350 × 80 × 12, two of each drawer. Face side towards you."), Anchor: "fig", Address: "drawer[1].side.left"},
		typeset.Heading{Level: 1, Text: "Build"},
		typeset.Box{Title: "▲ Caution: the cutter stays up", Bar: page.Warn, Tint: true, Blocks: []typeset.Block{
			typeset.Paragraph{Spans: typeset.Plain("Machine off and isolated, cutter still, before the fence is measured. No gloves, loose sleeves or rings; eyes, ears, dust. Use a push block: the part is 80 wide.")},
		}},
		typeset.Steps(func(n int) string { return fmt.Sprintf("%d.", n) }, 1,
			[]typeset.Block{typeset.Paragraph{Spans: []typeset.Span{{Text: "Dress", Bold: true}, {Text: " the boards for the sides to 12, leaving 300 over the length. Check with the story rod: 36 × 10 + 2 × 10 = 380."}}}},
			[]typeset.Block{
				typeset.Paragraph{Spans: typeset.Plain("Groove the sides for the bottom, 6 wide and 5 deep, 8 from the lower edge. Reference edge against the fence.")},
				typeset.Figure{Drawing: side(), Caption: typeset.Plain("The same part again")},
			},
			[]typeset.Block{typeset.Paragraph{Spans: typeset.Plain("☐ Measure the space: ______ wide. Clearance wanted today: 0.8.")}},
		),
		typeset.Beside{Share: 0.45, Left: []typeset.Block{
			typeset.Box{Title: "Set-up card 3: table saw", Frame: true, Blocks: []typeset.Block{
				typeset.Table{Full: true, Columns: []typeset.Column{{}, {Align: page.End}}, Rows: []typeset.Row{
					{Cells: []typeset.Cell{{Spans: typeset.Plain("Fence to blade"), Header: true}, {Spans: typeset.Strong("136.5")}}},
					{Cells: []typeset.Cell{{Spans: typeset.Plain("Height"), Header: true}, {Spans: typeset.Strong("5.0")}}},
					{Cells: []typeset.Cell{{Spans: typeset.Plain("Stop"), Header: true}, {Spans: typeset.Strong("344 1⁄2")}}},
				}},
			}},
		}, Right: []typeset.Block{
			typeset.Heading{Level: 3, Text: "Why this order", Anchor: "card"},
			typeset.Paragraph{Spans: typeset.Plain("The groove comes before the rebate, so that no cut is trapped: once the ends are rebated there is no wood left to bear on the fence.")},
			typeset.List{Entries: []typeset.Entry{
				{Label: "☐", Blocks: []typeset.Block{typeset.Paragraph{Spans: typeset.Plain("fence set")}}},
				{Label: "☐", Blocks: []typeset.Block{typeset.Paragraph{Spans: typeset.Plain("test piece cut and measured")}}},
			}},
		}},
	}
}

func parts(n int) typeset.Table {
	t := typeset.Table{
		Caption: typeset.Plain("Cut now"), Address: "list.now",
		Columns: []typeset.Column{{}, {Share: 1}, {Align: page.End}, {Align: page.End}, {Align: page.End}, {Align: page.End}, {Width: 34}},
		Header:  typeset.Cells("Mark", "Part", "No.", "Length", "Width", "Thick", "Material"),
	}
	fills := page.Fills
	for i := range n {
		mark := fmt.Sprintf("%c%d", 'A'+i/10, i%10+1)
		cells := typeset.Cells(mark, "Drawer side, left", fmt.Sprint(1+i%4), fmt.Sprintf("%d.%d", 111+7*i, i%10), "80", "5 3⁄8", "Oak")
		cells[0].Header = true
		cells[0].Fill = fills[i%len(fills)]
		if i%17 == 5 {
			cells[1].Spans = typeset.Plain("Drawer front with a scooped finger grip in its top edge, clear of the tray’s end, and a groove for the bottom")
			cells[6].Spans = typeset.Plain("Birch plywood, measured 17.6")
		}
		if i%20 == 0 {
			t.Rows = append(t.Rows, typeset.Row{Group: true, Cells: []typeset.Cell{{Spans: typeset.Plain(fmt.Sprintf("Board %d", i/20+1)), Columns: 7}}})
		}
		t.Rows = append(t.Rows, typeset.Row{Cells: cells, Address: fmt.Sprintf("part[%d]", i+1)})
	}
	return t
}

// side draws a dimensioned part with a hatched section, by hand.
func side() page.Drawing {
	d := page.Drawing{Name: "Drawer side", Alt: "Drawer side seen from the inside, 350 long and 80 wide, with the groove for the bottom and its section."}
	pt := func(x, y float64) page.Point { return page.Point{X: x, Y: y} }
	line := func(w page.Width, dash page.Dash, c page.Colour, p ...page.Point) {
		d.Add("drawer[1].side.left", page.Stroke{Path: page.Polyline(p...), Width: w, Dash: dash, Colour: c})
	}
	d.Add("drawer[1].side.left", page.Stroke{Path: page.Rectangle(page.NewBox(0, 0, 120, 27)), Width: page.Thick})
	line(page.Thin, page.Hidden, page.Ink, pt(0, 22.3), pt(120, 22.3))
	line(page.Thin, page.Hidden, page.Ink, pt(0, 24.3), pt(120, 24.3))
	line(page.Thin, page.Centre, page.Ink, pt(-3, 13.5), pt(123, 13.5))
	d.Add("", page.Stroke{Path: page.Circle(pt(60, 13.5), 5), Width: page.Thick})
	line(page.Thin, page.Centre, page.Ink, pt(60, 6), pt(60, 21))
	section := page.Polygon(pt(135, 0), pt(139, 0), pt(139, 22.3), pt(137.3, 22.3), pt(137.3, 24.3), pt(139, 24.3), pt(139, 27), pt(135, 27))
	d.Add("", page.Fill{Path: section, Colour: page.Straw})
	d.Add("", page.Hatch{Path: section, Angle: -45, Pitch: 1.2, Width: page.W018})
	d.Add("", page.Stroke{Path: section, Width: page.Thick})
	dim := func(a, b page.Point, label string, turn float64) {
		line(page.Thin, page.Solid, page.Ink, a, b)
		u := b.Sub(a).Mul(1 / b.Sub(a).Norm())
		n := pt(-u.Y, u.X)
		for _, e := range []struct {
			p page.Point
			s float64
		}{{a, 1}, {b, -1}} {
			d.Add("", page.Fill{Path: page.Polygon(e.p, e.p.Add(u.Mul(2.5*e.s)).Add(n.Mul(0.42)), e.p.Add(u.Mul(2.5*e.s)).Sub(n.Mul(0.42)))})
		}
		mid := a.Add(b).Mul(0.5).Add(pt(0, -0.9).Turn(turn))
		d.Add("", page.Text{At: mid, Size: 3.5, Align: page.Middle, Turn: turn, String: label})
	}
	dim(pt(0, 34), pt(120, 34), "350", 0)
	line(page.Thin, page.Solid, page.Ink, pt(0, 28), pt(0, 36))
	line(page.Thin, page.Solid, page.Ink, pt(120, 28), pt(120, 36))
	dim(pt(-7, 27), pt(-7, 0), "80 (3 5⁄32)", -90)
	line(page.Thin, page.Solid, page.Ink, pt(-1, 27), pt(-9, 27))
	line(page.Thin, page.Solid, page.Ink, pt(-1, 0), pt(-9, 0))
	d.Add("", page.Text{At: pt(67, 8), Size: 3.5, String: "⌀ 12 through"})
	d.Add("", page.Text{At: pt(137, 32), Size: 3.5, Align: page.Middle, String: "A–A"})
	return d
}
