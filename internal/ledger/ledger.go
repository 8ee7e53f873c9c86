package ledger

import (
	"fmt"
	"maps"

	"scantling/internal/diag"
	"scantling/internal/unit"
)

// ID names an entry; 0 is no entry.
type ID int32

// Figure is a length with the entry that it comes from.
type Figure struct {
	Nm    unit.Length `json:"nm"`
	Entry ID          `json:"entry"`
}

// Origin says who is answerable for a value.
type Origin string

// Origins, in the order in which a later one beats an earlier one for the same
// input; the last four are not inputs.
const (
	Default      Origin = "default"
	Document     Origin = "document"
	Choice       Origin = "choice"
	Input        Origin = "input"
	Bought       Origin = "bought" // the shop's own reading of its stock
	Measured     Origin = "measured"
	Derived      Origin = "derived"
	FromMeasured Origin = "from-measured" // derived, and something measured took part
	Reference    Origin = "reference"     // a table, with source and status
	HouseRule    Origin = "house-rule"    // the shop's or the trade's habit, changeable
)

// Op is how an entry's value was made from its arguments.
type Op string

// The operations. Call names a registered pure function in Func.
const (
	OpGiven Op = "given" // a leaf: written, measured or read from a table
	OpSame  Op = "same"  // the one argument under another name
	OpAdd   Op = "add"   // the sum of all arguments
	OpSub   Op = "sub"   // the first less all others
	OpMul   Op = "mul"
	OpDiv   Op = "div"
	OpNeg   Op = "neg"
	OpMin   Op = "min"
	OpMax   Op = "max"
	OpRound Op = "round" // to a multiple of the second argument; Func is nearest, down or up
	OpShare Op = "share" // part number args[2] of args[0] shared into args[1] parts
	OpCall  Op = "call"
	OpItem  Op = "item" // number args[1], from 1, of the list args[0]
	OpAs    Op = "as"   // args[0] as the dimension Func; a bare number counts in args[1], if given
)

// Entry is one line of the ledger.
type Entry struct {
	ID     ID         `json:"id"`
	Name   string     `json:"name,omitempty"` // what it is, as an address or a dotted key
	Op     Op         `json:"op"`
	Func   string     `json:"func,omitempty"`
	Args   []ID       `json:"args,omitempty"`
	Value  unit.Value `json:"value"`
	Origin Origin     `json:"origin"`
	Where  diag.Place `json:"where,omitzero"`
	Source string     `json:"source,omitempty"` // of a reference: title, edition, table; and status
	Status string     `json:"status,omitempty"` // read or memory, for references
}

// Ledger collects entries. It is not safe for use by several goroutines.
type Ledger struct {
	entries []Entry
	lines   map[uint64]ID // by the hash of the line, see find
	args    []ID          // room that the arguments of entries are cut from
	funcs   Functions
}

// Functions are the pure functions that OpCall entries may name.
type Functions map[string]func(args []unit.Value) (unit.Value, error)

// New returns an empty ledger that knows the given functions.
func New(funcs Functions) *Ledger { return &Ledger{funcs: funcs} }

// Use gives a ledger that was read from JSON the functions that it names.
func (l *Ledger) Use(funcs Functions) { l.funcs = funcs }

// Entries returns the entries in the order in which they were made; do not
// change them.
func (l *Ledger) Entries() []Entry { return l.entries }

// Entry returns the entry with that id.
func (l *Ledger) Entry(id ID) (Entry, bool) {
	if id < 1 || int(id) > len(l.entries) {
		return Entry{}, false
	}
	return l.entries[id-1], true
}

// Value returns the value of an entry, or no value.
func (l *Ledger) Value(id ID) unit.Value {
	e, _ := l.Entry(id)
	return e.Value
}

// Given records a leaf and returns its id; the very same leaf, written at the
// same place, is recorded once. Its ID, Args and Func are of no account.
func (l *Ledger) Given(e Entry) ID {
	e.Op, e.Func, e.Args = OpGiven, "", nil
	id, key := l.find(&e)
	if id != 0 {
		return id
	}
	return l.append(e, key)
}

// Make records the result of op on args and returns its id; the same operation
// on the same arguments under the same name is recorded once. It returns an
// error if the operation does not take such arguments (a count and a length
// added, a division by nought); a [unit.OpError] is wrapped in it. Arguments are
// matched without a unit for bare numbers: give them one by [OpAs] first.
func (l *Ledger) Make(name string, op Op, fn string, args ...ID) (ID, error) {
	e := Entry{Name: name, Op: op, Func: fn, Args: args}
	id, key := l.find(&e)
	if id != 0 {
		return id, nil
	}
	if len(l.entries) >= MaxEntries {
		return 0, fmt.Errorf("%s: the ledger is full at %d entries", name, MaxEntries)
	}
	var err error
	if e.Value, err = l.compute(op, fn, args); err != nil {
		return 0, fmt.Errorf("%s: %w", name, err)
	}
	e.Args, e.Origin = l.keep(args), l.originOf(args)
	return l.append(e, key), nil
}

// MaxEntries is how many entries a ledger holds; Make refuses more.
const MaxEntries = 4_000_000

// At attaches a place to a derived entry made by Make and returns its id: the
// same computation written twice has two entries.
func (l *Ledger) At(id ID, where diag.Place) ID {
	e, ok := l.Entry(id)
	if !ok || e.Where == where {
		return id
	}
	free := e.Where.IsZero()
	e.Where = where
	same, key := l.find(&e)
	switch {
	case same != 0:
		return same
	case free:
		l.entries[id-1].Where = where
		l.lines[key] = id
		return id
	}
	return l.append(e, key)
}

// originOf is FromMeasured if anything measured took part, else Derived.
func (l *Ledger) originOf(args []ID) Origin {
	for _, a := range args {
		if e, ok := l.Entry(a); ok && (e.Origin == Measured || e.Origin == FromMeasured) {
			return FromMeasured
		}
	}
	return Derived
}

// keep copies arguments into room that is shared by many entries.
func (l *Ledger) keep(args []ID) []ID {
	if len(args) == 0 {
		return nil
	}
	if len(l.args)+len(args) > cap(l.args) {
		l.args = make([]ID, 0, max(4096, len(args)))
	}
	from := len(l.args)
	l.args = append(l.args, args...)
	return l.args[from:len(l.args):len(l.args)]
}

func (l *Ledger) append(e Entry, key uint64) ID {
	e.ID = ID(len(l.entries) + 1)
	l.entries = append(l.entries, e)
	l.lines[key] = e.ID
	return e.ID
}

// Learn adds pure functions that later entries may call, as analyses have their
// own. A name that is known already keeps its function.
func (l *Ledger) Learn(funcs Functions) {
	all := Functions{}
	maps.Copy(all, funcs)
	maps.Copy(all, l.funcs)
	l.funcs = all
}
