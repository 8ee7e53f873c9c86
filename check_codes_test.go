package scantling_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"scantling/internal/diag"
	"scantling/internal/outside"
	"scantling/tools/findingsdoc/reference"
)

// raisedInTests are the codes that no document of a check raises, with the test that
// does: the folder below internal/analysis, or "." for here, and its name. The test must
// name the code or its constant.
var raisedInTests = map[diag.Code]string{
	"lid-by-hand":                 ". TestBottleBox",
	"rehearsal-size":              "rehearsal TestSlips",
	"rehearsal-sum":               "rehearsal TestSlips",
	"thing-does-not-pass":         "check/holds TestPasses",
	"back-is-the-stop":            "check/stops TestStops",
	"bow-takes-the-room":          "check/bow TestRoom",
	"cup-not-known":               "check/cup TestUnknown",
	"cup-takes-the-room":          "check/cup TestRoom",
	"cut-before-measured":         "check/measured TestMeasured",
	"cut-cycle":                   "operations TestCutOrder",
	"cutter-name-unknown":         "check/cutter TestCutters",
	"cutter-not-in-shop":          "check/cutter TestCutters",
	"depth-unknown":               "check/backtoback TestBackToBack",
	"drawer-space-unknown":        "check/stops TestStops",
	"drawer-sticks":               "check/racking TestRacking",
	"fit-season-unknown":          "check/season TestUnknownWood",
	"fitting-collides":            "check/collision TestFittings",
	"front-in-the-way":            "check/fronts TestInTheWay",
	"fronts-not-known":            "check/fronts TestUnknownWood",
	"pull-too-flat":               "check/pulls TestPulls",
	"pull-without-room":           "check/pulls TestRoom",
	"front-below-scoop":           "check/grip TestBelow",
	"glued-across-the-grain":      "check/season TestCrossGrain",
	"grip-missing":                "check/grip TestScoop",
	"groove-for-nothing":          "check/hidden TestHidden",
	"lid-strikes":                 "check/holds TestLid",
	"lining-lifts":                "check/holds TestLining",
	"longer-than-channel":         "check/holds TestLong",
	"loose-part-binds":            "check/season TestTray",
	"loose-part-unknown":          "check/season TestUnknownWood",
	"machine-width-unknown":       "check/limits TestPanelWidthUnknown",
	"material-not-to-be-had":      "check/stock TestStock",
	"nailed-across-the-grain":     "check/season TestNailed",
	"no-room-behind":              "check/stops TestBehind",
	"no-room-for-a-finger":        "check/holds TestFinger",
	"no-stock":                    "blanks TestNoStock",
	"not-cut":                     "cutting TestTooLarge",
	"not-together":                "cutting TestTogether",
	"opening-measured-at-one-end": "check/measured TestMeasured",
	"part-by-nominal-size":        "check/nominal TestNominal",
	"rebate-not-made":             "check/pins TestUnknown",
	"rehearsal-cut":               "rehearsal TestSlips",
	"rehearsal-diagram":           "rehearsal TestDiagramsAreFed",
	"rehearsal-hold":              "rehearsal TestUnsafe",
	"rehearsal-machine":           "rehearsal TestDiagramsAreFed",
	"rehearsal-order":             "rehearsal TestSlips",
	"rehearsal-trapped":           "rehearsal TestUnsafe",
	"rod-lies-nowhere":            "check/cutter TestRods",
	"rod-lies-shallow":            "check/cutter TestRods",
	"rod-rides-on-edges":          "check/cutter TestRods",
	"room-behind-unknown":         "check/stops TestStops",
	"row-not-known":               "check/land TestUnknown",
	"rows-left-out":               "rows TestBound",
	"scoop-blocked":               "check/grip TestScoop",
	"scoop-too-narrow":            "check/grip TestScoop",
	"screwed-across-the-grain":    "check/season TestScrews",
	"short-grain-neck":            "check/shortgrain TestNeck",
	"short-grain-unknown":         "check/shortgrain TestNeck",
	"slots-too-short":             "check/season TestScrews",
	"step-not-placed":             "sequence TestOrder",
	"strip-joint-in-cut":          "check/gluejoint TestJoints",
	"strip-joints-unknown":        "check/gluejoint TestUnknown",
	"tongue-too-thin":             "check/backtoback TestWalls",
	"too-little-to-grip":          "check/holds TestGrip",
	"trapped-cut":                 "setups TestRecessesAlongAnEdge",
	"usual-sizes":                 "check/holds TestUsual",
	"wall-too-thin":               "check/backtoback TestWalls",
	"workpiece-too-long":          "check/limits TestLimits",
	"workpiece-too-short":         "check/limits TestSheet",
	"workpiece-too-thick":         "check/limits TestLimits",
	"workpieces-unknown":          "check/limits TestUnknown",
}

