package holds_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/holds"
	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/evaluate"
	"scantling/internal/message"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/unit"
	"scantling/internal/words"
)

// box is a piece with a space of the sizes wide, deep, high and what stands in it.
const box = `scantling = 1

piece "Box" {
}

sizes {
  wide = WIDE
  deep = DEEP
  high = HIGH
}

space "inside" {
  left   = 0
  wide   = sizes.wide
  front  = 0
  deep   = sizes.deep
  bottom = 0
  high   = sizes.high
}
`

func boxOf(wide, deep, high, contents string) string {
	return strings.NewReplacer("WIDE", wide, "DEEP", deep, "HIGH", high).Replace(box) + contents
}

// judge evaluates a document and runs the check; the findings are held against
// their words.
func judge(t *testing.T, text string) []plan.Finding {
	t.Helper()
	r := evaluate.Piece(evaluate.Sources{Document: document.Source{Name: "box.piece.hcl", Text: []byte(text)}})
	for _, d := range r.Diagnostics {
		t.Fatalf("line %d: %s %v", d.Where.Line, d.Code, d.Text)
	}
	found := checktest.Run(t, &trial.Builder{Piece: *r.Piece, Ledger: r.Ledger}, checktest.Shop(), holds.Analysis)
	said := words.New(words.English, words.British, unit.Show{}, "EUR")
	for _, f := range found {
		t.Log(said.Say(f.Text))
		for _, r := range f.Remedy {
			t.Log("  ", said.Say(r.Text))
		}
	}
	return found
}

// mend applies the first remedy with an edit.
func mend(t *testing.T, text string, found []plan.Finding) string {
	t.Helper()
	for _, f := range found {
		for _, r := range f.Remedy {
			if len(r.Edits) == 1 {
				e := r.Edits[0]
				return text[:e.Start] + e.New + text[e.End:]
			}
		}
	}
	t.Error("no remedy has an edit")
	return text
}

const jars = `
contents "jars" {
  kind     = "jar"
  count    = 24
  diameter = 44
  tall     = 96
  play     = 2
  above    = 3
  around   = 2
  columns  = 6
  in       = space.inside
}
`

// TestRoom: 24 jars of 44 by 96 need 6 · 46 + 4 = 280 by 4 · 46 + 4 = 188 and
// 96 + 3 = 99; a tenth less in any direction is too little, and what the remedy
// takes from the room around or above mends it, and nothing else does anything.
func TestRoom(t *testing.T) {
	checktest.Want(t, judge(t, boxOf("280", "188", "99", jars)), plan.Pass, holds.CodeHolds)
	for i, short := range [][3]string{{"279.9", "188", "99"}, {"280", "187.9", "99"}, {"280", "188", "98.9"}} {
		text := boxOf(short[0], short[1], short[2], jars)
		found := judge(t, text)
		f := checktest.Want(t, found, plan.Fail, holds.CodeTooLarge)[0]
		want := []int64{280, 188, 99}[i]
		if f.Severity != diag.Error || f.Is.Nm != unit.MM(want) || f.Limit.Nm != unit.MM(want)-unit.Millimetre/10 {
			t.Errorf("%v: %v against %v", short, f.Is.Nm, f.Limit.Nm)
		}
		checktest.Want(t, judge(t, mend(t, text, found)), plan.Pass, holds.CodeHolds)
	}
	// Five columns go in where the sixth does not.
	f := checktest.Want(t, judge(t, boxOf("240", "188", "99", jars)), plan.Fail, holds.CodeTooLarge)[0]
	if !slices.ContainsFunc(f.Remedy, func(r diag.Remedy) bool {
		return r.Text.Key == "check.holds.fewer" && r.Text.Args[1].N == 5 && r.Text.Args[2].N == 20
	}) {
		t.Errorf("%+v", f.Remedy)
	}
	checktest.Want(t, judge(t, boxOf("280", "188", "99", strings.Replace(jars, "  in       = space.inside\n", "", 1))), plan.Unknown, holds.CodeNowhere)
}

// TestBeside: a tablet of 250 by 180 by 8 and a case of 165 by 65 by 45 stand
// behind each other in 270: 180 + 65 = 245; in 244 they do not, nor on each other
// in 52, for 8 + 45 are 53.
func TestBeside(t *testing.T) {
	both := func(deep, high string) string {
		return boxOf("288", deep, high, `
contents "tablet" {
  kind  = "box"
  count = 1
  size  = [250, 180, 8]
  in    = space.inside
}

contents "spectacles" {
  kind  = "box"
  count = 1
  size  = [165, 65, 45]
  in    = space.inside
}
`)
	}
	checktest.Want(t, judge(t, both("270", "67")), plan.Pass, holds.CodeHolds)
	checktest.Want(t, judge(t, both("245", "45")), plan.Pass, holds.CodeHolds)
	checktest.Want(t, judge(t, both("181", "53")), plan.Pass, holds.CodeHolds)
	f := checktest.Want(t, judge(t, both("244", "52")), plan.Fail, holds.CodeTooLarge)[0]
	if got := f.Is.Nm - f.Limit.Nm; got != unit.MM(1) {
		t.Errorf("%v too much", got)
	}
}

