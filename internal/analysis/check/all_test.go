package check_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"scantling/internal/analysis"
	"scantling/internal/analysis/check"
	"scantling/internal/analysis/check/checktest"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
)

// TestAll: all are checks, and have a help that does not begin with a package
// clause's word.
func TestAll(t *testing.T) {
	names := map[string]bool{}
	for _, a := range check.All() {
		info := a.Info()
		if _, ok := a.(analysis.Check); !ok || info.Kind != analysis.Judge {
			t.Errorf("%s is no check", info.Name)
		}
		if names[info.Name] {
			t.Errorf("%s stands twice", info.Name)
		}
		names[info.Name] = true
		if strings.HasPrefix(info.Doc, "Package") || strings.Contains(info.Doc, "//") || len(info.Doc) < 20 {
			t.Errorf("%s: help %q", info.Name, info.Doc)
		}
	}
}

// TestGoodChest: a good piece passes all of them, each once; that of the stock,
// which waits for cutting diagrams, has its own test on less wood.
func TestGoodChest(t *testing.T) {
	for _, a := range check.All() {
		c := a.(analysis.Check)
		if c.Info().Name == "stock" {
			continue
		}
		s := checktest.Shop()
		s.Boards[0].Moisture = 9 // read, as of every board that is machined on one face
		for _, f := range checktest.Run(t, checktest.Chest(), s, c) {
			if f.Status != plan.Pass || f.Check != c.Info().Name {
				t.Errorf("%s: %s %s %s %v", c.Info().Name, f.Status, f.Code, f.Address, f.Text)
			}
		}
	}
}

// TestIdle: what a piece has none of is not called right. Of one wide board, without a
// joint, a cut or a purpose, only what is asked of every board is right; of the chest all
// that it has any of.
func TestIdle(t *testing.T) {
	one := func() *trial.Builder {
		b := trial.New()
		b.Part("board", trial.GrainRight, 0, 6000, 0, 1500, 0, 200)
		checktest.Materials(b)
		return b
	}
	for _, x := range []struct {
		name  string
		make  func() *trial.Builder
		named []string
		idle  bool // of those that are named
	}{
		{"board", one, []string{"glue joint", "limits", "short grain", "supplies"}, false},
		{"chest", checktest.Chest, []string{"blind", "bow", "cases", "exposed", "finishing", "joints", "lids", "panel room", "pulls", "reading", "require", "row sums", "twins"}, true},
	} {
		for _, a := range check.All() {
			name := a.Info().Name
			if name == "stock" {
				continue
			}
			s := checktest.Shop()
			s.Boards[0].Moisture = 9
			for _, f := range checktest.Run(t, x.make(), s, a.(analysis.Check)) {
				if f.Status == plan.Pass && (f.Idle != "") == (slices.Contains(x.named, name) != x.idle) {
					t.Errorf("%s: %s: idle is %q", x.name, name, f.Idle)
				}
			}
		}
	}
}

// TestSameAgain: the same piece gives the same findings, in the same order.
func TestSameAgain(t *testing.T) {
	for _, a := range check.All() {
		c := a.(analysis.Check)
		if c.Info().Name == "stock" {
			continue
		}
		bad := func() []plan.Finding {
			b := checktest.Chest()
			b.Piece.Measures, b.Piece.Hardware, b.Piece.Series[0].Terms = nil, nil, nil
			b.Piece.Materials[0].Species = "unobtainium"
			return checktest.Run(t, b, checktest.Shop(), c)
		}
		first, again := bad(), bad()
		if len(first) != len(again) {
			t.Fatalf("%s: %d findings, then %d", c.Info().Name, len(first), len(again))
		}
		for i := range first {
			if first[i].Code != again[i].Code || first[i].Address != again[i].Address || !slices.Equal(first[i].Marks, again[i].Marks) {
				t.Errorf("%s: %v, then %v", c.Info().Name, first[i], again[i])
			}
		}
	}
}

// TestFolders: every folder with an analysis is in the list, and every code has
// an example in its comment and stands once.
func TestFolders(t *testing.T) {
	set := token.NewFileSet()
	codes, folders := map[string]string{}, map[string]bool{}
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(set, path, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		for _, decl := range f.Decls {
			g, ok := decl.(*ast.GenDecl)
			if !ok {
				continue
			}
			for _, s := range g.Specs {
				v, ok := s.(*ast.ValueSpec)
				if !ok || len(v.Names) == 0 {
					continue
				}
				if g.Tok == token.VAR && v.Names[0].Name == "Analysis" {
					folders[filepath.Dir(path)] = true
				}
				if g.Tok != token.CONST || !strings.HasPrefix(v.Names[0].Name, "Code") {
					continue
				}
				doc := v.Doc.Text() + g.Doc.Text()
				if !strings.Contains(doc, "Example:") {
					t.Errorf("%s: %s has no example", path, v.Names[0].Name)
				}
				code, _ := strconv.Unquote(v.Values[0].(*ast.BasicLit).Value)
				if other, twice := codes[code]; twice {
					t.Errorf("%s: code %q stands in %s, too", path, code, other)
				}
				codes[code] = path
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(folders) != len(check.All()) {
		t.Errorf("%d folders have an analysis, the list has %d", len(folders), len(check.All()))
	}
	if len(codes) < 40 {
		t.Errorf("only %d codes", len(codes))
	}
}

// BenchmarkChecks runs all checks but that of the stock, which waits for the
// cutting diagrams, on the chest.
func BenchmarkChecks(b *testing.B) {
	for _, a := range check.All() {
		if a.Info().Name == "stock" {
			continue
		}
		b.Run(a.Info().Name, func(b *testing.B) {
			for b.Loop() {
				checktest.Run(b, checktest.Chest(), checktest.Shop(), a.(analysis.Check))
			}
		})
	}
}
