package typeset_test

import (
	"fmt"

	"scantling/internal/page"
	"scantling/internal/typeset"
)

// A booklet page from blocks: heading, sentence, table, drawing, steps. The
// document then goes to a writer, pdf.Write(w, doc, pdf.Options{}).
func Example() {
	s := typeset.Default(page.A4)
	s.Title = "Tray"
	s.Running = typeset.Running{HeadLeft: "{part}", FootRight: "page {page} of {pages}"}

	view := page.Drawing{Name: "Tray", Alt: "The tray from above: two channels along its length."}
	view.Add("tray", page.Stroke{Path: page.Rectangle(page.NewBox(0, 0, 120, 40)), Width: page.Thick})
	view.Add("tray.channel[1]", page.Stroke{Path: page.Line(page.Point{Y: 13}, page.Point{X: 120, Y: 13}), Width: page.Thin, Dash: page.Centre})

	doc, notes := typeset.Set(s, []typeset.Block{
		typeset.Heading{Level: 1, Text: "Tray"},
		typeset.Paragraph{Spans: []typeset.Span{{Text: "Channels lie at "}, {Text: "10.0", Bold: true}, {Text: " (0 25⁄64 in)."}}},
		typeset.Table{
			Columns: []typeset.Column{{}, {Share: 1}, {Align: page.End}},
			Header:  typeset.Cells("Mark", "Part", "Length"),
			Rows:    []typeset.Row{{Cells: typeset.Cells("T1", "Tray", "350"), Address: "tray"}},
		},
		typeset.Figure{Drawing: view, Caption: typeset.Plain("From above"), Address: "tray"},
		typeset.Steps(func(n int) string { return fmt.Sprintf("%d.", n) }, 1,
			[]typeset.Block{typeset.Paragraph{Spans: typeset.Plain("Set the fence.")}},
			[]typeset.Block{typeset.Paragraph{Spans: typeset.Plain("Cut the channels.")}},
		),
	})
	fmt.Println(len(doc.Pages), "page,", len(notes), "notes,", len(page.Outside(doc.Pages[0], s.Margins)), "outside")
	for _, h := range doc.Outline {
		fmt.Println(h.Level, h.Title)
	}
	// Output:
	// 1 page, 0 notes, 0 outside
	// 1 Tray
}
