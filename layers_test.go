package scantling_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// layers lists every package of the module, lowest first. A package may import
// only packages of earlier lines: this table is the architecture. The root
// package is written ".".
const layers = `
internal/outside
internal/unit
internal/geom/vec internal/address
internal/message internal/optimise/problem internal/optimise/work
internal/diag internal/figure internal/font
internal/optimise/sawing internal/optimise/lp internal/optimise/ceiling
internal/optimise/cover internal/optimise/shortlist internal/optimise/beam internal/optimise/coarse internal/optimise/corner
internal/optimise/boards internal/optimise/sheets
internal/world internal/journal internal/page internal/scene internal/optimise
internal/optimise/problems internal/optimise/written internal/optimise/account
internal/optimise/conform internal/geom/polygon
internal/geom/solid
internal/geom/hidden
internal/ledger
internal/words internal/proportion internal/stock internal/tool internal/hardware internal/mechanics
internal/timber internal/share internal/typeset internal/write/svg internal/write/pdf internal/write/gltf internal/write/csv internal/write/html
internal/sundries
internal/shop internal/rules internal/accuracy
internal/piece
internal/piece/trial
internal/record internal/edit internal/recipe internal/document
internal/starter
internal/formula
internal/carve/direction internal/carve/fault internal/carve/line internal/carve/plane internal/carve/spacing
internal/carve/angle
internal/equip internal/carve internal/carve/assembled internal/fitting internal/stow
internal/plan
internal/joinery internal/evaluate internal/inplace internal/analysis/estimate
internal/shape
internal/analysis
internal/analysis/apart internal/analysis/turns internal/analysis/marks internal/analysis/contents internal/analysis/movement internal/analysis/rounding internal/analysis/rows internal/analysis/tolerance internal/analysis/strength
internal/analysis/stages
internal/analysis/blanks
internal/analysis/strips
internal/analysis/cutting
internal/analysis/supplies
internal/analysis/operations
internal/analysis/setups
internal/analysis/sequence
internal/analysis/cost
internal/analysis/rehearsal
internal/analysis/check/bodies internal/analysis/check/reach internal/analysis/check/verdict
internal/analysis/check/checktest internal/analysis/check/assembly internal/analysis/check/backtoback internal/analysis/check/bow internal/analysis/check/cases internal/analysis/check/collision internal/analysis/check/cup internal/analysis/check/cutter internal/analysis/check/exposed internal/analysis/check/finishing internal/analysis/check/fronts internal/analysis/check/pulls internal/analysis/check/rows internal/analysis/check/governed internal/analysis/check/panelroom internal/analysis/check/sag internal/analysis/check/tipping internal/analysis/check/twins internal/analysis/check/gluejoint internal/analysis/check/grip internal/analysis/check/hidden internal/analysis/check/holds internal/analysis/check/joints internal/analysis/check/land internal/analysis/check/lids internal/analysis/check/limits internal/analysis/check/measured internal/analysis/check/nominal internal/analysis/check/pins internal/analysis/check/racking internal/analysis/check/reading internal/analysis/check/require internal/analysis/check/season internal/analysis/check/shortgrain internal/analysis/check/blind internal/analysis/check/speeds internal/analysis/check/stock internal/analysis/check/stops internal/analysis/check/supplies
internal/analysis/check
internal/output/exploded internal/output/naming internal/output/sums internal/output/tape
internal/output/drawing internal/output/table internal/output/view3d
internal/output/booklet
internal/build
internal/propose
.
internal/surface/folder internal/surface/screen web
internal/surface/web
internal/surface/cli
cmd/scantling cmd/scantling-wasm
`

// forbid lists pairs "who: what": independence that the order alone does not
// give. A trailing slash means everything below.
const forbid = `
internal/analysis/rehearsal: internal/analysis/operations internal/analysis/setups internal/analysis/sequence internal/analysis/blanks internal/analysis/strips internal/analysis/cutting
internal/output/: internal/optimise internal/evaluate internal/document internal/joinery
internal/optimise/conform: internal/analysis/ internal/optimise internal/optimise/account internal/optimise/beam internal/optimise/boards internal/optimise/ceiling internal/optimise/coarse internal/optimise/corner internal/optimise/cover internal/optimise/lp internal/optimise/sawing internal/optimise/sheets internal/optimise/shortlist internal/optimise/work internal/optimise/written
internal/optimise/problems: internal/optimise internal/optimise/account internal/optimise/beam internal/optimise/boards internal/optimise/ceiling internal/optimise/coarse internal/optimise/corner internal/optimise/cover internal/optimise/lp internal/optimise/sawing internal/optimise/sheets internal/optimise/shortlist internal/optimise/work internal/optimise/written
internal/geom/: internal/piece internal/plan internal/timber
`

