package evaluate

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"scantling/internal/diag"
	"scantling/internal/document"
)

// example returns the sources of the demonstration piece.
func example(t testing.TB) Sources {
	t.Helper()
	const folder = "../../examples/needle-chest"
	return Sources{Document: load(t, folder, "needle-chest.piece.hcl"), Shop: load(t, folder, "shop.hcl")}
}

func load(t testing.TB, folder, name string) document.Source {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(folder, name))
	if err != nil {
		t.Fatal(err)
	}
	return document.Source{Name: name, Text: text}
}

func tell(t testing.TB, ds diag.List) {
	t.Helper()
	for _, d := range ds {
		t.Logf("%s:%d:%d %s %+v", d.Where.File, d.Where.Line, d.Where.Column, d.Code, d.Text.Args)
	}
}

func TestExample(t *testing.T) {
	r := Piece(example(t))
	tell(t, r.Diagnostics)
	if len(r.Diagnostics) > 0 {
		t.Errorf("%d diagnostics", len(r.Diagnostics))
	}
	for _, n := range r.Piece.Sizes {
		t.Logf("%s = %v", n.Name, n.Value)
	}
	for _, p := range r.Piece.Parts {
		t.Logf("%-34s %8.2f x %8.2f x %6.2f  at %v %v %v", p.Address, p.Length.Nm.Millimetres(), p.Width.Nm.Millimetres(), p.Thickness.Nm.Millimetres(),
			p.Extent[0].Low.Nm.Millimetres(), p.Extent[1].Low.Nm.Millimetres(), p.Extent[2].Low.Nm.Millimetres())
	}
	t.Logf("%+v", r.Work)
	for _, d := range r.Ledger.Verify() {
		t.Error(d)
	}
}

func replaceOnce(t testing.TB, text []byte, old, new string) []byte {
	t.Helper()
	if n := bytes.Count(text, []byte(old)); n != 1 {
		t.Fatalf("%q stands %d times", old, n)
	}
	return bytes.Replace(text, []byte(old), []byte(new), 1)
}
