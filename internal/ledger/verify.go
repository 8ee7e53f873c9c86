package ledger

import (
	"fmt"

	"scantling/internal/unit"
)

// Deviation is an entry that breaks the law of the ledger.
type Deviation struct {
	ID   ID
	Name string
	// Is is the value that stands, Again what the arithmetic gives when it is done
	// again; Again is no value where it cannot be done, for the reason Err.
	Is, Again unit.Value
	Err       error
}

// String describes the deviation for logs and tests.
func (d Deviation) String() string {
	if d.Err != nil {
		return fmt.Sprintf("entry %d %q: %v", d.ID, d.Name, d.Err)
	}
	return fmt.Sprintf("entry %d %q is %v, its arithmetic gives %v", d.ID, d.Name, d.Is, d.Again)
}

// Verify does the arithmetic of every entry again and returns those that break
// the law: the value is another, the arguments do not come before the entry, or
// the origin does not follow from theirs. Functions that calls name must be
// known ([Ledger.Use]).
func (l *Ledger) Verify() []Deviation {
	var off []Deviation
	for i := range l.entries {
		e := &l.entries[i]
		again, err := l.redo(e, ID(i+1))
		if err != nil || !again.Equal(e.Value) {
			off = append(off, Deviation{ID(i + 1), e.Name, e.Value, again, err})
		}
	}
	return off
}

func (l *Ledger) redo(e *Entry, id ID) (unit.Value, error) {
	if e.ID != id {
		return unit.Value{}, fmt.Errorf("stands as number %d", id)
	}
	for _, a := range e.Args {
		if a < 1 || a >= id {
			return unit.Value{}, fmt.Errorf("argument %d does not come before it", a)
		}
	}
	if e.Op == OpGiven {
		if len(e.Args) > 0 || e.Value.IsZero() {
			return unit.Value{}, fmt.Errorf("a leaf has a value and no arguments")
		}
		return e.Value, nil
	}
	if want := l.originOf(e.Args); e.Origin != want {
		return unit.Value{}, fmt.Errorf("origin is %s, but %s follows from its arguments", e.Origin, want)
	}
	return l.compute(e.Op, e.Func, e.Args)
}

// VerifyFigure returns what is wrong with a figure: its entry is not in the
// ledger, is no length, or is another length when rounded to the nanometre. The
// zero Figure is none and has nothing wrong.
func (l *Ledger) VerifyFigure(f Figure) error {
	if f == (Figure{}) {
		return nil
	}
	e, ok := l.Entry(f.Entry)
	if !ok {
		return fmt.Errorf("a figure of %d nm names entry %d, which is not in the ledger", f.Nm, f.Entry)
	}
	nm, ok := e.Value.Length()
	if !ok {
		return fmt.Errorf("a figure of %d nm names entry %d %q, which is %v and no length", f.Nm, f.Entry, e.Name, e.Value)
	}
	if nm != f.Nm {
		return fmt.Errorf("a figure of %d nm names entry %d %q of %d nm", f.Nm, f.Entry, e.Name, nm)
	}
	return nil
}

// MaxExplain is how many entries Explain returns at most.
const MaxExplain = 1000

// Explain returns an entry and everything that it was made from, down to its
// leaves: the entry first, behind each entry its arguments in order with what
// they were made from, each once. It returns nil if there is no such entry, and
// no more than [MaxExplain] entries.
func (l *Ledger) Explain(id ID) []Entry {
	if _, ok := l.Entry(id); !ok {
		return nil
	}
	var trail []Entry
	seen := map[ID]bool{}
	waiting := []ID{id}
	for len(waiting) > 0 && len(trail) < MaxExplain {
		next := waiting[len(waiting)-1]
		waiting = waiting[:len(waiting)-1]
		e, ok := l.Entry(next)
		if !ok || seen[next] {
			continue
		}
		seen[next] = true
		trail = append(trail, e)
		for i := len(e.Args) - 1; i >= 0; i-- {
			if !seen[e.Args[i]] {
				waiting = append(waiting, e.Args[i])
			}
		}
	}
	return trail
}