// notRaised are the codes that nothing raises, with the reason. None may be added without
// one.
var notRaised = map[diag.Code]string{
	"workpiece-too-wide":       "blanks and panels are laid out no wider than the machines take; only a stored plan could be wider",
	"rows-not-judged":          "only the bound on work leaves rows open, for pieces of many thousand parts",
	"panel-movement-not-known": "a wood whose movement nobody knows is an error of the document",
}

// TestEveryCodeIsRaised: every code that an analysis tells is raised by a document in
// testdata/checks, or by the test that the table names. A code without either, and
// without a reason, fails, and so does a reason that no longer holds.
func TestEveryCodeIsRaised(t *testing.T) {
	raised := raisedInDocuments(t)
	all, err := reference.Codes(outside.Root())
	if err != nil {
		t.Fatal(err)
	}
	known := map[diag.Code]bool{}
	for _, c := range all {
		known[c.Code] = true
		where := raisedInTests[c.Code]
		if notRaised[c.Code] != "" {
			if raised[c.Code] != "" {
				t.Errorf("%s is raised by %s: strike its reason", c.Code, raised[c.Code])
			}
			continue
		}
		if raised[c.Code] != "" && where == "" {
			continue
		}
		pkg, test, ok := strings.Cut(where, " ")
		switch {
		case where == "":
			t.Errorf("%s (%s.%s): no document and no test raises it", c.Code, c.Package, c.Name)
		case !ok || !mentions(t, pkg, test, c):
			t.Errorf("%s: %s does not name it", c.Code, where)
		}
	}
	for _, code := range slices.Sorted(maps.Keys(raisedInTests)) {
		if !known[code] {
			t.Errorf("%s: there is no such code", code)
		}
	}
	t.Logf("%d codes: %d raised in documents, %d by tests alone, %d by nothing", len(all), len(all)-len(raisedInTests)-len(notRaised), len(raisedInTests), len(notRaised))
}

// raisedInDocuments plans every document of the checks, and returns the first that
// raises each code.
func raisedInDocuments(t *testing.T) map[diag.Code]string {
	t.Helper()
	folders, err := os.ReadDir(filepath.Join(outside.Root(), "testdata", "checks"))
	if err != nil {
		t.Fatal(err)
	}
	raised := map[diag.Code]string{}
	for _, folder := range folders {
		for _, name := range slices.Sorted(maps.Keys(checkFolder(t, folder.Name()))) {
			if !strings.HasSuffix(name, ".piece.hcl") || folder.Name() == "base" {
				continue
			}
			p := planNamed(t, checkWorld(t, folder.Name()), name, nil).Plan
			for _, f := range p.Findings {
				if raised[f.Code] == "" {
					raised[f.Code] = folder.Name() + "/" + name
				}
			}
			for _, d := range p.Diagnostics {
				if raised[d.Code] == "" {
					raised[d.Code] = folder.Name() + "/" + name
				}
			}
		}
	}
	return raised
}

// mentions reports whether a test of a package names a code, by its constant or as it is
// written, in its body or in a table that stands outside of it.
func mentions(t *testing.T, pkg, test string, c reference.Code) bool {
	t.Helper()
	dir := filepath.Join(outside.Root(), "internal", "analysis", filepath.FromSlash(pkg))
	if pkg == "." {
		dir = outside.Root()
	}
	files, err := filepath.Glob(filepath.Join(dir, "*_test.go"))
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		f, err := parser.ParseFile(token.NewFileSet(), file, text, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Recv == nil && fn.Name.Name == test {
				body := string(text[fn.Pos()-1 : fn.End()-1])
				return strings.Contains(body, `"`+string(c.Code)+`"`) || regexp.MustCompile(`\b`+c.Name+`\b`).MatchString(body)
			}
		}
	}
	return false
}
