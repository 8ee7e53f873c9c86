package ledger

import "slices"

// Clone returns a ledger with the same entries under the same numbers. What is
// entered in one is not seen in the other: an answer can be tried on a clone and
// thrown away. It knows the same functions.
func (l *Ledger) Clone() *Ledger {
	return &Ledger{entries: slices.Clone(l.entries), funcs: l.funcs}
}
