package words

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"scantling/internal/tool"
)

// use is a key that the product's sources ask for.
type use struct {
	key   string
	where string
	// args are the names of the arguments, if all are written out there.
	args      []string
	knowsArgs bool
}

// sources reads the product's Go sources and gathers every text literal, and
// every key in message.New, message.Word and Label of words.
func sources(t *testing.T, root string) (literals map[string]bool, uses []use) {
	t.Helper()
	literals = map[string]bool{}
	set := token.NewFileSet()
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			if name := d.Name(); name == "testdata" || name == "node_modules" || name == "dist" || len(name) > 2 && name[0] == '.' {
				return filepath.SkipDir
			}
			return nil
		}
		switch ext := filepath.Ext(path); {
		case ext == ".ts" || ext == ".svelte":
			text, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			for _, quoted := range strings.FieldsFunc(string(text), func(r rune) bool { return strings.ContainsRune("\"'`\n", r) }) {
				literals[quoted] = true
			}
			return nil
		case ext != ".go" || strings.HasSuffix(path, "_test.go"):
			return nil
		}
		f, err := parser.ParseFile(set, path, nil, parser.SkipObjectResolution)
		if err != nil {
			return nil // half-written: the compiler will say so
		}
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ImportSpec:
				return false
			case *ast.BasicLit:
				if s, ok := text(n); ok {
					literals[s] = true
				}
			case *ast.CallExpr:
				if u, ok := asks(n, knowsWords(f)); ok {
					u.where = set.Position(n.Pos()).String()
					uses = append(uses, u)
				}
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return literals, uses
}

func text(e ast.Expr) (string, bool) {
	lit, ok := e.(*ast.BasicLit)
	if !ok || lit.Kind != token.STRING {
		return "", false
	}
	s, err := strconv.Unquote(lit.Value)
	return s, err == nil
}

func knowsWords(f *ast.File) bool {
	return f.Name.Name == "words" || slices.ContainsFunc(f.Imports, func(i *ast.ImportSpec) bool {
		return i.Path.Value == `"scantling/internal/words"`
	})
}

// asks reads message.New("key", ...), message.Word("name", "key"), figure.Refuse and
// its remedies x.Or("key", ...), and, in files that import this package,
// x.Label("key", ...).
func asks(call *ast.CallExpr, words bool) (use, bool) {
	sel, ok := call.Fun.(*ast.SelectorExpr)
	if !ok {
		return use{}, false
	}
	from, _ := sel.X.(*ast.Ident)
	isMessage := from != nil && from.Name == "message"
	switch {
	case isMessage && sel.Sel.Name == "Word" && len(call.Args) == 2:
		key, ok := text(call.Args[1])
		return use{key: key}, ok
	case isMessage && sel.Sel.Name == "New" && len(call.Args) > 0, isRefusal(from, sel) && len(call.Args) > 0, words && sel.Sel.Name == "Label" && len(call.Args) > 0:
		key, ok := text(call.Args[0])
		u := use{key: key, knowsArgs: !call.Ellipsis.IsValid()}
		for _, arg := range call.Args[1:] {
			name, ok := argName(arg)
			u.args = append(u.args, name)
			u.knowsArgs = u.knowsArgs && ok
		}
		return u, ok
	}
	return use{}, false
}

// isRefusal reports whether it is figure.Refuse or a remedy of a refusal.
func isRefusal(from *ast.Ident, sel *ast.SelectorExpr) bool {
	return from != nil && from.Name == "figure" && sel.Sel.Name == "Refuse" || from == nil && sel.Sel.Name == "Or"
}

// argName returns the name in message.Length("name", ...).
func argName(e ast.Expr) (string, bool) {
	call, ok := e.(*ast.CallExpr)
	if !ok || len(call.Args) == 0 {
		return "", false
	}
	sel, ok := call.Fun.(*ast.SelectorExpr)
	if !ok {
		return "", false
	}
	if from, ok := sel.X.(*ast.Ident); !ok || from.Name != "message" {
		return "", false
	}
	return text(call.Args[0])
}

