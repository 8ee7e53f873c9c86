package evaluate

import (
	"bytes"
	"fmt"
	"strconv"
	"testing"

	"scantling/internal/document"
)

// grown returns the demonstration piece with so many drawers, and so many
// needles of each size that all of them hold some.
func grown(t testing.TB, drawers int) Sources {
	src := example(t)
	text := bytes.Replace(src.Document.Text, []byte("  to    = 5\n"), []byte("  to    = 9999\n"), 1)
	text = bytes.Replace(text, []byte("each   = 2\n"), []byte("each   = "+strconv.Itoa(max(2, drawers*2/3))+"\n"), 1)
	src.Document.Text = text
	src.Inputs = map[string]string{"drawers": strconv.Itoa(drawers)}
	return src
}

// written returns a document with so many shelves written out one by one.
func writtenOut(n int) Sources {
	var b bytes.Buffer
	b.WriteString("scantling = 1\n\npiece \"Stack\" {\n}\n\nmaterial \"m\" {\n  asks      = \"cherry board\"\n  thickness = 14\n}\n")
	for i := 1; i <= n; i++ {
		below := "0"
		if i > 1 {
			below = fmt.Sprintf("part.p%d.top + 2", i-1)
		}
		fmt.Fprintf(&b, "\npart \"p%d\" {\n  of     = material.m\n  grain  = \"right\"\n  left   = 0\n  wide   = 300\n  front  = 0\n  deep   = 200\n  bottom = %s\n}\n", i, below)
	}
	return Sources{Document: document.Source{Name: "stack.piece.hcl", Text: b.Bytes()}}
}

func BenchmarkEvaluate(b *testing.B) {
	for _, c := range []struct {
		name string
		src  Sources
	}{
		{"chest", example(b)}, {"grown to 300", grown(b, 30)}, {"grown to 3000", grown(b, 250)}, {"3000 written out", writtenOut(3000)},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			var r Result
			for b.Loop() {
				r = Piece(c.src)
			}
			if len(r.Diagnostics) > 0 {
				b.Fatal(r.Diagnostics[0])
			}
			b.ReportMetric(float64(len(r.Piece.Parts)), "parts")
			b.ReportMetric(float64(r.Work.Entries), "entries")
		})
	}
}
