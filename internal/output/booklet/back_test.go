package booklet

import (
	"strings"
	"testing"

	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
	"scantling/internal/words"
)

// TestPassesOfNothing: the last page counts as passed what was judged, and names what the
// piece has none of.
func TestPassesOfNothing(t *testing.T) {
	show := unit.Show{System: unit.Metric}
	p := &plan.Plan{Piece: &piece.Piece{Name: "Box"}, Findings: []plan.Finding{
		{Check: "land", Status: plan.Pass}, {Check: "hidden", Status: plan.Pass},
		{Check: "stops", Status: plan.Pass, Idle: "idle.stops"}, {Check: "twins", Status: plan.Pass, Idle: "idle.twins"}, {Check: "pulls", Status: plan.Pass, Idle: "idle.pulls"},
	}}
	doc, _ := Compose(p, nil, words.New(words.English, words.British, show, ""), Options{Paper: page.A4, Show: show})
	var b strings.Builder
	for _, sheet := range doc.Pages {
		for _, it := range sheet.Items {
			if text, ok := it.Shape.(page.Text); ok {
				b.WriteString(text.String + " ")
			}
		}
	}
	all := strings.Join(strings.Fields(b.String()), " ")
	for _, want := range []string{"2 checks passed.", "3 checks had nothing to judge. The piece has none of this: drawers, mirrored parts and knobs or pulls."} {
		if !strings.Contains(all, want) {
			t.Errorf("%q does not stand in the booklet", want)
		}
	}
}