// TestPasses: the tablet goes through an opening of 200 by 180, flat, and not
// through 179 by 200 ... but turned: its least sizes are 8 and 180.
func TestPasses(t *testing.T) {
	through := func(wide, high string) string {
		return boxOf("300", "300", "20", `
space "door" {
  left   = 0
  wide   = `+wide+`
  front  = 0
  deep   = 20
  bottom = 0
  high   = `+high+`
}

contents "tablet" {
  kind    = "box"
  count   = 1
  size    = [250, 180, 8]
  in      = space.inside
  through = space.door
}
`)
	}
	checktest.Want(t, judge(t, through("180", "200")), plan.Pass, holds.CodeHolds)
	checktest.Want(t, judge(t, through("200", "180")), plan.Pass, holds.CodeHolds)
	f := checktest.Want(t, judge(t, through("179.5", "150")), plan.Fail, holds.CodePasses)[0]
	if f.Is.Nm != unit.MM(180) || f.Limit.Nm != unit.Millimetre*1795/10 {
		t.Errorf("%v against %v", f.Is.Nm, f.Limit.Nm)
	}
}

func bottles(high, shoulder, cap, arm string) string {
	return boxOf("188", "124", "61", `
contents "bottles" {
  kind         = "bottle"
  count        = 24
  diameter     = 25
  tall         = 58
  shoulder     = `+shoulder+`
  cap          = `+cap+`
  play         = 2
  lining       = 2
  above        = 1
  columns      = 6
  divider      = 5
  divider_high = `+high+`
  around       = 0.5
  lid          = { arm = `+arm+`, rim = 40, back = 10 }
  in           = space.inside
}
`)
}

// TestLid: by hand, the front row's centre lies 10 + 0.5 + 3 · 32 + 13.5 = 120
// from the hinge line. A cap of 20 reaches 131 with its play, 20 over the rim, and
// the lid passes at sqrt(134² - 20²) = 132.499: a cap of 22.9 reaches 132.45 and is
// clear, one of 23.1 reaches 132.55 and is struck. A shoulder reaches 133.5 and may
// stand sqrt(134² - 133.5²) = 11.56 over the rim: 49.5 goes, 49.6 does not.
func TestLid(t *testing.T) {
	checktest.Want(t, judge(t, bottles("38", "45", "20", "134")), plan.Pass, holds.CodeHolds)
	checktest.Want(t, judge(t, bottles("38", "49.5", "22.9", "134")), plan.Pass, holds.CodeHolds)
	f := checktest.Want(t, judge(t, bottles("38", "49.5", "23.1", "134")), plan.Fail, holds.CodeLid)[0]
	if f.Is.Nm != unit.Millimetre*13255/100 || f.Limit.Nm.Round(unit.Micrometre, unit.Nearest) != unit.Micrometre*132499 {
		t.Errorf("%v against %v", f.Is.Nm, f.Limit.Nm)
	}
	checktest.Want(t, judge(t, bottles("38", "49.6", "20", "134")), plan.Fail, holds.CodeLid)
}

// TestGrip: of bottles of 58 between dividers of 43, 15 stand out, which is just
// enough; of 43.1 it is not, and the remedy makes them 43.
func TestGrip(t *testing.T) {
	checktest.Want(t, judge(t, bottles("43", "45", "20", "134")), plan.Pass, holds.CodeHolds)
	text := bottles("43.1", "45", "20", "134")
	found := judge(t, text)
	checktest.Want(t, found, plan.Fail, holds.CodeGrip)
	checktest.Want(t, judge(t, mend(t, text, found)), plan.Pass, holds.CodeHolds)
}

// TestUsual: sizes from the table are told as such, with their status.
func TestUsual(t *testing.T) {
	f := checktest.Want(t, judge(t, boxOf("500", "500", "120", "\ncontents \"jars\" {\n  like  = \"spice jar\"\n  count = 4\n  in    = space.inside\n}\n")), plan.Fail, holds.CodeUsual)[0]
	if f.Severity != diag.Note || !strings.Contains(f.Source, "memory") {
		t.Errorf("%+v", f)
	}
}

