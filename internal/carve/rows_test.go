package carve_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"scantling/internal/document"
	"scantling/internal/evaluate"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// TestRows lays rows out in every way and holds the middles against figures worked
// out by hand; every row adds up to its part. The board is 400 long.
func TestRows(t *testing.T) {
	hole := "kind = \"hole\"; side = \"top\"; at = { back = 20 }; depth = 10; "
	slot := "kind = \"housing\"; side = \"top\"; runs = \"back\"; depth = 5; "
	for name, c := range map[string]struct {
		words string
		at    []float64
	}{
		"pitch, centred":         {hole + "diameter = 6; count = 5; pitch = 32", []float64{136, 168, 200, 232, 264}},
		"pitch from the margin":  {hole + "diameter = 6; count = 3; pitch = 32; margin = 20", []float64{23, 55, 87}},
		"from the other end":     {hole + "diameter = 6; count = 3; pitch = 32; margin = 20; starts = \"right\"", []float64{377, 345, 313}},
		"pitches":                {slot + "width = 8; pitches = [20, 30, 40]; margin = 30", []float64{34, 54, 84, 124}},
		"pitches, centred":       {slot + "width = 8; pitches = [20, 30, 50]", []float64{150, 170, 200, 250}},
		"land":                   {slot + "width = 8; count = 3; land = 12; margin = 30", []float64{34, 54, 74}},
		"land, centred":          {slot + "width = 8; count = 3; land = 12", []float64{180, 200, 220}},
		"land that is left":      {slot + "width = 10; count = 4; margin = 30", []float64{35, 145, 255, 365}},     // (400 - 60 - 40) / 3 = 100
		"spread evenly":          {slot + "width = 10; count = 3; place = \"even\"", []float64{97.5, 200, 302.5}}, // (400 - 30) / 4 = 92.5
		"by sizes":               {hole + "holds = [4, 6, 10]; play = 0.5; land = 8; margin = 20", []float64{22.25, 35.75, 52.25}},
		"by sizes, left over":    {hole + "holds = [10, 20]; margin = 50", []float64{55, 340}},
		"end to end":             {"kind = \"mortise\"; side = \"front\"; runs = \"right\"; row = \"right\"; centre = 10; width = 8; length = 40; depth = 15; count = 2; land = 20; margin = 30", []float64{50, 110}},
		"channels of one cutter": {"kind = \"channel\"; side = \"top\"; runs = \"back\"; cutter = \"round-nose 6.35\"; depth = 4; count = 2; pitch = 13; margin = 10", []float64{13.175, 26.175}},
	} {
		r := evaluated(t, board+"series \"x\" {\n  on = part.board\n  "+strings.ReplaceAll(c.words, "; ", "\n  ")+"\n}\n")
		if len(r.Piece.Cuts) != len(c.at) || len(r.Piece.Series) != 1 {
			t.Errorf("%s: %d cuts", name, len(r.Piece.Cuts))
			continue
		}
		for i, cut := range r.Piece.Cuts {
			var at unit.Length
			if cut.Bore != nil {
				at = cut.Bore.At[0].Nm
				if cut.Bore.At[1].Nm != 120*mm || cut.Nth != i+1 {
					t.Errorf("%s: hole %d lies at %v", name, cut.Nth, cut.Bore.At)
				}
			} else {
				at = (cut.Slot.Near.Nm + cut.Slot.Far.Nm) / 2
				if name == "end to end" {
					at = (cut.Slot.From.Nm + cut.Slot.To.Nm) / 2
				}
			}
			if want := unit.FromMillimetres(c.at[i]); at != want {
				t.Errorf("%s: cut %d lies at %v, not %v", name, i+1, at, want)
			}
		}
		s, sum := r.Piece.Series[0], unit.Length(0)
		for _, x := range s.Terms {
			sum += x.Figure.Nm
			if !x.Air && x.Figure.Nm < 0 {
				t.Errorf("%s: a land of %v", name, x.Figure.Nm)
			}
		}
		if sum != s.Whole.Nm || s.Whole.Nm != 400*mm {
			t.Errorf("%s adds up to %v", name, sum)
		}
	}
}

