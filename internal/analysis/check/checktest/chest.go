package checktest

import (
	"fmt"
	"strings"

	"scantling/internal/address"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
)

// Chest is the trial chest with two drawers and all that a good piece has: pins
// in its rebates, stops and out-stops, fits, measures, needles in its channels.
func Chest() *trial.Builder {
	b := trial.Chest()
	Materials(b)
	pins(b)
	trays(b)
	for k := range int64(2) {
		drawer(b, k)
	}
	b.Piece.Measures = []piece.Measure{{
		Address: "measure.openings", Label: "openings", Of: []address.Address{"case.opening[1]", "case.opening[2]"},
		Take: []string{"width front", "width back", "height left", "height right", "diagonals"}, Before: []address.Address{"drawer[1]", "drawer[2]"},
	}}
	return b
}

// Materials gives every part a material: ply for what is called a bottom in a
// drawer or a panel, cherry for the rest.
func Materials(b *trial.Builder) {
	b.Piece.Name, b.Piece.Units = "Chest", "mm"
	b.Piece.Materials = []piece.Material{
		{Name: "cherry", Asks: "black cherry board", Species: Cherry, Stock: "cherry 27", Cut: "flat", Thickness: b.Fig("dressed", 140)},
		{Name: "ply", Asks: "birch plywood 4", Sheet: true, Species: Ply, Stock: "ply 4", Nominal: "4 mm", Thickness: b.Fig("ply 4", 38)},
		{Name: "panel", Asks: "birch plywood 6", Sheet: true, Species: Ply, Stock: "ply 6", Nominal: "6 mm", Thickness: b.Fig("ply 6", 60)},
	}
	for i := range b.Piece.Parts {
		p := &b.Piece.Parts[i]
		p.Material = "cherry"
		switch {
		case p.Name == "panel":
			p.Material = "panel"
		case p.Name == "bottom" && strings.HasPrefix(string(p.Group), "drawer"):
			p.Material = "ply"
		}
	}
}

func pins(b *trial.Builder) {
	for i := range b.Piece.Joints {
		if j := &b.Piece.Joints[i]; j.Kind == piece.RebateJoint {
			j.Fasteners = &piece.Fasteners{Kind: "panel pin 20", Count: 2, Margin: b.Fig("margin", 140)}
		}
		if j := &b.Piece.Joints[i]; strings.Contains(string(j.Address), "panel") {
			j.Glue = ""
		}
	}
}

// trays closes the rows of channels and lays a needle in each.
func trays(b *trial.Builder) {
	b.Piece.Contents = []piece.Contents{{Address: "contents.needles", Kind: "rod", Play: b.Fig("play", 30)}}
	needles := &b.Piece.Contents[0]
	for i := range b.Piece.Series {
		s := &b.Piece.Series[i]
		s.Terms = Terms(b, s)
		s.Whole = b.Find(string(s.Part)).Width
		for k := range b.Piece.Cuts {
			c := &b.Piece.Cuts[k]
			if c.Series != s.Address {
				continue
			}
			needles.Things = append(needles.Things, piece.Thing{
				Key: fmt.Sprintf("%d.%d", i+1, c.Nth), Diameter: b.Ledger.Times("diameter", c.Slot.Depth, 2, 1), Length: b.Fig("length", 3500),
				HeadWidth: b.Fig("head", 120), HeadLength: b.Fig("head", 100), In: s.Part, Cut: c.Address,
			})
		}
	}
}

// Terms adds up the row of a series from its cuts.
func Terms(b *trial.Builder, s *piece.Series) []piece.Term {
	var out []piece.Term
	at, word := b.Fig("edge", 0), "margin"
	for i := range b.Piece.Cuts {
		c := &b.Piece.Cuts[i]
		if c.Series != s.Address {
			continue
		}
		out = append(out, piece.Term{Figure: b.Ledger.Less(word, c.Slot.Near, at), Word: word},
			piece.Term{Air: true, Figure: b.Ledger.Less("mouth", c.Slot.Far, c.Slot.Near), Of: c.Address, Word: string(c.Kind)})
		at, word = c.Slot.Far, "land"
	}
	whole := b.Find(string(s.Part)).Sizes()[s.Across]
	return append(out, piece.Term{Figure: b.Ledger.Less("margin", whole, at), Word: "margin"})
}

// drawer gives a drawer its fit, stops, notches over them and out-stop.
func drawer(b *trial.Builder, k int64) {
	group := fmt.Sprintf("drawer[%d]", k+1)
	b.Find(group + ".front").Show = piece.ToFront
	z := b.Find(group + ".front").Extent[piece.Up].Low.Nm / trial.Tenth
	for i, x := range []int64{144 + 300, 144 + 1400} {
		name := fmt.Sprintf("case.stop[%d]", 2*k+int64(i)+1)
		p := b.Part(name, trial.GrainRight, x, x+300, 145, 285, int64(z), int64(z)+50)
		p.Material, p.Name = "cherry", "stop"
		// The back's local length starts 5 inside the sides' outer faces.
		from := x - 144 - 50 - 40
		b.Slot(group+".back", fmt.Sprintf("notch[%d]", i+1), piece.Notch, piece.EdgeLow, piece.AlongThickness, 0, 100, from, from+380, 60, 0)
	}
	b.Piece.Fits = append(b.Piece.Fits, piece.Fit{
		Address: address.Address("fit").Nth("drawer", int(k)+1), Moves: address.Address(group),
		Inside: address.Address(fmt.Sprintf("case.opening[%d]", k+1)),
		Sides:  b.Fig("sides", 8), Above: b.Fig("above", 15), Behind: b.Fig("behind", 80), Season: []string{"above", "behind"},
	})
	b.Piece.Hardware = append(b.Piece.Hardware, piece.Hardware{
		Address: address.Address(group + ".hardware.out-stop"), Kind: "turn button", Count: 1, On: address.Address(group + ".back"),
	})
}
