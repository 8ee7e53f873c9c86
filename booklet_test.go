package scantling_test

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"scantling"
	"scantling/internal/output/booklet"
	"scantling/internal/page"
	"scantling/internal/words"
)

// corners are inputs at the ends of their ranges, by turns in either edition.
func corners() []map[string]string {
	all := []map[string]string{nil}
	for _, drawers := range []string{"2", "5"} {
		for _, length := range []string{"250", "400"} {
			for _, side := range []string{"12", "18"} {
				in := map[string]string{"drawers": drawers, "needle_length": length, "side_thickness": side}
				if len(all)%2 == 0 {
					in["edition"] = `"in"`
				}
				all = append(all, in)
			}
		}
	}
	return all
}

// TestBookletPages holds the laws of the page for every page of the booklet over
// the corners of the inputs, on both papers, metric and inch.
//
// Without LONG only three of the corners are set, one on each paper.
func TestBookletPages(t *testing.T) {
	for n, in := range corners() {
		long := os.Getenv("LONG") != ""
		if n%4 != 0 && !long {
			continue
		}
		r := planDemo(t, in)
		for k, paper := range []page.Paper{page.A4, page.Letter} {
			if n > 0 && n/4%2 != k && !long {
				continue
			}
			t.Run(fmt.Sprint(in, paper), func(t *testing.T) { lawful(t, r, paper) })
		}
	}
}

func lawful(t *testing.T, r *scantling.Result, paper page.Paper) {
	t.Helper()
	doc, notes := r.Pages(paper, words.English)
	for _, n := range notes {
		t.Errorf("gave way: %s", n)
	}
	for _, b := range page.Dangling(doc) {
		t.Error(b.What)
	}
	margins := booklet.Settings(paper).Margins
	for i, p := range doc.Pages {
		for _, list := range [][]page.Breach{page.Overlaps(p), page.Outside(p, margins), struck(p)} {
			for _, b := range list {
				t.Errorf("page %d: %s", i+1, b.What)
			}
		}
		for _, it := range p.Items {
			if s, ok := it.Shape.(page.Text); ok && strings.ContainsAny(s.String, "⟦⟧") {
				t.Errorf("page %d: no words for %q", i+1, s.String)
			}
		}
	}
	if len(doc.Pages) < 20 || len(doc.Pages) > 90 {
		t.Errorf("%d pages", len(doc.Pages))
	}
}

// struck lists texts that a line runs through, but for lines that are blotted out
// below the text by a plate of paper.
func struck(p page.Page) []page.Breach {
	return slices.DeleteFunc(page.Struck(p), func(b page.Breach) bool {
		text, line := b.Items[0], b.Items[1]
		if line > text {
			return false
		}
		for _, it := range p.Items[line+1 : text] {
			if f, ok := it.Shape.(page.Fill); ok && f.Colour == page.Ground && f.Bounds().Contains(p.Items[text].Shape.Bounds(), 0.3) {
				return true
			}
		}
		return false
	})
}

// TestEveryMarkIsDrawnAndMade: every mark of the list heads a drawing, is drawn
// there, and is named in a step.
func TestEveryMarkIsDrawnAndMade(t *testing.T) {
	r := planDemo(t, nil)
	doc, _ := r.Pages(page.A4, words.English)
	anchors := map[string]page.Anchor{}
	for _, a := range doc.Anchors {
		anchors[a.Name] = a
	}
	steps := textFrom(doc, anchors["steps"].Page, anchors["measures"].Page)
	list := textFrom(doc, anchors["list"].Page, anchors["diagrams"].Page)
	for _, row := range r.Plan.Parts {
		a, ok := anchors["part-"+row.Mark]
		if !ok {
			t.Errorf("%s has no drawing", row.Mark)
			continue
		}
		strokes := 0
		for _, it := range doc.Pages[a.Page].Items {
			if _, ok := it.Shape.(page.Stroke); ok && it.Address == string(row.Members[0]) {
				strokes++
			}
		}
		if strokes < 4 {
			t.Errorf("%s: only %d lines of %s on page %d", row.Mark, strokes, row.Members[0], a.Page+1)
		}
		family, _, _ := strings.Cut(row.Mark, ".")
		if !hasWord(steps, row.Mark) && !hasWord(steps, family) {
			t.Errorf("%s stands in no step", row.Mark)
		}
		if !hasWord(list, row.Mark) {
			t.Errorf("%s does not stand in the list", row.Mark)
		}
	}
}

// TestChapterOfParts: the first part stands under the chapter's heading, so that no page
// holds a heading and its introduction alone.
func TestChapterOfParts(t *testing.T) {
	for _, name := range []string{"bedside-table", "bottle-box"} {
		r := planExample(t, name, nil)
		for _, paper := range []page.Paper{page.A4, page.Letter} {
			doc, _ := r.Pages(paper, words.English)
			pages := map[string]int{}
			for _, a := range doc.Anchors {
				pages[a.Name] = a.Page
			}
			first := "part-" + r.Plan.Parts[0].Mark
			if pages["parts"] == 0 || pages["parts"] != pages[first] {
				t.Errorf("%s: the parts begin on page %d, the first of them is drawn on page %d", name, pages["parts"]+1, pages[first]+1)
			}
		}
	}
}

// textFrom gathers the texts of pages, from one to before another.
func textFrom(d page.Document, from, to int) string {
	var b strings.Builder
	for _, p := range d.Pages[from:max(to, from)] {
		for _, it := range p.Items {
			if t, ok := it.Shape.(page.Text); ok {
				b.WriteString(t.String + " ")
			}
		}
	}
	return b.String()
}

func hasWord(text, word string) bool {
	return slices.ContainsFunc(strings.Fields(text), func(w string) bool { return strings.Trim(w, ",.;:()") == word })
}

// TestBookletSpeaksTheCatalogue: in the pseudo-language nothing of the booklet is
// left in plain letters, so no prose bypasses the catalogue.
func TestBookletSpeaksTheCatalogue(t *testing.T) {
	doc, _ := planDemo(t, nil).Pages(page.A4, words.Pseudo)
	found := map[string]int{}
	for i := range doc.Pages {
		for _, w := range words.Bypassed(textFrom(doc, i, i+1)) {
			found[w] = i + 1
		}
	}
	for _, n := range doc.Tree {
		for _, w := range words.Bypassed(n.Alt) {
			found["alt: "+w] = -1
		}
	}
	for _, w := range slices.Sorted(maps.Keys(found)) {
		t.Errorf("page %d: %q is not from the catalogue", found[w], w)
	}
}

// BenchmarkBooklet sets the booklet of the demonstration piece.
func BenchmarkBooklet(b *testing.B) {
	r := planDemo(b, nil)
	pages := 0
	for b.Loop() {
		doc, _ := r.Pages(page.A4, words.English)
		pages += len(doc.Pages)
	}
	b.ReportMetric(float64(pages)/b.Elapsed().Seconds(), "pages/s")
}