// TestFlatLength asks for a length that lies flat and finds it in the ledger, at one
// and at both ends, for noses that go down to their radius and that do not.
func TestFlatLength(t *testing.T) {
	for words, mouth := range map[string]unit.Length{
		"centre = 40; width = 12; radius = 6; depth = 8; middle = 200; holds = 100":              112 * mm,
		"centre = 40; width = 12; radius = 6; depth = 6; from = 0; holds = 100":                  106 * mm,
		"centre = 40; width = 20; radius = 10; depth = 2; from = 30; holds = 100":                112 * mm, // 100 - 64 = 6²
		"centre = 40; width = 12; depth = 6; corner = 3; to = 370; holds = 99; play = 1":         106 * mm,
		"centre = 40; width = 12; depth = 6; ends = \"square\"; from = 20; holds = 99; play = 1": 100 * mm,
	} {
		r := evaluated(t, board+"cut \"x\" {\n  on = part.board\n  kind = \"channel\"\n  side = \"top\"\n  "+strings.ReplaceAll(words, "; ", "\n  ")+"\n}\n")
		s := r.Piece.Cuts[0].Slot
		if got := s.To.Nm - s.From.Nm; got != mouth {
			t.Errorf("%s: the mouth is %v long, not %v", words, got, mouth)
		}
		usable := unit.Length(0)
		for _, e := range r.Ledger.Entries() {
			if strings.HasSuffix(e.Name, ".x.usable") {
				usable, _ = e.Value.Length()
			}
		}
		if s.EndRadius.Nm > 0 && usable != 100*mm {
			t.Errorf("%s: %v is usable", words, usable)
		}
	}
}

// TestManyPoints refuses a line of more points than are read.
func TestManyPoints(t *testing.T) {
	points := strings.Repeat("[10, 10], [20, 20], ", 201)
	r := evaluate.Piece(evaluate.Sources{Document: document.Source{Name: "x", Text: []byte(board + "cut \"x\" {\n  kind = \"notch\"\n  on = part.board\n  side = \"top\"\n  through = true\n  outline = [" + points + "]\n}\n")}})
	if len(r.Diagnostics) != 1 || r.Diagnostics[0].Code != "too-many-points" {
		t.Errorf("%v", r.Diagnostics)
	}
}

