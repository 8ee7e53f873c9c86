package evaluate

import (
	"fmt"
	"strings"
	"testing"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/stow"
	"scantling/internal/unit"
)

// sized evaluates contents with named sizes and returns them as they would be
// shown: millimetres, counts, grams.
func sized(t *testing.T, body string) map[string]string {
	t.Helper()
	r := Piece(Sources{Document: text("holds.piece.hcl", "scantling = 1\n\npiece \"Holds\" {\n}\n\n"+body)})
	if len(r.Diagnostics) > 0 {
		tell(t, r.Diagnostics)
		t.Fatal("diagnostics")
	}
	verify(t, r)
	out := map[string]string{}
	for _, n := range r.Piece.Sizes {
		out[n.Name] = strings.TrimRight(strings.TrimRight(n.Value.Number().FloatString(4), "0"), ".")
		if l, ok := n.Value.Length(); ok {
			out[n.Name] = fmt.Sprint(l.Round(unit.Micrometre, unit.Nearest).Millimetres())
		}
	}
	return out
}

func want(t *testing.T, got map[string]string, pairs ...string) {
	t.Helper()
	for i := 0; i < len(pairs); i += 2 {
		if got[pairs[i]] != pairs[i+1] {
			t.Errorf("%s is %s, want %s", pairs[i], got[pairs[i]], pairs[i+1])
		}
	}
}

// TestGougeTray: seven gouges with octagonal handles. By hand: 25 across corners
// and 13 for a finger are a pitch of 38; 262 and 8 of play are 270 long; 8 deep in
// a 25.4 channel the mouth is 2 sqrt(8 · 17.4) = 23.597 and the land 14.403; the
// flats are 25 cos 22.5° = 23.097; with 1 of felt a cutter of 25 + 2 + 0.4 is
// needed, and in the 25.4 one it sinks 6.062.
func TestGougeTray(t *testing.T) {
	got := sized(t, `
contents "gouges" {
  rod    = 25
  sides  = 8
  each   = 7
  length = 262
  play   = 8
  finger = 13
  lining = 1
  mass   = "210 g"
}

sizes {
  pitch   = contents.gouges.pitch
  place   = contents.gouges.place
  flats   = contents.gouges.flats
  corners = contents.gouges.corners
  round   = contents.gouges.round
  mouth   = mouth(25.4, 8)
  land    = pitch - mouth
  sunk    = sinks(25.4, 8, contents.gouges.corners)
  felt    = sinks(25.4, 8, contents.gouges.corners, contents.gouges.lining)
  proud   = contents.gouges.corners - sunk
  wide    = (contents.gouges.count - 1) * pitch + 50
  heavy   = contents.gouges.count * contents.gouges.mass
}
`)
	want(t, got, "pitch", "38", "place", "270", "flats", "23.097", "corners", "25", "round", "27.4", "mouth", "23.597", "land", "14.403",
		"sunk", "8", "felt", "6.062", "proud", "17", "wide", "278", "heavy", "1470")
	// The same handles, measured across their flats.
	got = sized(t, "contents \"gouges\" {\n  rod = \"23.097 mm\"\n  sides = 8\n  across = \"flats\"\n  length = 262\n}\n\nsizes {\n  corners = contents.gouges.corners\n}\n")
	want(t, got, "corners", "25")
}

const bottles = `
contents "bottles" {
  kind         = "bottle"
  count        = 24
  diameter     = 25
  tall         = 58
  shoulder     = 45
  cap          = 20
  play         = 2
  lining       = 2
  above        = 1
  columns      = 6
  rows         = 4
  divider      = 5
  divider_high = 38
  around       = 0.5
  lid          = { arm = 134, rim = 40, back = 10 }
}
`

