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

	"scantling"
	"scantling/internal/diag"
	"scantling/internal/edit"
	"scantling/internal/message"
	"scantling/internal/surface/screen"
	"scantling/internal/words"
	"scantling/internal/world"
)

// Desk holds one piece: its documents as they stand, the last good plan of them,
// and the history of what was changed. It may be used by several goroutines.
type Desk struct {
	world world.World
	file  string
	hub   hub

	mu sync.Mutex
	// sources are the documents as last looked at; they are those of the plan
	// unless the desk is stale.
	sources *noted
	good    *scantling.Result
	stale   bool
	// faults are what is wrong with the documents as they stand.
	faults  diag.List
	history edit.History
	state   *screen.State
	text    []byte // of the state, as JSON
	made    outputs
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

// lay makes a plan the one that is shown. The caller holds the lock, or the desk
// is new.
func (d *Desk) lay(r *scantling.Result, src *noted) error {
	d.good, d.sources, d.stale, d.faults, d.made = r, src, false, r.Plan.Diagnostics, outputs{}
	return d.show()
}

// stain says that the documents as they stand cannot be planned: the last good
// plan stays, with what is wrong.
func (d *Desk) stain(src *noted, faults diag.List) error {
	d.sources, d.stale, d.faults = src, true, faults
	return d.show()
}

// show puts what lies on the desk into words.
func (d *Desk) show() error {
	w := d.good.Words()
	if !d.stale || d.state == nil {
		d.state = screen.Build(screen.Source{
			Plan: d.good.Plan, Solids: d.good.Solids(), Words: w, Document: d.sources.read[d.file], File: path.Base(d.file), Found: d.found(),
		})
	}
	s := *d.state
	s.Revision, s.Stale, s.Diagnostics = d.sources.revision(), d.stale, screen.Diagnostics(d.faults, w)
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
	d.state, d.text = &s, text
	return nil
}

// State returns what the pages show as JSON, and its revision.
func (d *Desk) State(ctx context.Context) (text []byte, revision string, err error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if err := d.look(ctx); err != nil {
		return nil, "", err
	}
	return d.text, d.state.Revision, nil
}

// Look plans anew if the documents were changed by others, and tells the pages.
func (d *Desk) Look(ctx context.Context) error {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.look(ctx)
}

func (d *Desk) look(ctx context.Context) error {
	if !d.sources.changed() {
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
		err = d.stain(src, diag.List{{Severity: diag.Error, Code: "unreadable", Text: message.New("server.unreadable", message.Text("why", err.Error()))}})
	case r.Plan.Diagnostics.HasErrors():
		err = d.stain(src, r.Plan.Diagnostics)
	default:
		err = d.lay(r, src)
	}
	d.hub.tell(d.state.Revision)
	return err
}

// words returns the words of the plan on the desk.
func (d *Desk) words() *words.Words {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.good.Words()
}

// present returns the state as it was last put into words.
func (d *Desk) present() *screen.State {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.state
}
