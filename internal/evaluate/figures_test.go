package evaluate

import (
	"reflect"
	"testing"

	"scantling/internal/ledger"
	"scantling/internal/unit"
)

// figuresOf walks a value and visits every figure in it.
func figuresOf(v reflect.Value, path string, visit func(path string, f ledger.Figure)) {
	if v.Type() == reflect.TypeFor[ledger.Figure]() {
		visit(path, v.Interface().(ledger.Figure))
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			figuresOf(v.Elem(), path, visit)
		}
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[unit.Value]() {
			return
		}
		for i := range v.NumField() {
			figuresOf(v.Field(i), path+"."+v.Type().Field(i).Name, visit)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			figuresOf(v.Index(i), path, visit)
		}
	}
}

// TestEveryFigureLeadsDown follows every figure of the demonstration piece down
// the ledger: it is what its entry says, and every leaf is written somewhere,
// measured, or a rule's or a table's.
func TestEveryFigureLeadsDown(t *testing.T) {
	r := Piece(example(t))
	l := r.Ledger
	good := map[ledger.ID]bool{}
	var walk func(id ledger.ID) bool
	walk = func(id ledger.ID) bool {
		if good[id] {
			return true
		}
		e, ok := l.Entry(id)
		if !ok {
			return false
		}
		if e.Op == ledger.OpGiven {
			good[id] = !e.Where.IsZero() || e.Source != "" || e.Name != "" || e.Origin == ledger.Derived
			if !good[id] {
				t.Errorf("leaf %d (%v, %s) comes from nowhere", id, e.Value, e.Origin)
			}
			return good[id]
		}
		for _, a := range e.Args {
			if !walk(a) {
				return false
			}
		}
		good[id] = true
		return true
	}
	n, zero := 0, 0
	figuresOf(reflect.ValueOf(r.Piece).Elem(), "", func(path string, f ledger.Figure) {
		if f == (ledger.Figure{}) {
			zero++ // what does not apply: a joint without stops, a square corner
			return
		}
		n++
		if got, ok := l.Value(f.Entry).Length(); !ok || got != f.Nm {
			t.Errorf("%s is %d, its entry %d says %d", path, f.Nm, f.Entry, got)
		}
		walk(f.Entry)
	})
	if n < 800 {
		t.Errorf("%d figures", n)
	}
	t.Logf("%d figures, %d that do not apply, %d entries", n, zero, len(l.Entries()))
	verify(t, r)
}

// TestChangeFollows changes one housing's depth in the document: the dividers
// that go in grow by twice the difference, and nothing else of the case does.
func TestChangeFollows(t *testing.T) {
	src := example(t)
	before := Piece(src)
	src.Document.Text = replaceOnce(t, src.Document.Text, "    stopped = { front = 8 }\n", "    stopped = { front = 8 }\n    depth   = 6\n")
	after := Piece(src)
	if len(after.Diagnostics) > 0 {
		tell(t, after.Diagnostics)
		t.FailNow()
	}
	for i, p := range before.Piece.Parts {
		want := p.Length.Nm
		if p.Name == "divider" {
			want += 2 * (6*mm - 4500*um)
		}
		if got := after.Piece.Parts[i].Length.Nm; got != want {
			t.Errorf("%s is %d long, not %d", p.Address, got, want)
		}
	}
}
