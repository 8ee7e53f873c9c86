package web

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"
	"sync"
	"sync/atomic"

	"scantling"
	"scantling/internal/diag"
	"scantling/internal/edit"
	"scantling/internal/message"
	"scantling/internal/surface/screen"
	"scantling/internal/world"
)

// Desk holds one piece: its documents as they stand, the last good plan of them,
// and the history of what was changed. It may be used by several goroutines: one
// at a time plans, while all others see what was shown before.
type Desk struct {
	world world.World
	file  string
	hub   hub
	now   atomic.Pointer[shown]

	// planning is held by whoever plans or changes; it guards the history.
	planning sync.Mutex
	history  edit.History
}

// shown is what lies on the desk at one time. It is not changed any more.
type shown struct {
	// sources are the documents as last looked at; they are those of the plan
	// unless it is stale.
	sources *noted
	good    *scantling.Result
	stale   bool
	// faults are what is wrong with the documents as they stand.
	faults diag.List
	state  *screen.State
	text   []byte // of the state, as JSON
	made   *outputs
}

// Open plans a design document of a world and lays it on a desk.
func Open(ctx context.Context, w world.World, file string) (*Desk, error) {
	d := &Desk{world: w, file: file}
	if err := d.readHistory(); err != nil {
		return nil, err
	}
	src := note(w, nil)
	r, err := scantling.Plan(ctx, src, file, scantling.Options{})
	if err != nil {
		return nil, err
	}
	return d, d.lay(r, src)
}

// HistoryName names the history of a design document: the document's name with
// .history.jsonl in the place of .piece.hcl.
func HistoryName(document string) string {
	return strings.TrimSuffix(strings.TrimSuffix(document, ".hcl"), ".piece") + ".history.jsonl"
}

func (d *Desk) readHistory() error {
	data, err := d.world.Read(HistoryName(d.file))
	if errors.Is(err, fs.ErrNotExist) {
		d.history = edit.History{}
		return nil
	}
	if err != nil {
		return fmt.Errorf("the history cannot be read: %w", err)
	}
	h, err := edit.ReadHistory(data)
	if err != nil {
		return fmt.Errorf("the history %s cannot be read; move it away to begin a new one: %w", HistoryName(d.file), err)
	}
	if h.Good() < len(data) {
		if err := d.world.Write(HistoryName(d.file), data[:h.Good()]); err != nil {
			return fmt.Errorf("the torn end of the history cannot be cut off: %w", err)
		}
	}
	d.history = h
	return nil
}

// lay makes a plan the one that is shown. The caller plans, or the desk is new.
func (d *Desk) lay(r *scantling.Result, src *noted) error {
	next := &shown{sources: src, good: r, faults: r.Plan.Diagnostics, made: &outputs{result: r}}
	next.state = screen.Build(screen.Source{
		Plan: r.Plan, Solids: r.Solids(), Words: r.Words(), Second: r.Second(), Document: src.read[d.file], File: path.Base(d.file), Found: d.found(next),
	})
	return d.show(next)
}

// stain says that the documents as they stand cannot be planned: the last good
// plan stays, with what is wrong.
func (d *Desk) stain(src *noted, faults diag.List) error {
	next := *d.now.Load()
	next.sources, next.stale, next.faults = src, true, faults
	return d.show(&next)
}

// show puts what is to lie on the desk into words, and lays it there.
func (d *Desk) show(next *shown) error {
	w := next.good.Words()
	s := *next.state
	s.Revision, s.Stale, s.Diagnostics = next.sources.revision(), next.stale, screen.Diagnostics(next.faults, w)
	s.Undo, s.Redo = "", ""
	if c, ok := d.history.CanUndo(); ok {
		s.Undo = w.Say(c.Text)
	}
	if c, ok := d.history.CanRedo(); ok {
		s.Redo = w.Say(c.Text)
	}
	text, err := json.Marshal(&s)
	if err != nil {
		return fmt.Errorf("the state cannot be written: %w", err)
	}
	next.state, next.text = &s, text
	d.now.Store(next)
	d.hub.tell(s.Revision)
	return nil
}

// present looks whether the documents were changed by others, unless somebody
// plans just now, and returns what is shown.
func (d *Desk) present(ctx context.Context) (*shown, error) {
	if d.planning.TryLock() {
		defer d.planning.Unlock()
		if err := d.look(ctx); err != nil {
			return nil, err
		}
	}
	return d.now.Load(), nil
}

// State returns what the pages show as JSON, and its revision.
func (d *Desk) State(ctx context.Context) (text []byte, revision string, err error) {
	now, err := d.present(ctx)
	if err != nil {
		return nil, "", err
	}
	return now.text, now.state.Revision, nil
}

// look plans anew if the documents were changed by others, and tells the pages.
// The caller holds planning.
func (d *Desk) look(ctx context.Context) error {
	if !d.now.Load().sources.changed() {
		return nil
	}
	if err := d.readHistory(); err != nil {
		return err
	}
	src := note(d.world, nil)
	r, err := scantling.Plan(ctx, src, d.file, scantling.Options{})
	switch {
	case ctx.Err() != nil:
		return ctx.Err()
	case err != nil:
		src.read[d.file] = nil // so that it is looked at again
		return d.stain(src, diag.List{{Severity: diag.Error, Code: "unreadable", Text: message.New("server.unreadable", message.Text("why", err.Error()))}})
	case r.Plan.Diagnostics.HasErrors():
		return d.stain(src, r.Plan.Diagnostics)
	}
	return d.lay(r, src)
}
