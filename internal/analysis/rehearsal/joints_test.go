package rehearsal

import (
	"testing"

	"scantling/internal/analysis/marks"
	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
)

// fromTrial takes a piece put together by hand and the cuts of its joints.
func fromTrial(t *testing.T, p *trial.Builder) *bench {
	t.Helper()
	b := newBench()
	b.l, b.p = p.Ledger, &p.Piece
	cuts, _, faults := joinery.Lower(b.p, b.l)
	complain(t, faults)
	b.cuts = append(append(b.cuts, p.Piece.Cuts...), cuts...)
	b.rows = marks.Rows(b.p, cuts, b.l)
	for i := range b.rows {
		b.rows[i].Species, b.rows[i].Stage = "cherry", "1"
	}
	return b
}

// TestJoints: pieces with every joint are planned and carried out.
func TestJoints(t *testing.T) {
	corner := trial.New()
	corner.Part("front", trial.Front, 0, 4000, 0, 120, 0, 600)
	corner.Part("side", trial.SideLow, 0, 120, 0, 4200, 0, 600)
	corner.Joint("corner", piece.BoxJoint, "front", "side", 0, func(j *piece.Joint) { j.Finger = corner.Fig("finger", 120) })

	cross := trial.New()
	cross.Part("rail", trial.GrainRight, 0, 4000, 1800, 2200, 0, 200)
	cross.Part("stile", trial.GrainBack, 1800, 2200, 0, 4000, 0, 200)
	cross.Joint("j", piece.HalvingJoint, "rail", "stile", 0, nil)

	doweled := trial.New()
	doweled.Part("rail", trial.Front, 400, 4000, 0, 200, 0, 600)
	doweled.Part("leg", trial.BackPanel, 0, 400, 0, 200, 0, 4000)
	doweled.Joint("j", piece.DowelJoint, "rail", "leg", 0, func(j *piece.Joint) {
		j.Dowels = &piece.Dowels{Diameter: doweled.Fig("d", 80), Count: 2, Margin: doweled.Fig("m", 150), InA: doweled.Fig("a", 200), InB: doweled.Fig("b", 150)}
	})

	for _, c := range []struct {
		name  string
		piece *trial.Builder
	}{
		{"drawer", trial.Drawer(80, 50, 50)}, {"carcase", trial.Carcase(70, 40, 50)}, {"chest", trial.Chest()}, {"rack", trial.Rack(2, 3)},
		{"box joint", corner}, {"halving", cross}, {"dowels", doweled},
	} {
		b := fromTrial(t, c.piece)
		p := b.planned(t)
		findings, report := b.rehearse(p)
		if !passed(findings) {
			t.Errorf("%s: %s", c.name, say(findings))
		}
		machines := map[string]int{}
		for _, s := range p.Setups {
			for _, q := range s.Placements {
				if len(q.Cuts) > 0 {
					machines[s.Machine]++
				}
				if s.Machine == "hand" {
					t.Logf("by hand: %s %v", q.Mark, q.Cuts)
				}
			}
		}
		t.Logf("%s: %d cuts, placements by machine %v", c.name, report.Cuts, machines)
	}
}
