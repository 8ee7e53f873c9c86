package edit

import (
	"bytes"
	"errors"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"scantling/internal/diag"
	"scantling/internal/journal"
	"scantling/internal/message"
	"scantling/internal/world"
)

const doc = "piece \"chest\" {\n  width = 380 # clear\n}\n"

func at(text, old, replacement string) diag.Edit {
	start := strings.Index(text, old)
	return diag.Edit{File: "a", Start: start, End: start + len(old), Old: old, New: replacement}
}

func stamped(edits ...diag.Edit) []diag.Edit { return Stamp([]byte(doc), edits) }

func TestApply(t *testing.T) {
	end := diag.Edit{File: "a", Start: len(doc), End: len(doc), New: "# end\n"}
	for _, c := range []struct {
		edits []diag.Edit
		want  string
	}{
		{nil, doc},
		{stamped(at(doc, "380", "381.4 mm")), strings.Replace(doc, "380", "381.4 mm", 1)},
		{stamped(end, at(doc, "380", "400"), at(doc, "chest", "box")), strings.NewReplacer("380", "400", "chest", "box").Replace(doc) + "# end\n"},
		{stamped(diag.Edit{File: "a", New: "one "}, diag.Edit{File: "a", New: "two "}, diag.Edit{File: "a", End: 5, Old: "piece"}), "one two " + doc[5:]},
	} {
		got, err := Apply([]byte(doc), c.edits...)
		if err != nil || string(got) != c.want {
			t.Errorf("%v: %q, %v; want %q", c.edits, got, err, c.want)
		}
	}
}

func TestApplyRefuses(t *testing.T) {
	good := at(doc, "380", "400")
	with := func(change func(*diag.Edit)) []diag.Edit {
		e := stamped(good)
		change(&e[0])
		return e
	}
	for _, c := range []struct {
		why   Why
		edits []diag.Edit
	}{
		{Unstamped, []diag.Edit{good}},
		{Changed, with(func(e *diag.Edit) { e.Before = Hash([]byte("another")) })},
		{NotThere, with(func(e *diag.Edit) { e.Old = "381" })},
		{NotThere, with(func(e *diag.Edit) { e.Start++ })},
		{Outside, with(func(e *diag.Edit) { e.Start = -1 })},
		{Outside, with(func(e *diag.Edit) { e.End = len(doc) + 1 })},
		{Outside, with(func(e *diag.Edit) { e.End = e.Start - 1 })},
		{Overlap, stamped(good, at(doc, "80 ", "x"))},
		{NotText, with(func(e *diag.Edit) { e.New = "\xff" })},
		{TooLarge, with(func(e *diag.Edit) { e.New = strings.Repeat("x", MaxDocument) })},
		{TooLarge, slices.Repeat(stamped(good), MaxEdits+1)},
		{TwoFiles, append(with(func(e *diag.Edit) { e.File = "b" }), stamped(at(doc, "chest", "box"))...)},
	} {
		out, err := Apply([]byte(doc), c.edits...)
		var refusal *Refusal
		if !errors.As(err, &refusal) || refusal.Why != c.why || out != nil {
			t.Errorf("got %v, want refusal: %s", err, c.why)
		}
	}
	// A stretch that begins inside a letter would leave half of it behind.
	text := []byte("é")
	if _, err := Apply(text, Stamp(text, []diag.Edit{{Start: 1, End: 1, New: "x"}})...); err == nil {
		t.Error("a letter was cut in two")
	}
}

func TestHistory(t *testing.T) {
	docs := map[string][]byte{"a": []byte(doc), "b": []byte("one")}
	start := map[string]string{"a": doc, "b": "one"}
	var h History
	var lines []byte
	day := world.Date{Year: 2026, Month: 3, Day: 1}
	step := func(o Outcome, err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		for name, d := range o.Documents {
			docs[name] = d
		}
		h, lines = o.History, append(lines, o.Line...)
	}
	change := func(name, old, replacement string) {
		t.Helper()
		e := at(string(docs[name]), old, replacement)
		e.File = name
		step(h.Do(docs, Stamp(docs[name], []diag.Edit{e}), message.New("any"), day))
	}
	shows := func(name, want string) {
		t.Helper()
		if !strings.Contains(string(docs[name]), want) {
			t.Errorf("%s holds %q, want %q", name, docs[name], want)
		}
	}
	change("a", "380", "400")
	change("b", "one", "two")
	change("a", "400", "420")
	step(h.Undo(docs, day))
	shows("a", "400")
	step(h.Undo(docs, day))
	shows("b", "one")
	step(h.Redo(docs, day))
	shows("b", "two")
	if c, ok := h.CanRedo(); !ok || c.N != 3 {
		t.Errorf("may redo %v", c)
	}
	// Another hand changes a document: what would overwrite it is refused.
	mine := docs["b"]
	docs["b"] = []byte("two and more")
	var refusal *Refusal
	if _, err := h.Undo(docs, day); !errors.As(err, &refusal) || refusal.Why != Changed {
		t.Errorf("got %v", err)
	}
	docs["b"] = mine
	step(h.Undo(docs, day))
	step(h.Undo(docs, day))
	for name, want := range start {
		if string(docs[name]) != want {
			t.Errorf("%s holds %q after all is undone", name, docs[name])
		}
	}
	if _, err := h.Undo(docs, day); !errors.As(err, &refusal) || refusal.Why != NoChange {
		t.Errorf("got %v", err)
	}
	change("a", "380", "390")
	if _, err := h.Redo(docs, day); !errors.As(err, &refusal) || refusal.Why != NoChange {
		t.Errorf("redo after a new change: %v", err)
	}
	back, err := ReadHistory(lines)
	if err != nil || back.Good() != len(lines) || len(back.Changes()) != len(h.Changes()) {
		t.Fatalf("read back %d of %d lines: %v", len(back.Changes()), len(h.Changes()), err)
	}
	if c, ok := back.CanUndo(); !ok || c.N != len(h.Changes()) || c.Date != day {
		t.Errorf("may undo %v", c)
	}
	if _, err := back.Undo(docs, day); err != nil {
		t.Error(err)
	}
}

