package drawing_test

import (
	"crypto/sha256"
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"scantling/internal/address"
	"scantling/internal/geom/solid"
	"scantling/internal/output/drawing"
	"scantling/internal/page"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/shape"
	"scantling/internal/unit"
	"scantling/internal/words"
	"scantling/internal/write/svg"
)

var update = flag.Bool("update", false, "rewrite golden files")

// solids stands in for the front door's.
type solids struct{ *shape.Shapes }

func (s solids) Solid(a address.Address) *solid.Solid {
	if sh, ok := s.Of(a); ok {
		return sh.Solid
	}
	return nil
}

func (s solids) Cut(a address.Address, t solid.Tag) address.Address {
	if sh, ok := s.Of(a); ok {
		if c := sh.Origin(t).Cut; c != nil {
			return c.Address
		}
	}
	return ""
}

func fig(mm int64) plan.Figure { return plan.Figure{Nm: unit.MM(mm)} }

// rack is a small fixed plan: two shelves of 200 × 60 × 12, each with a groove
// along, a housing across that stops, and a scoop; a cutting diagram; a card.
func rack() *plan.Plan {
	p := &piece.Piece{Name: "Rack", Edition: "mm"}
	for n := range int64(2) {
		a := address.Address("shelf").Parent().Nth("shelf", int(n+1))
		z := n * 100
		p.Parts = append(p.Parts, piece.Part{
			Address: a, Name: "shelf", Form: piece.Board, Material: "case", Show: piece.ToFront,
			Extent: [3]piece.Extent{{Low: fig(0), High: fig(200)}, {Low: fig(0), High: fig(60)}, {Low: fig(z), High: fig(z + 12)}},
			Frame:  piece.Frame{Length: piece.ToRight, Width: piece.ToBack, Thickness: piece.ToUp},
			Length: fig(200), Width: fig(60), Thickness: fig(12),
		})
		p.Cuts = append(p.Cuts,
			piece.Cut{Address: a.Child("groove"), Kind: piece.Groove, Part: a, Slot: &piece.Slot{Open: piece.FaceHigh, Run: piece.AlongLength, From: fig(0), To: fig(200), StartOpen: true, EndOpen: true, Near: fig(10), Far: fig(14), Depth: fig(5)}},
			piece.Cut{Address: a.Child("housing"), Kind: piece.Housing, Part: a, Slot: &piece.Slot{Open: piece.FaceHigh, Run: piece.AlongWidth, From: fig(20), To: fig(60), EndOpen: true, Near: fig(90), Far: fig(102), Depth: fig(4)}},
			piece.Cut{Address: a.Child("scoop"), Kind: piece.Scoop, Part: a, Dip: &piece.Dip{Open: piece.EdgeHigh, Centre: fig(40), Chord: fig(48), Depth: fig(16)}})
	}
	rect := func(a, c, l, w int64) plan.Rect {
		return plan.Rect{Along: fig(a), Across: fig(c), Length: fig(l), Width: fig(w)}
	}
	return &plan.Plan{
		Piece: p, Shop: plan.Shop{Region: "en-GB"},
		Parts: []plan.PartRow{{Mark: "A1", Name: "shelf", Members: []address.Address{"shelf[1]", "shelf[2]"}, Length: fig(200), Width: fig(60), Thickness: fig(12), Species: "cherry", Basis: plan.Planned}},
		Diagrams: []plan.Diagram{{
			ID: "board 1", Label: "cherry", Length: fig(500), Width: fig(70), Thickness: fig(15), Kerf: fig(3),
			Pieces: []plan.Placed{{Workpiece: "b1", Mark: "A1", Rect: rect(0, 0, 205, 65)}, {Workpiece: "b2", Mark: "A1", Rect: rect(208, 0, 205, 65)}},
			Cuts:   []plan.SawCut{{N: 1, Kind: "rip", In: rect(0, 0, 500, 70), At: fig(65)}, {N: 2, Kind: "crosscut", In: rect(0, 0, 500, 65), At: fig(205)}, {N: 3, Kind: "crosscut", In: rect(208, 0, 292, 65), At: fig(205)}},
			Left:   []plan.Left{{Rect: rect(416, 0, 84, 65), Keep: true}},
		}},
		Setups: []plan.Setup{{
			ID: "groove", Machine: "router table", CutterSize: fig(4), CutterShape: "straight", Settings: []plan.Setting{{Word: "height", Figure: fig(5)}},
			Placements: []plan.Placement{{N: 1, Mark: "A1", Pieces: 2, Down: piece.FaceHigh, Fence: piece.EdgeLow, Settings: []plan.Setting{
				{Word: "fence to cutter edge", Figure: fig(10)}, {Word: "stop left", Figure: fig(150)}, {Word: "stop left to cutter edge", Figure: fig(148)}}}},
		}},
	}
}