// tray has seven gouges in channels of a 25.4 cutter.
func tray(pitch, finger, lining string) string {
	return `scantling = 1

piece "Tray" {
}

contents "gouges" {
  rod    = 25
  sides  = 8
  each   = 3
  length = 262
  finger = ` + finger + `
  lining = ` + lining + `
}

material "tray" {
  asks      = "black cherry board"
  thickness = 19
}

part "tray" {
  of     = material.tray
  grain  = "back"
  left   = 0
  wide   = 140
  front  = 0
  deep   = 320
  bottom = 0
}

series "channel" {
  kind  = "channel"
  on    = part.tray
  side  = "top"
  runs  = "back"
  holds = contents.gouges
  pitch = ` + pitch + `
}
`
}

// gouges judges the tray in a shop with a 25.4 round-nose cutter.
func gouges(t *testing.T, text string) []plan.Finding {
	t.Helper()
	shop := "scantling = 1\n\nshop \"S\" {\n}\n\nboard \"cherry\" {\n  species = \"black cherry\"\n  length = 2400\n  width = 165\n  thickness = 27\n  count = 1\n}\n\ncutter \"core box 25.4\" {\n  kind = \"round nose\"\n  diameter = 25.4\n  cutting_length = 8\n}\n"
	r := evaluate.Piece(evaluate.Sources{Document: document.Source{Name: "tray.piece.hcl", Text: []byte(text)}, Shop: document.Source{Name: "s.shop.hcl", Text: []byte(shop)}})
	for _, d := range r.Diagnostics {
		t.Fatalf("line %d: %s %v", d.Where.Line, d.Code, d.Text)
	}
	return checktest.Run(t, &trial.Builder{Piece: *r.Piece, Ledger: r.Ledger}, r.Shop, holds.Analysis)
}

// TestFinger: handles of 25 at a pitch of 38 leave 13; at 37.9 a tenth is missing.
func TestFinger(t *testing.T) {
	checktest.Want(t, gouges(t, tray("38", "13", "0")), plan.Pass, holds.CodeHolds)
	for _, f := range checktest.Want(t, gouges(t, tray("37.9", "13", "0")), plan.Fail, holds.CodeFinger) {
		if f.Is.Nm != unit.Millimetre*129/10 || f.Limit.Nm != unit.MM(13) {
			t.Errorf("%v against %v", f.Is.Nm, f.Limit.Nm)
		}
	}
}

// TestLong: a gouge of 262 and 8 of play want 270 between the round ends: a channel
// whose bottom is flat for 270 takes it, one of 269.9 does not. By hand the mouth of
// the first is 270 and twice half a mouth of 23.597 long.
func TestLong(t *testing.T) {
	stopped := func(flat string) string {
		text := strings.Replace(tray("38", "13", "0"), "  finger = 13\n", "  finger = 13\n  play   = 8\n", 1)
		return strings.Replace(text, "  pitch = 38\n", "  pitch = 38\n  middle = 160\n  flat  = "+flat+"\n", 1)
	}
	checktest.Want(t, gouges(t, stopped("270")), plan.Pass, holds.CodeHolds)
	checktest.Want(t, gouges(t, stopped("contents.gouges.place")), plan.Pass, holds.CodeHolds)
	for _, f := range checktest.Want(t, gouges(t, stopped("269.9")), plan.Fail, holds.CodeLong) {
		if f.Is.Nm != unit.MM(270) || (f.Limit.Nm-unit.Millimetre*2699/10).Abs() > 2 {
			t.Errorf("%v against %v", f.Is.Nm, f.Limit.Nm)
		}
	}
}

// TestLining: with 1 of felt a handle of 25 wants 27 of a cutter: in the 25.4 it
// rides. With 0.2 it does not: 25.4 - 0.4 = 25.
func TestLining(t *testing.T) {
	checktest.Want(t, gouges(t, tray("38", "13", "0.2")), plan.Pass, holds.CodeHolds)
	f := checktest.Want(t, gouges(t, tray("38", "13", "1")), plan.Fail, holds.CodeLining)[0]
	if f.Limit.Nm != unit.Millimetre*234/10 || f.Is.Nm != unit.MM(25) {
		t.Errorf("%v against %v", f.Is.Nm, f.Limit.Nm)
	}
	i := slices.IndexFunc(f.Text.Args, func(a message.Arg) bool { return a.Name == "cutter" })
	if i < 0 || f.Text.Args[i].Nm != unit.Millimetre*274/10 {
		t.Errorf("%+v", f.Text.Args)
	}
}

func BenchmarkHolds(b *testing.B) {
	text := boxOf("280", "188", "99", jars)
	for i := range 50 {
		text += strings.Replace(jars, "\"jars\"", "\"jars"+strconv.Itoa(i)+"\"", 1)
	}
	r := evaluate.Piece(evaluate.Sources{Document: document.Source{Name: "box.piece.hcl", Text: []byte(text)}})
	for b.Loop() {
		checktest.Run(b, &trial.Builder{Piece: *r.Piece, Ledger: r.Ledger}, checktest.Shop(), holds.Analysis)
	}
}