func TestDoIsAllOrNothing(t *testing.T) {
	docs := map[string][]byte{"a": []byte(doc), "b": []byte("one")}
	good := stamped(at(doc, "380", "400"))
	bad := diag.Edit{File: "b", Before: Hash([]byte("other")), End: 3, Old: "one", New: "two"}
	if o, err := (History{}).Do(docs, append(good, bad), message.Message{}, world.Date{}); err == nil || o.Documents != nil {
		t.Error("half a change was made")
	}
	if _, err := (History{}).Do(docs, []diag.Edit{{File: "c"}}, message.Message{}, world.Date{}); err == nil {
		t.Error("a document that is not there was changed")
	}
	if string(docs["a"]) != doc {
		t.Error("the caller's document was changed")
	}
}

func TestReadHistoryRefuses(t *testing.T) {
	edit := `{"n":1,"kind":"edit","edits":[{"file":"a","start":0,"end":0,"old":"","new":"x"}],"after":{"a":"h"}}` + "\n"
	for _, lines := range []string{
		`{"n":2,"kind":"edit"}` + "\n", `{"n":1,"kind":"undo","of":1}` + "\n", `{"n":1,"kind":"edit"}` + "\n",
		edit + `{"n":2,"kind":"redo","of":1}` + "\n", edit + `{"n":2,"kind":"undo","of":2}` + "\n", edit + `{"n":2,"kind":"other"}` + "\n",
	} {
		if _, err := ReadHistory([]byte(lines)); err == nil {
			t.Errorf("%q was read", lines)
		}
	}
	if h, err := ReadHistory([]byte(edit + `{"n":2,"ki`)); err != nil || h.Good() != len(edit) {
		t.Errorf("a torn line: %d, %v", h.Good(), err)
	}
}

// Law: undoing edits restores the bytes, for any edits that apply.
func FuzzApplyThenUndo(f *testing.F) {
	f.Add([]byte(doc), uint64(1))
	f.Add([]byte("žluťoučký kůň"), uint64(2))
	f.Add([]byte{}, uint64(3))
	f.Fuzz(func(t *testing.T, before []byte, seed uint64) {
		r := rand.New(rand.NewPCG(seed, 1))
		var edits []diag.Edit
		for range r.IntN(6) {
			start := r.IntN(len(before) + 1)
			end := start + r.IntN(min(len(before)-start, 4)+1)
			edits = append(edits, diag.Edit{File: "a", Start: start, End: end, Old: string(before[start:end]), New: strings.Repeat("ü", r.IntN(4))})
		}
		edits = Stamp(before, edits)
		after, err := Apply(before, edits...)
		if err != nil {
			return
		}
		restored, err := Apply(after, Inverse(edits, Hash(after))...)
		if err != nil || !bytes.Equal(restored, before) {
			t.Fatalf("%q, %v: after %q, undone %q, %v", before, edits, after, restored, err)
		}
		if len(edits) == 0 {
			return
		}
		docs := map[string][]byte{"a": before}
		done, err := History{}.Do(docs, edits, message.Message{}, world.Date{})
		if err != nil {
			t.Fatal(err)
		}
		undone, err := done.History.Undo(done.Documents, world.Date{})
		if err != nil || !bytes.Equal(undone.Documents["a"], before) {
			t.Fatalf("undone %q, %v", undone.Documents["a"], err)
		}
		redone, err := undone.History.Redo(undone.Documents, world.Date{})
		if err != nil || !bytes.Equal(redone.Documents["a"], after) {
			t.Fatalf("redone %q, %v", redone.Documents["a"], err)
		}
	})
}

func FuzzReadHistory(f *testing.F) {
	f.Add([]byte(`{"n":1,"kind":"edit","edits":[{"file":"a","start":0,"end":0,"old":"","new":"x"}],"after":{"a":"h"}}` + "\n" + `{"n":2,"kind":"undo","of":1}` + "\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		h, err := ReadHistory(data)
		if err != nil {
			return
		}
		docs := map[string][]byte{"a": nil}
		if o, err := h.Undo(docs, world.Date{}); err == nil {
			if again, err := ReadHistory(journal.Appended(data, h.Good(), o.Line)); err != nil || len(again.changes) != len(h.changes)+1 {
				t.Fatalf("%q and %q: %v", data, o.Line, err)
			}
		}
		h.Redo(docs, world.Date{})
	})
}

func BenchmarkApply(b *testing.B) {
	text := bytes.Repeat([]byte(doc), 1000)
	e := Stamp(text, []diag.Edit{at(doc, "380", "400")})
	for b.Loop() {
		if _, err := Apply(text, e...); err != nil {
			b.Fatal(err)
		}
	}
}