// drawings draws everything of the rack that the package can draw.
func drawings(p *plan.Plan, system unit.System) []page.Drawing {
	s := solids{shape.New(p.Piece, nil, shape.ScreenFacets)}
	w := words.New(words.English, words.British, unit.Show{System: system, Denominator: 32, Style: unit.Signs}, "")
	card := p.Setups[0]
	var out []page.Drawing
	for _, third := range []bool{false, true} {
		d, scale := drawing.Part(p, p.Parts[0], s, drawing.PartOptions{ThirdAngle: third}, 170, 100, w)
		out = append(out, d, drawing.TitleBlock(p, p.Parts[0], scale, third, "A", 174, w))
	}
	setup, _ := drawing.Setup(p, card, card.Placements[0], 78, 40, w)
	above, _ := drawing.SetupAbove(p, card, card.Placements[0], 70, w)
	section, _ := drawing.Section(p, s, unit.MM(95), 150, 90, w)
	return append(out, setup, above, section, drawing.Diagram(p.Diagrams[0], 170, 90, w),
		drawing.Whole(p, s, drawing.WholeOptions{Look: drawing.LookIsometric, Apart: 0.4, Marks: true}, 150, 100, w),
		drawing.Elevation(p, s, drawing.LookFront, 0.5, w))
}

// TestGolden holds the bytes of the drawings of a small fixed plan; look at them
// before -update (SCANTLING_LOOK names a folder to write them to).
func TestGolden(t *testing.T) {
	var got strings.Builder
	for _, system := range []unit.System{unit.Metric, unit.Inches} {
		for i, d := range drawings(rack(), system) {
			data := svg.Drawing(d, svg.Options{})
			fmt.Fprintf(&got, "%x  %s %d\n", sha256.Sum256(data), system, i)
			if dir := os.Getenv("SCANTLING_LOOK"); dir != "" {
				if err := os.WriteFile(fmt.Sprintf("%s/%s-%d.svg", dir, system, i), data, 0o644); err != nil {
					t.Fatal(err)
				}
			}
		}
	}
	const file = "testdata/drawings.sha256"
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got.String() != string(want) {
		t.Errorf("drawings changed:\n%s\nwere:\n%s", got.String(), want)
	}
}

// TestDrawingsAreLawful: no text of a drawing covers another.
func TestDrawingsAreLawful(t *testing.T) {
	for _, system := range []unit.System{unit.Metric, unit.Inches} {
		for i, d := range drawings(rack(), system) {
			for _, b := range page.Overlaps(page.Page{Items: d.Items, Blocks: d.Blocks}) {
				t.Errorf("%s %d: %s", system, i, b.What)
			}
			if d.Alt == "" {
				t.Errorf("%s %d: says nothing to one who cannot see it", system, i)
			}
		}
	}
}

// TestPartShowsEveryPlace: every limit of a cut, and every size of the part,
// stands as a figure on its drawing (the figures are the rack's own numbers).
func TestPartShowsEveryPlace(t *testing.T) {
	d := drawings(rack(), unit.Metric)[0]
	var texts []string
	for _, it := range d.Items {
		if s, ok := it.Shape.(page.Text); ok {
			texts = append(texts, s.String)
		}
	}
	all := "\n" + strings.Join(texts, "\n") + "\n"
	for _, want := range []string{"200", "60", "12", "10", "14", "90", "102", "20", "7", "8", "16", "64", "44", "R 26", "a", "b", "c", "end 1", "end 2"} {
		if !strings.Contains(all, "\n"+want+"\n") {
			t.Errorf("%q is not on the drawing: %q", want, texts)
		}
	}
}
