package supplies_test

import (
	"strings"
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/supplies"
	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/evaluate"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	house "scantling/internal/shop"
	"scantling/internal/timber"
	"scantling/internal/unit"
	"scantling/internal/words"
)

const box = `scantling = 1

piece "Box" {
}

material "case" {
  asks      = "cherry board"
  thickness = 14
}

part "side" {
  of     = material.case
  grain  = "up"
  left   = 0
  front  = 0
  back   = 200
  bottom = 0
  high   = 120
  mirror = 300
}

part "shelf" {
  of     = material.case
  grain  = "right"
  left   = part.side.left.inside
  right  = part.side.right.inside
  front  = 0
  back   = 200
  bottom = 50
}

joint "shelf" {
  kind = "housing"
  of   = part.shelf
  into = part.side
  glue = "GLUE"
}

finish "outside" {
  kind = "FINISH"
  on   = [part.side]
}
`

const shop = `scantling = 1

shop "S" {
  temperature = DEGREES
  abrasives   = [80, 120, 180, 240]
}

board "cherry" {
  species   = "black cherry"
  length    = 2400
  width     = 165
  thickness = 27
  count     = 1
}

glue "winter glue" {
  like    = "pva"
  clamp   = "45 min"
  coldest = 3
}

finish "my oil" {
  like   = "danish oil"
  recoat = "4 h"
}
`

func judge(t *testing.T, glue, finish, degrees string) []plan.Finding {
	t.Helper()
	r := evaluate.Piece(evaluate.Sources{
		Document: document.Source{Name: "box.piece.hcl", Text: []byte(strings.NewReplacer("GLUE", glue, "FINISH", finish).Replace(box))},
		Shop:     document.Source{Name: "s.shop.hcl", Text: []byte(strings.Replace(shop, "DEGREES", degrees, 1))},
	})
	for _, d := range r.Diagnostics {
		t.Fatalf("line %d: %s %v", d.Where.Line, d.Code, d.Text)
	}
	if len(r.Shop.Glues) != 1 || len(r.Shop.Finishes) != 1 || len(r.Shop.Grits) != 4 || r.Shop.Glues[0].Clamp.Value != 45 || r.Shop.Glues[0].Clamp.Source.Status != "stated" || r.Shop.Glues[0].Cure.Value != 1440 ||
		r.Shop.Finishes[0].Recoat.Value != 240 || !r.Shop.Finishes[0].Rags {
		t.Errorf("%+v %+v %v", r.Shop.Glues, r.Shop.Finishes, r.Shop.Grits)
	}
	return checktest.Run(t, &trial.Builder{Piece: *r.Piece, Ledger: r.Ledger}, r.Shop, supplies.Analysis)
}

// TestAir: yellow glue wants 7 degrees, some say 4; the shop's own sets at 3. Danish
// oil wants 16 to 32.
func TestAir(t *testing.T) {
	right := func(glue, finish, degrees string) {
		t.Helper()
		checktest.Want(t, judge(t, glue, finish, degrees), plan.Pass, supplies.CodeRight)
	}
	wrong := func(severity diag.Severity, glue, finish, degrees string) {
		t.Helper()
		f := checktest.Want(t, judge(t, glue, finish, degrees), plan.Fail, supplies.CodeCold)[0]
		if f.Severity != severity || !strings.Contains(f.Source, "(read)") && !strings.Contains(f.Source, "(stated)") {
			t.Errorf("%s at %s: %s %s", glue, degrees, f.Severity, f.Source)
		}
	}
	right("pva", "shellac", "7")
	wrong(diag.Warning, "pva", "shellac", "6.9")
	wrong(diag.Error, "pva", "shellac", "3.9")
	right("winter glue", "wax", "3")
	wrong(diag.Error, "winter glue", "wax", "2.9")
	right("pva", "danish oil", "16")
	wrong(diag.Error, "pva", "my oil", "15.9")
	right("pva", "my oil", "32")
	wrong(diag.Error, "pva", "danish oil", "32.1")
}

// TestUnknown: what nobody knows is unknown, with what there is.
func TestUnknown(t *testing.T) {
	checktest.Want(t, judge(t, "fish", "shellac", "18"), plan.Unknown, supplies.CodeGlue)
	checktest.Want(t, judge(t, "pva", "soap", "18"), plan.Unknown, supplies.CodeFinish)
}

// TestNoShop: where the shop does not say how warm it is, nothing can be said of the air.
func TestNoShop(t *testing.T) {
	silent := checktest.Shop()
	silent.Climate = house.Climate{}
	checktest.Want(t, checktest.Run(t, checktest.Chest(), silent, supplies.Analysis), plan.Pass, supplies.CodeRight)
}

// TestPanelGlue: what a panel is glued up with must set in the shop's air too, though no
// joint is glued.
func TestPanelGlue(t *testing.T) {
	for degrees, want := range map[timber.Temperature]diag.Code{7: supplies.CodeRight, 3: supplies.CodeCold} {
		b := trial.New()
		b.Part("top", trial.GrainRight, 0, 6000, 0, 4000, 0, 200)
		checktest.Materials(b)
		s := checktest.Shop()
		s.Climate.Now = timber.Air{Temperature: degrees, Humidity: 50}
		got := checktest.Run(t, b, s, supplies.Analysis)
		if len(got) != 1 || got[0].Code != want || got[0].Idle != "" || want == supplies.CodeCold && got[0].Address != "top" {
			t.Errorf("at %v: %+v", degrees, got)
		}
	}
}

// TestAirInWords: of what one tin says there is one figure, of what sources differ in a
// range.
func TestAirInWords(t *testing.T) {
	say := words.New(words.English, words.British, unit.Show{}, "")
	for glue, want := range map[string]string{"winter glue": "Winter glue wants 3 °C at least", "pva": "Pva wants 7 (4 to 7) °C at least"} {
		f := judge(t, glue, "shellac", "2")
		if got := say.Say(f[0].Text); !strings.HasPrefix(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
