package ledger

import (
	"slices"

	"scantling/internal/diag"
)

// find looks for a line that says the same as e and returns its id, or 0 and
// the key under which e is to be put.
//
// A leaf is the same if all of it is. What was derived is the same if it has the
// same name, operation and arguments: its value and origin then follow. Without
// a place it is the first such line wherever that stands; with one, the line at
// that place.
func (l *Ledger) find(e *Entry) (ID, uint64) {
	if l.lines == nil {
		l.reindex()
	}
	for key := hash(e); ; key++ {
		id, taken := l.lines[key]
		if !taken {
			return 0, key
		}
		if same(&l.entries[id-1], e) {
			return id, key
		}
	}
}

func (l *Ledger) reindex() {
	l.lines = make(map[uint64]ID, len(l.entries))
	for i := range l.entries {
		e := l.entries[i]
		l.enter(&e)
		if e.Op != OpGiven && !e.Where.IsZero() {
			e.Where = diag.Place{}
			l.enter(&e)
		}
	}
}

func (l *Ledger) enter(e *Entry) {
	if id, key := l.find(e); id == 0 {
		l.lines[key] = e.ID
	}
}

func same(stands, e *Entry) bool {
	if stands.Op != e.Op || stands.Name != e.Name || stands.Func != e.Func || !slices.Equal(stands.Args, e.Args) {
		return false
	}
	if e.Op != OpGiven {
		return e.Where.IsZero() || stands.Where == e.Where
	}
	return stands.Where == e.Where && stands.Origin == e.Origin &&
		stands.Source == e.Source && stands.Status == e.Status && stands.Value.Equal(e.Value)
}

// hash is FNV-1a over what same compares; a place counts by its stretch.
func hash(e *Entry) uint64 {
	const prime = 1099511628211
	h := uint64(14695981039346656037)
	text := func(s string) {
		for i := range len(s) {
			h = (h ^ uint64(s[i])) * prime
		}
		h = (h ^ 0xff) * prime
	}
	word := func(w uint64) { h = (h ^ w) * prime; h ^= h >> 32 }
	text(e.Name)
	text(string(e.Op))
	text(e.Func)
	for _, a := range e.Args {
		word(uint64(a))
	}
	word(uint64(e.Where.Start))
	word(uint64(e.Where.End))
	text(e.Where.File)
	if e.Op == OpGiven {
		text(string(e.Origin))
		text(e.Source)
		word(e.Value.Hash())
	}
	return h
}