// TestBottleBox: 24 bottles in an egg-crate. By hand: cells of 25 + 2 = 27;
// 6 · 27 + 5 · 5 + 1 = 188 by 4 · 27 + 3 · 5 + 1 = 124; 2 + 58 + 1 = 61 high;
// slots 27 + 2.5 = 29.5 from a divider's end and every 32; 58 - 38 = 20 stand out;
// over the rim of 40, 20 too, where the lid passes at sqrt(134² - 20²) = 132.499.
func TestBottleBox(t *testing.T) {
	got := sized(t, bottles+`
sizes {
  wide  = contents.bottles.wide
  deep  = contents.bottles.deep
  high  = contents.bottles.high
  slot  = contents.bottles.cell_wide + contents.bottles.divider / 2
  pitch = contents.bottles.pitch_wide
  proud = contents.bottles.proud
  slots = 2 * (contents.bottles.columns - 1) * (contents.bottles.rows - 1)
  free  = contents.bottles.free
  pass  = swing(134, contents.bottles.tall + contents.bottles.lining - 40)
  sawn  = high + 2 * (5 + 5.6) + 3
  first = contents.bottles.slot_first_deep
  width = contents.bottles.slot_width
  depth = contents.bottles.slot_depth
  cuts  = contents.bottles.slots
}
`)
	want(t, got, "first", "29.5", "width", "5.2", "depth", "19.5", "cuts", "30", "wide", "188", "deep", "124", "high", "61", "slot", "29.5", "pitch", "32", "proud", "20", "slots", "30", "free", "0", "pass", "132.499", "sawn", "85.2")
	r := Piece(Sources{Document: text("b", "scantling = 1\n\npiece \"B\" {\n}\n"+bottles)})
	c := r.Piece.Contents[0]
	for axis, want := range []string{"things 6 × 25, play 6 × 2, dividers 5 × 5, around 2 × 0.5", "things 4 × 25, play 4 × 2, dividers 3 × 5, around 2 × 0.5", "lining 1 × 2, things 1 × 58, above 1 × 1"} {
		var terms []string
		for _, a := range c.Lot.Sums[axis] {
			terms = append(terms, fmt.Sprintf("%s %d × %v", a.Word, a.Times, a.Each.Nm.Millimetres()))
			if a.Figure.Nm != unit.Length(a.Times)*a.Each.Nm {
				t.Errorf("%+v", a)
			}
		}
		if got := strings.Join(terms, ", "); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}

// TestSpiceJars: 96 jars dealt out to four drawers. By hand: 24 each, 6 · 46 + 4 =
// 280 by 4 · 46 + 4 = 188; 96 + 3 over the caps; 24 · 0.16 = 3.84 kg a drawer.
func TestSpiceJars(t *testing.T) {
	got := sized(t, `
contents "jars" {
  kind     = "jar"
  count    = 96
  among    = 4
  diameter = 44
  tall     = 96
  play     = 2
  above    = 3
  around   = 2
  columns  = 6
  mass     = "0.16 kg"
}

sizes {
  wide   = contents.jars.wide
  deep   = contents.jars.deep
  high   = contents.jars.high
  rows   = contents.jars.rows
  places = contents.jars.places
  load   = contents.jars.load
  side   = round_up(8 + 5.6 + high, 2)
}
`)
	want(t, got, "wide", "280", "deep", "188", "high", "99", "rows", "4", "places", "24", "load", "3840", "side", "114")
}

// TestRecordRack: 300 records, 62 of them 248 thick, and 30 % more, with 5 % to
// flip through, in four bays. By hand: 390 of 4 are 1560, 4.2 each 1638; a bay
// holds 98, which are 411.6; by the table a record weighs 230 g.
func TestRecordRack(t *testing.T) {
	got := sized(t, `
contents "records" {
  like   = "12 in record"
  thick  = 248 / 62
  count  = 300
  growth = "30 %"
  among  = 4
  flip   = 0.05
  above  = 15
}

sizes {
  long   = contents.records.long
  wide   = contents.records.wide
  deep   = contents.records.deep
  high   = contents.records.high
  places = contents.records.places
  free   = contents.records.free
  bay    = contents.records.wide + 4.6
  holds  = 4 * floor(bay / contents.records.cell_wide)
  mass   = contents.records.mass
}
`)
	want(t, got, "wide", "411.6", "deep", "315", "high", "330", "places", "98", "free", "92", "holds", "396", "mass", "230", "long", "1638")
}

// TestCutlery: bays that need 70, 75, 85 and 130 in 402. By hand: 42 are spare,
// 10.5 each; and a server of 260 with 10 for the finger.
func TestCutlery(t *testing.T) {
	got := sized(t, `
sizes {
  bays  = spread([70, 75, 85, 130], 442 - 2 * 8 - 3 * 8)
  first = bays[1]
  last  = bays[4]
  all   = sum(bays)
}
`)
	want(t, got, "first", "80.5", "last", "140.5", "all", "402")
}

// TestCoins: 60 coins of 25.75 by 2.2 on each other in stacks of ten, two rows of
// three. By hand: cells of 26.75; 3 · 26.75 = 80.25 by 53.5, 22 high.
func TestCoins(t *testing.T) {
	got := sized(t, `
contents "coins" {
  kind     = "coin"
  diameter = 25.75
  thick    = 2.2
  count    = 60
  stack    = 10
  rows     = 2
  play     = 1
}

contents "tablet" {
  kind   = "box"
  count  = 1
  size   = [250, 180, 8]
  finger = 20
}

sizes {
  wide    = contents.coins.wide
  deep    = contents.coins.deep
  high    = contents.coins.high
  columns = contents.coins.columns
  tablet  = contents.tablet.deep
}
`)
	want(t, got, "wide", "80.25", "deep", "53.5", "high", "22", "columns", "3", "tablet", "200")
}

// TestContentsFaults: what cannot be is told once, with its code.
func TestContentsFaults(t *testing.T) {
	jar := "kind = \"jar\"\n  diameter = 44\n  tall = 96\n  count = 4\n  "
	for name, c := range map[string]struct {
		body string
		code diag.Code
	}{
		"sides":          {"rod = 25\n  sides = 7\n  length = 20", "share.prism-sides"},
		"below nought":   {jar + "play = 0 - 1", "figure.length-range"},
		"beyond 10 m":    {jar + "above = \"11 m\"", "figure.length-range"},
		"too many":       {strings.Replace(jar, "count = 4", "count = 100000", 1), formula.CodeCountRange},
		"no count":       {"kind = \"jar\"\n  diameter = 44\n  tall = 96", formula.CodeMissing},
		"nought across":  {"kind = \"jar\"\n  diameter = 0\n  tall = 96\n  count = 4", formula.CodeNotPositive},
		"unknown kind":   {"kind = \"jarr\"\n  count = 4", formula.CodeUnknownWord},
		"growth":         {"kind = \"coin\"\n  diameter = 20\n  thick = 2\n  count = 4\n  growth = 5000", "share.growth"},
		"negative mass":  {jar + "mass = \"-3 g\"", stow.CodeQuantity},
		"lid's fields":   {jar + "lid = { arm = 3, rims = 2, back = 1 }", formula.CodeUnknownField},
		"lid of nothing": {jar + "lid = { arm = 3 }", formula.CodeMissing},
		"not a lid":      {jar + "lid = 5", formula.CodeWrongKind},
		"across":         {"rod = 5\n  sides = 8\n  across = \"sides\"\n  length = 9", formula.CodeUnknownWord},
		"runs":           {"kind = \"sheet\"\n  size = [5, 6]\n  thick = 1\n  count = 2\n  runs = \"up\"", formula.CodeUnknownWord},
		"not a list":     {"kind = \"box\"\n  size = 5\n  count = 2", stow.CodeSizes},
		"in no space":    {jar + "in = material.none", "unknown-name"},
	} {
		r := Piece(Sources{Document: text(name, "scantling = 1\n\npiece \"P\" {\n}\n\ncontents \"x\" {\n  "+c.body+"\n}\n\nsizes {\n  a = contents.x.play\n}\n")})
		if len(r.Diagnostics) != 1 || r.Diagnostics[0].Code != c.code && r.Diagnostics[0].Text.Key != string(c.code) {
			t.Errorf("%s: want %s", name, c.code)
			tell(t, r.Diagnostics)
		}
		verify(t, r)
	}
}

// TestShareOfLots: only rods are shared out one by one.
func TestShareOfLots(t *testing.T) {
	r := Piece(Sources{Document: text("x", "scantling = 1\n\npiece \"P\" {\n}\n"+bottles+"\nsizes {\n  a = share(contents.bottles, 2)\n}\n")})
	if len(r.Diagnostics) != 1 || r.Diagnostics[0].Code != formula.CodeWrongKind {
		tell(t, r.Diagnostics)
		t.Error("a lot is shared out")
	}
}

// TestUsual: every usual thing can be likened to, and says where its sizes are from.
func TestUsual(t *testing.T) {
	for _, u := range stow.Usuals() {
		r := Piece(Sources{Document: text("u", fmt.Sprintf("scantling = 1\n\npiece \"P\" {\n}\n\ncontents \"x\" {\n  like = %q\n  count = 3\n}\n", u.Name))})
		if len(r.Diagnostics) > 0 || len(r.Piece.Contents) != 1 || r.Piece.Contents[0].Status == "" || r.Piece.Contents[0].From != u.Name {
			t.Errorf("%s: %+v", u.Name, r.Piece.Contents)
			tell(t, r.Diagnostics)
		}
		verify(t, r)
	}
}

// FuzzContents changes contents blocks and shops' glues: evaluation ends, does not
// panic, and the ledger's law holds.
func FuzzContents(f *testing.F) {
	for _, body := range []string{
		bottles,
		"\ncontents \"gouges\" {\n  rod = [25, 20]\n  sides = 8\n  across = \"flats\"\n  each = 7\n  length = 262\n  lining = 1\n  head = { diameter = 30, length = 5 }\n  mass = \"2 lb 3 oz\"\n}\n\nsizes {\n  a = contents.gouges.round\n  b = contents.gouges.pitch\n  c = spread([contents.gouges.flats, 5], 90)\n  d = sinks(25.4, 8, contents.gouges.corners, 1)\n}\n",
		"\ncontents \"r\" {\n  like = \"12 in record\"\n  count = 300\n  growth = \"30 %\"\n  spare = 3\n  among = 4\n  flip = 0.05\n  runs = \"back\"\n}\n\nsizes {\n  a = contents.r.long\n  b = contents.r.load\n  c = swing(contents.r.high, 20)\n  d = mouth(contents.r.cell_deep, 2)\n}\n",
		"\ncontents \"c\" {\n  kind = \"coin\"\n  diameter = 20\n  thick = 2\n  count = 4096\n  columns = 4096\n  rows = 4096\n  stack = 4096\n}\n\nsizes {\n  a = contents.c.wide\n}\n",
	} {
		f.Add([]byte("scantling = 1\n\npiece \"P\" {\n}\n" + body))
	}
	f.Fuzz(func(t *testing.T, doc []byte) {
		if len(doc) > 1<<13 {
			return
		}
		r := Piece(Sources{Document: document.Source{Name: "x", Text: doc}, Limits: Limits{Formulas: 5000, Parts: 200, Chain: 100, Pairs: 1000, Faults: 20}})
		for _, d := range r.Ledger.Verify() {
			t.Fatal(d)
		}
		for _, c := range r.Piece.Contents {
			if c.Lot == nil {
				continue
			}
			for axis := range 3 {
				sum := unit.Length(0)
				for _, a := range c.Lot.Sums[axis] {
					sum += a.Figure.Nm
				}
				if d := sum - c.Lot.Needs[axis].Nm; d < -8 || d > 8 { // a flip of a part of a nanometre is rounded in each
					t.Fatalf("%s: %v and %v", c.Address, sum, c.Lot.Needs[axis].Nm)
				}
			}
			if c.Lot.Columns < 1 || c.Lot.Rows < 1 || c.Lot.Places()*max(1, c.Among) < c.Count {
				t.Fatalf("%s: %+v", c.Address, c.Lot)
			}
		}
	})
}