// foreign names the one place where each outside module, or each part of the
// standard library that touches the outside, may be used.
const foreign = `
github.com/hashicorp/hcl/v2: internal/document
github.com/zclconf/go-cty: internal/document
github.com/spf13/cobra: internal/surface/cli cmd/scantling
golang.org/x/text: internal/words
net/http: internal/surface/web
os: internal/outside internal/surface/folder internal/surface/cli internal/surface/web cmd/scantling cmd/scantling-wasm
time: internal/surface/folder internal/surface/cli internal/surface/web cmd/scantling cmd/scantling-wasm
`

const module = "scantling"

// TestLayers checks that every package has a layer and imports only downwards.
//
// It reads the sources itself rather than asking "go list", so that the go
// command's test cache sees which files the answer depends on.
func TestLayers(t *testing.T) {
	level := readLayers(t)
	forbidden, homes := readPairs(forbid), readPairs(foreign)
	packages := 0
	walkSources(t, func(pkg, path string, imports []string) {
		packages++
		from, ok := level[pkg]
		if !ok {
			t.Errorf("%s: package has no layer; add it to the table", pkg)
			return
		}
		for _, imp := range imports {
			if local, ok := localPackage(imp); ok {
				if to, ok := level[local]; ok && to >= from {
					t.Errorf("%s: %s (layer %d) imports %s (layer %d): imports must point down", path, pkg, from, local, to)
				}
				for who, whats := range forbidden {
					if covers(who, pkg) && anyCovers(whats, local) {
						t.Errorf("%s: %s must not know %s", path, pkg, local)
					}
				}
				continue
			}
			for mod, allowed := range homes {
				if (imp == mod || strings.HasPrefix(imp, mod+"/")) && !anyCovers(allowed, pkg) {
					t.Errorf("%s: only %v may import %s", path, allowed, imp)
				}
			}
		}
	})
	if packages == 0 {
		t.Fatal("no sources read")
	}
}

func readLayers(t *testing.T) map[string]int {
	t.Helper()
	level := map[string]int{}
	for i, line := range strings.Split(strings.TrimSpace(layers), "\n") {
		for p := range strings.FieldsSeq(line) {
			if _, twice := level[p]; twice {
				t.Errorf("%s stands twice in the layer table", p)
			}
			level[p] = i
		}
	}
	return level
}

func readPairs(table string) map[string][]string {
	pairs := map[string][]string{}
	for line := range strings.SplitSeq(strings.TrimSpace(table), "\n") {
		who, what, _ := strings.Cut(line, ":")
		pairs[who] = strings.Fields(what)
	}
	return pairs
}

// covers says whether the table entry names the package: exactly, or from
// above where the entry ends in a slash.
func covers(entry, pkg string) bool {
	return entry == pkg || (strings.HasSuffix(entry, "/") && strings.HasPrefix(pkg, entry))
}

func anyCovers(entries []string, pkg string) bool {
	for _, e := range entries {
		if covers(e, pkg) {
			return true
		}
	}
	return false
}

func localPackage(imp string) (string, bool) {
	if imp == module {
		return ".", true
	}
	return strings.CutPrefix(imp, module+"/")
}

// walkSources calls visit for every non-test source of the product.
func walkSources(t *testing.T, visit func(pkg, path string, imports []string)) {
	t.Helper()
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			switch name := d.Name(); {
			case name == "node_modules" || name == "testdata" || name == "tools":
				return filepath.SkipDir
			case len(name) > 1 && name[0] == '.':
				return filepath.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		var imports []string
		for _, spec := range f.Imports {
			imp, _ := strconv.Unquote(spec.Path.Value)
			imports = append(imports, imp)
		}
		visit(filepath.ToSlash(filepath.Dir(path)), path, imports)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
