package ledger

import (
	"encoding/json"
	"fmt"
)

// MarshalJSON writes the ledger as the array of its entries.
func (l *Ledger) MarshalJSON() ([]byte, error) {
	if len(l.entries) == 0 {
		return []byte("[]"), nil
	}
	return json.Marshal(l.entries)
}

// UnmarshalJSON reads an array of entries. It checks that they are numbered
// from 1 and that arguments come before what is made from them; whether the
// arithmetic is right is for [Ledger.Verify] to say, once the functions are
// known ([Ledger.Use]).
func (l *Ledger) UnmarshalJSON(data []byte) error {
	var entries []Entry
	if err := json.Unmarshal(data, &entries); err != nil {
		return err
	}
	if len(entries) > MaxEntries {
		return fmt.Errorf("ledger: %d entries; at most %d are read", len(entries), MaxEntries)
	}
	for i, e := range entries {
		if e.ID != ID(i+1) {
			return fmt.Errorf("ledger: entry %d stands as number %d", e.ID, i+1)
		}
		for _, a := range e.Args {
			if a < 1 || a >= e.ID {
				return fmt.Errorf("ledger: argument %d of entry %d does not come before it", a, e.ID)
			}
		}
	}
	*l = Ledger{entries: entries, funcs: l.funcs}
	return nil
}
