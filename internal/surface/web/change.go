package web

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"path"
	"slices"
	"strings"

	"scantling"
	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/edit"
	"scantling/internal/message"
	"scantling/internal/surface/screen"
)

// refusal is a change that was not made, and why.
type refusal struct {
	// moved says that the documents are not those that the change was meant for.
	moved bool
	text  message.Message
	diags diag.List
}

func (r *refusal) Error() string { return "refused: " + r.text.Key }

func refuse(key string, args ...message.Arg) error {
	return &refusal{text: message.New(key, args...)}
}

// SetInput writes a new value of an input into the design document. The value is
// text as a maker writes it.
func (d *Desk) SetInput(ctx context.Context, revision, name, value string) error {
	return d.change(ctx, revision, func(docs map[string][]byte) (edit.Outcome, error) {
		base := path.Base(d.file)
		file, _ := document.Read(document.Source{Name: base, Text: docs[base]}, document.DefaultLimits)
		block := file.Input(name)
		if block == nil || block.Given() == nil {
			return edit.Outcome{}, refuse("server.no-input", message.Text("name", name))
		}
		text, err := written(block.Given().Name, value)
		if err != nil {
			return edit.Outcome{}, err
		}
		e, err := file.SetInput(name, text)
		if err != nil {
			return edit.Outcome{}, refuse("server.no-value", message.Text("value", value))
		}
		label := name
		for _, in := range d.now.Load().good.Plan.Piece.Inputs {
			if in.Name == name {
				label = in.Label
			}
		}
		what := message.New("server.changed-input", message.Text("input", label), message.Text("from", strings.Trim(e.Old, `"`)), message.Text("to", value))
		if e.Old == e.New {
			return edit.Outcome{}, errNothing
		}
		return d.history.Do(docs, edit.Stamp(docs[base], []diag.Edit{e}), what, d.world.Today())
	})
}

// Remedy makes the edits of a remedy of the present plan.
func (d *Desk) Remedy(ctx context.Context, revision, id string) error {
	return d.change(ctx, revision, func(docs map[string][]byte) (edit.Outcome, error) {
		r, ok := screen.FindRemedy(d.now.Load().good.Plan, d.now.Load().faults, id)
		if !ok || len(r.Edits) == 0 {
			return edit.Outcome{}, refuse("server.no-remedy")
		}
		edits := slices.Clone(r.Edits)
		for i, e := range edits {
			if e.Before == "" {
				edits[i].Before = edit.Hash(docs[e.File])
			}
		}
		return d.history.Do(docs, edits, r.Text, d.world.Today())
	})
}

// Undo takes back the last change that stands; Redo makes it again.
func (d *Desk) Undo(ctx context.Context) error {
	return d.change(ctx, "", func(docs map[string][]byte) (edit.Outcome, error) { return d.history.Undo(docs, d.world.Today()) })
}

// Redo makes the change that was undone last once more.
func (d *Desk) Redo(ctx context.Context) error {
	return d.change(ctx, "", func(docs map[string][]byte) (edit.Outcome, error) { return d.history.Redo(docs, d.world.Today()) })
}

// errNothing says that a change changes nothing.
var errNothing = errors.New("nothing to change")

// change makes a change of the documents: worked out on the present ones,
// planned, and only then written. An empty revision is the present one.
func (d *Desk) change(ctx context.Context, revision string, work func(docs map[string][]byte) (edit.Outcome, error)) error {
	d.planning.Lock()
	defer d.planning.Unlock()
	if err := d.look(ctx); err != nil {
		return err
	}
	if revision != "" && revision != d.now.Load().state.Revision {
		return &refusal{moved: true, text: message.New("server.moved")}
	}
	out, err := work(d.documents())
	var refused *edit.Refusal
	switch {
	case errors.Is(err, errNothing):
		return nil
	case errors.As(err, &refused):
		return refusedEdit(refused)
	case err != nil:
		return err
	}
	instead := map[string][]byte{}
	for name, text := range out.Documents {
		instead[path.Join(path.Dir(d.file), name)] = text
	}
	src := note(d.world, instead)
	r, err := scantling.Plan(ctx, src, d.file, scantling.Options{})
	if err != nil {
		return err
	}
	if r.Plan.Diagnostics.HasErrors() {
		return &refusal{text: message.New("server.not-taken"), diags: onlyErrors(r.Plan.Diagnostics)}
	}
	return d.commit(r, src, out)
}

// commit writes the changed documents and the line of the history.
func (d *Desk) commit(r *scantling.Result, src *noted, out edit.Outcome) error {
	if err := d.write(src); err != nil {
		return err
	}
	if err := d.world.Append(HistoryName(d.file), out.Line); err != nil {
		return fmt.Errorf("the history cannot be written: %w", err)
	}
	d.history = out.History
	return d.lay(r, src)
}

// write puts what stood in the place of files into the files.
func (d *Desk) write(src *noted) error {
	for _, name := range slices.Sorted(maps.Keys(src.instead)) {
		if err := d.world.Write(name, src.instead[name]); err != nil {
			return fmt.Errorf("%s cannot be written: %w", name, err)
		}
	}
	src.instead = nil
	return nil
}

// documents are the texts that edits may change, by the names that edits use.
func (d *Desk) documents() map[string][]byte {
	docs := map[string][]byte{}
	for name, text := range d.now.Load().sources.read {
		if text != nil && strings.HasSuffix(name, ".hcl") && path.Dir(name) == path.Dir(d.file) {
			docs[path.Base(name)] = text
		}
	}
	return docs
}

func refusedEdit(r *edit.Refusal) error {
	switch r.Why {
	case edit.NoChange:
		return refuse("server.nothing")
	case edit.Changed, edit.NotThere, edit.Unstamped, edit.Outside:
		return &refusal{moved: true, text: message.New("server.other-hands")}
	}
	return refuse("server.refused", message.Text("why", string(r.Why)))
}

func onlyErrors(l diag.List) diag.List {
	var out diag.List
	for _, x := range l {
		if x.Severity == diag.Error {
			out = append(out, x)
		}
	}
	return out
}