// TestNonsense puts words of cuts together at random: whatever comes of it is told,
// and nothing stops.
func TestNonsense(t *testing.T) {
	const seed = 44
	rng := rand.New(rand.NewPCG(seed, 2))
	values := []string{"-5", "12", "40", "6", "150", "0", "900000", "\"top\"", "\"front\"", "\"left\"", "\"right\"", "\"up\"", "\"back\"", "\"5 deg\"", "\"1:8\"", "\"90 deg\"",
		"true", "[]", "[[0, 0], [10, 0], [10, 10]]", "[[0, 0], { through = [5, 5] }, [10, 0]]", "{ back = 5, top = 3 }", "{ left = 20, front = 20 }", "{ front = 10 }",
		"{ diameter = 9 }", "{ diameter = 9, depth = 3 }", "[5, 8]", "[[\"top\", \"front\"]]", "[\"left\", \"right\"]", "\"round\"", "\"even\"", "part.board.top", "contents.rods", "\"round-nose 6.35\"",
		"{ toward = \"back\", by = 5, from = \"bottom\" }", "[[0, 10], [200, 12]]"}
	kinds := []string{"groove", "channel", "V channel", "hole", "recess", "mortise", "notch", "taper", "bevel", "mitre", "compound angle", "curved outline", "scoop", "chamfer", "cove", "eased", "trough"}
	words := map[string][]string{"cut": document.WordsOf(document.Piece, "cut"), "series": document.WordsOf(document.Piece, "series"), "part": document.WordsOf(document.Piece, "part")}
	base := board + "contents \"rods\" {\n  rod = [4, 6]\n  each = 2\n  length = 180\n}\ngroup \"g\" {\n" + strings.ReplaceAll(strings.SplitN(board, "part", 2)[1], "", "") + "}\n"
	base = strings.Replace(base, "group \"g\" {\n", "group \"g\" {\npart", 1)
	sides, lines := `"top";"front";"left";"right";"back";"bottom"`, `[[0, 0], [10, 0], [10, 10]];[[0, 0], { through = [5, 5] }, [10, 0]];[[20, 20], [80, 20], { through = [50, 60] }]`
	fitting := map[string]string{
		"side": sides, "edge": sides, "end": sides, "keeps": sides, "starts": sides, "show": sides, "sides": `["left", "right"];["top"];"front";["front", "back"]`,
		"runs": `"right";"back";"up"`, "grain": `"right";"back";"down"`, "through": "true", "symmetrical": "true", "outline": lines, "line": lines,
		"edges": `[["top", "front"]];[["top", "left"], ["bottom", "right"]]`, "angle": `"5 deg";"1:8";30`, "angles": `{ back = 5, top = 3 };{ front = 5, left = "2 deg" }`,
		"at": `{ left = 20, front = 20 };{ front = 10 };{ bottom = 5, right = 30 }`, "countersink": "{ diameter = 20 }", "counterbore": "{ diameter = 20, depth = 3 }",
		"ends": `"round";"square"`, "place": `"even";"centred"`, "count": "3;2", "slots": "5", "pitches": "[20, 30]", "holds": "[5, 8];contents.rods;60",
		"cutter": `"round-nose 6.35";"straight 6.35"`, "mirror": "900", "form": `"round";"outline"`, "holes": "[{ centre = [5, 2], diameter = 1 }]",
		"profile": "[[0, 10], [200, 12]]", "leans": `{ toward = "back", by = 5, from = "bottom" }`,
	}
	needs := []string{"side runs centre width depth", "side near width depth from length", "side at diameter depth", "end sides leaves", "edge keeps by", "end keeps angle",
		"end angles", "side outline depth", "edge line", "edges leg", "edges radius from to", "side runs width depth count pitch", "side at diameter depth holds land"}
	made := 0
	for range 1500 {
		block := []string{"cut", "cut", "series", "part"}[rng.IntN(4)]
		text := fmt.Sprintf("%s \"x\" {\n", block)
		used := map[string]bool{"if": true, "after": true, "label": true, "repeat": true, "on": true, "kind": true, "of": true}
		if block == "part" {
			text += "of = material.wood\n"
		} else {
			text += fmt.Sprintf("on = %s\nkind = %q\n", []string{"part.board", "g"}[rng.IntN(2)], kinds[rng.IntN(len(kinds))])
		}
		usual := strings.Fields(needs[rng.IntN(len(needs))])
		if block == "part" {
			usual = strings.Fields("grain left wide front deep bottom high")
		}
		for n := range len(usual) + rng.IntN(4) {
			w := words[block][rng.IntN(len(words[block]))]
			if n < len(usual) && rng.IntN(15) > 0 {
				w = usual[n]
			}
			if !used[w] {
				used[w] = true
				fit := values
				if f := fitting[w]; f != "" {
					fit = strings.Split(f, ";")
				} else if rng.IntN(8) > 0 {
					fit = values[1:5]
				}
				if rng.IntN(20) == 0 {
					fit = values
				}
				text += w + " = " + fit[rng.IntN(len(fit))] + "\n"
			}
		}
		r := evaluate.Piece(evaluate.Sources{Document: document.Source{Name: "x", Text: []byte(base + text + "}\n")}})
		if len(r.Piece.Parts) < 2 {
			t.Fatalf("the base does not stand: %v", r.Diagnostics)
		}
		if len(r.Diagnostics) == 0 {
			made += len(r.Piece.Cuts)
			for _, c := range r.Piece.Cuts {
				if forms := count(c); forms != 1 {
					t.Errorf("seed %d: a cut of %d forms\n%s", seed, forms, text)
				}
			}
		} else if len(r.Piece.Cuts) > 0 && block == "series" {
			t.Errorf("seed %d: a row that is wrong has cuts\n%s", seed, text)
		}
	}
	t.Logf("%d cuts came of it", made)
	if made < 20 {
		t.Errorf("seed %d: only %d cuts came of it", seed, made)
	}
}

func count(c piece.Cut) int {
	n := 0
	for _, set := range []bool{c.Slot != nil, c.Bore != nil, c.Dip != nil, c.Ease != nil, c.Slice != nil, c.Pocket != nil} {
		if set {
			n++
		}
	}
	return n
}
