package edit

import (
	"maps"
	"slices"

	"scantling/internal/diag"
	"scantling/internal/journal"
	"scantling/internal/message"
	"scantling/internal/world"
)

// Kind is the kind of a change.
type Kind string

// The kinds.
const (
	Edited Kind = "edit"
	Undone Kind = "undo"
	Redone Kind = "redo"
)

// Change is one line of the history.
type Change struct {
	N    int        `json:"n"` // from 1
	Date world.Date `json:"date,omitzero"`
	Kind Kind       `json:"kind"`
	// Of is the number of the change that is undone or redone.
	Of int `json:"of,omitempty"`
	// Text says what the change was for: the remedy, the form.
	Text message.Message `json:"text,omitzero"`
	// Edits are those of a change of kind Edited, and After the hashes of the
	// documents by name once they are made.
	Edits []diag.Edit       `json:"edits,omitempty"`
	After map[string]string `json:"after,omitempty"`
}

// History is what was done to the documents of one piece. The zero History is
// empty. Histories are values: the methods return a new one.
type History struct {
	changes []Change
	done    []int // numbers of the changes that stand, last one last
	undone  []int // numbers of those that were undone and may be redone
	good    int
}

// Changes returns the lines of the history in order.
func (h History) Changes() []Change { return slices.Clone(h.changes) }

// Good returns how many bytes of what was read are good: less than all if the
// last line was torn (see [journal.Read]).
func (h History) Good() int { return h.good }

// ReadHistory reads a journal of changes. A line that does not fit those before
// it is an error.
func ReadHistory(data []byte) (History, error) {
	var h History
	good, err := journal.Read(data, func(_ int, c Change) error { return h.take(c) })
	h.good = good
	return h, err
}

// take adds a change to a history that nobody else holds.
func (h *History) take(c Change) error {
	last := func(stack []int) bool { return len(stack) > 0 && stack[len(stack)-1] == c.Of }
	switch {
	case c.N != len(h.changes)+1:
	case c.Kind == Edited && c.Of == 0 && len(c.Edits) > 0 && len(c.After) > 0:
		h.done, h.undone = append(h.done, c.N), nil
		h.changes = append(h.changes, c)
		return nil
	case c.Kind == Undone && last(h.done) && len(c.Edits) == 0:
		h.done, h.undone = h.done[:len(h.done)-1], append(h.undone, c.Of)
		h.changes = append(h.changes, c)
		return nil
	case c.Kind == Redone && last(h.undone) && len(c.Edits) == 0:
		h.undone, h.done = h.undone[:len(h.undone)-1], append(h.done, c.Of)
		h.changes = append(h.changes, c)
		return nil
	}
	return &Refusal{Why: OutOfStep, Is: string(c.Kind)}
}

// Outcome is what a change leads to.
type Outcome struct {
	// Documents are those that changed, by name.
	Documents map[string][]byte
	// History has the change as its last; Line is what to add to its journal (see
	// [journal.Appended]).
	History History
	Line    []byte
}

// Do makes edits of one or several documents, all or none of them.
func (h History) Do(docs map[string][]byte, edits []diag.Edit, text message.Message, on world.Date) (Outcome, error) {
	changed, err := applyAll(docs, edits)
	if err != nil {
		return Outcome{}, err
	}
	c := Change{Date: on, Kind: Edited, Text: text, Edits: slices.Clone(edits), After: map[string]string{}}
	for name, doc := range changed {
		c.After[name] = Hash(doc)
	}
	return h.finish(c, changed)
}

// CanUndo reports whether there is a change to undo, and says what it was.
func (h History) CanUndo() (Change, bool) { return h.top(h.done) }

// CanRedo reports whether there is a change to redo, and says what it was.
func (h History) CanRedo() (Change, bool) { return h.top(h.undone) }

func (h History) top(stack []int) (Change, bool) {
	if len(stack) == 0 {
		return Change{}, false
	}
	return h.changes[stack[len(stack)-1]-1], true
}

// Undo undoes the last change that stands. It is refused if a document has been
// changed since by other hands.
func (h History) Undo(docs map[string][]byte, on world.Date) (Outcome, error) {
	c, ok := h.CanUndo()
	if !ok {
		return Outcome{}, &Refusal{Why: NoChange}
	}
	var back []diag.Edit
	for _, of := range byFile(c.Edits) {
		back = append(back, Inverse(of, c.After[of[0].File])...)
	}
	changed, err := applyAll(docs, back)
	if err != nil {
		return Outcome{}, err
	}
	return h.finish(Change{Date: on, Kind: Undone, Of: c.N}, changed)
}

// Redo makes the last change that was undone once more.
func (h History) Redo(docs map[string][]byte, on world.Date) (Outcome, error) {
	c, ok := h.CanRedo()
	if !ok {
		return Outcome{}, &Refusal{Why: NoChange}
	}
	changed, err := applyAll(docs, c.Edits)
	if err != nil {
		return Outcome{}, err
	}
	return h.finish(Change{Date: on, Kind: Redone, Of: c.N}, changed)
}

func (h History) finish(c Change, changed map[string][]byte) (Outcome, error) {
	c.N = len(h.changes) + 1
	line, err := journal.Line(c)
	if err != nil {
		return Outcome{}, &Refusal{Why: TooLarge, Is: err.Error()}
	}
	next := History{slices.Clone(h.changes), slices.Clone(h.done), slices.Clone(h.undone), h.good + len(line)}
	if err := next.take(c); err != nil {
		return Outcome{}, err
	}
	return Outcome{changed, next, line}, nil
}

// applyAll makes edits of several documents.
func applyAll(docs map[string][]byte, edits []diag.Edit) (map[string][]byte, error) {
	if len(edits) == 0 {
		return nil, &Refusal{Why: NoChange}
	}
	changed := map[string][]byte{}
	for _, of := range byFile(edits) {
		name := of[0].File
		doc, ok := docs[name]
		if !ok {
			return nil, &Refusal{Why: NoFile, Edit: of[0]}
		}
		out, err := Apply(doc, of...)
		if err != nil {
			return nil, err
		}
		changed[name] = out
	}
	return changed, nil
}

// byFile parts edits by their document, in the order of the names.
func byFile(edits []diag.Edit) [][]diag.Edit {
	parts := map[string][]diag.Edit{}
	for _, e := range edits {
		parts[e.File] = append(parts[e.File], e)
	}
	var out [][]diag.Edit
	for _, name := range slices.Sorted(maps.Keys(parts)) {
		out = append(out, parts[name])
	}
	return out
}