// TestCatalogue checks that the catalogue and the product's sources fit each
// other: every line can be read, every key that is used has an entry with no
// argument that the message lacks, and no entry stands unused.
func TestCatalogue(t *testing.T) {
	c := catalogues()
	for _, f := range c.faults {
		t.Error(f)
	}
	literals, uses := sources(t, filepath.Join("..", ".."))
	if len(literals) < 100 {
		t.Fatalf("only %d literals read", len(literals))
	}
	for _, u := range uses {
		entry, ok := c.british[u.key]
		if !ok {
			t.Errorf("%s: key %q has no entry", u.where, u.key)
		}
		entry.wants(func(name string) {
			if u.knowsArgs && !slices.Contains(u.args, name) {
				t.Errorf("%s: the text of %q wants {%s}, the message has %v", u.where, u.key, name, u.args)
			}
		})
	}
	for _, entries := range []map[string]template{c.british, c.american} {
		for key, text := range entries {
			text.refers(func(other string) {
				literals[other] = true
				if _, ok := entries[other]; !ok {
					t.Errorf("the text of %q holds {%s}, which has no entry", key, other)
				}
			})
		}
	}
	for _, key := range Keys() {
		built := slices.ContainsFunc(c.built, func(prefix string) bool { return strings.HasPrefix(key, prefix) })
		if !literals[key] && !built {
			t.Errorf("entry %q is used nowhere", key)
		}
	}
}

// The check itself: it sees keys, arguments and what it cannot know.
func TestSourcesAreRead(t *testing.T) {
	dir := t.TempDir()
	source := `package p
func f() { message.New("a-key", message.Length("is", 1), message.Word("w", "word.x")); message.New("b-key", args...); New("c") }`
	if err := os.WriteFile(filepath.Join(dir, "p.go"), []byte(source), 0o600); err != nil {
		t.Fatal(err)
	}
	literals, uses := sources(t, dir)
	if len(uses) != 3 || !literals["c"] {
		t.Fatalf("uses %v, literals %v", uses, literals)
	}
	if u := uses[0]; u.key != "a-key" || !u.knowsArgs || !slices.Equal(u.args, []string{"is", "w"}) {
		t.Errorf("got %+v", u)
	}
	if u := uses[1]; u.key != "word.x" {
		t.Errorf("got %+v", u)
	}
	if u := uses[2]; u.key != "b-key" || u.knowsArgs {
		t.Errorf("got %+v", u)
	}
}

// TestRefusalsOfMachines: what a machine says of work that it does not take is put
// together from the size and the side of the limit; each has an entry, and so has
// every refusal and remedy that the packages of the trade write out.
func TestRefusalsOfMachines(t *testing.T) {
	c := catalogues()
	seen := 0
	for _, d := range []tool.Dimension{tool.DimensionLength, tool.DimensionWidth, tool.DimensionThickness} {
		for _, short := range []bool{true, false} {
			m := tool.Excess{Machine: "saw", Dimension: d, Short: short, Got: 1, Limit: tool.Stated("x", 2)}.Message()
			entry, ok := c.british[m.Key]
			if !ok {
				t.Errorf("%q has no entry", m.Key)
			}
			entry.wants(func(name string) {
				if _, ok := m.Arg(name); !ok {
					t.Errorf("the text of %q wants {%s}", m.Key, name)
				}
				seen++
			})
		}
	}
	if seen < 6 {
		t.Errorf("only %d arguments seen", seen)
	}
	for _, dir := range []string{"tool", "stock", "hardware", "sundries"} {
		_, uses := sources(t, filepath.Join("..", dir))
		n := 0
		for _, u := range uses {
			if !strings.Contains(u.key, ".") {
				t.Errorf("%s: %q is no key", u.where, u.key)
			}
			if _, ok := c.british[u.key]; !ok && !strings.HasSuffix(u.key, "-") {
				t.Errorf("%s: %q has no entry", u.where, u.key)
			}
			n++
		}
		if n < 5 {
			t.Errorf("%s: only %d refusals read", dir, n)
		}
	}
}

// TestRanges: a range whose ends look alike is one figure, so sentences leave ranges to
// message.Range; the three texts that are put together after looking at both ends are
// the only ones that write them.
func TestRanges(t *testing.T) {
	for key, text := range catalogues().british {
		switch key {
		case "format.range", "grounds.range", "supply.range":
			continue
		}
		ends := 0
		text.wants(func(name string) {
			if name == "low" || name == "high" {
				ends++
			}
		})
		if ends == 2 && key != "check.reading.uneven" && key != "joint-shoulders" { // two sizes, no range
			t.Errorf("%s writes a range by hand", key)
		}
	}
}
