package booklet

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestMergedKeepsTheOrder: placements that share their settings share a row, no
// placement is lost, and the settings of any one mark are met in the order in
// which the plan has them.
func TestMergedKeepsTheOrder(t *testing.T) {
	const seed = 11
	r := rand.New(rand.NewPCG(seed, 0))
	for range 400 {
		var list []plan.Placement
		for range 1 + r.IntN(12) {
			list = append(list, plan.Placement{
				N: len(list) + 1, Mark: fmt.Sprintf("C%d", r.IntN(3)), Pieces: 1 + r.IntN(3), Down: piece.FaceLow, Fence: piece.EdgeLow,
				Settings: []plan.Setting{{Word: "fence to cutter edge", Figure: plan.Figure{Nm: unit.MM(int64(r.IntN(4)))}}},
			})
		}
		rows := merged(list)
		order := map[string][]unit.Length{}
		pieces, wantPieces := 0, 0
		for _, row := range rows {
			pieces += row.pieces
			for _, p := range row.placements {
				if !samePlacement(p, row.placements[0]) {
					t.Fatalf("seed %d: a row of unlike placements: %+v", seed, row)
				}
				order[p.Mark] = append(order[p.Mark], p.Settings[0].Figure.Nm)
			}
		}
		want := map[string][]unit.Length{}
		for _, p := range list {
			wantPieces += p.Pieces
			want[p.Mark] = append(want[p.Mark], p.Settings[0].Figure.Nm)
		}
		for mark := range want {
			if !slices.Equal(order[mark], want[mark]) {
				t.Fatalf("seed %d: %s is set to %v, the plan says %v", seed, mark, order[mark], want[mark])
			}
		}
		if pieces != wantPieces {
			t.Fatalf("seed %d: %d pieces, want %d", seed, pieces, wantPieces)
		}
	}
}

// TestMergedShares: the case that the merging is for.
func TestMergedShares(t *testing.T) {
	at := func(mark string, mm int64) plan.Placement {
		return plan.Placement{Mark: mark, Pieces: 1, Settings: []plan.Setting{{Word: "height", Figure: plan.Figure{Nm: unit.MM(mm)}}}}
	}
	rows := merged([]plan.Placement{at("C1.1", 10), at("C1.1", 24), at("C1.2", 10), at("C1.2", 24)})
	if len(rows) != 2 || rows[0].pieces != 2 || !slices.Equal(rows[0].marks(), []string{"C1.1", "C1.2"}) {
		t.Errorf("%+v", rows)
	}
}

// TestEqualDiagramsAreSetOnce compares what is cut, not what it is called.
func TestEqualDiagramsAreSetOnce(t *testing.T) {
	d := func(id, stock string, along int64) plan.Diagram {
		return plan.Diagram{ID: id, Stock: stock, Pieces: []plan.Placed{{Mark: "A1", Rect: plan.Rect{Along: plan.Figure{Nm: unit.MM(along)}}}}}
	}
	got := equalDiagrams([]plan.Diagram{d("1", "ash", 0), d("2", "ash", 0), d("3", "ash", 5), d("4", "oak", 0), d("5", "ash", 0)})
	if len(got) != 3 || len(got[0]) != 3 || got[0][2].ID != "5" {
		t.Errorf("%d groups: %+v", len(got), got)
	}
}
