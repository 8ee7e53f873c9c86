package record

import (
	"iter"
	"maps"
	"slices"
	"strings"

	"scantling/internal/address"
)

// Why says in one word why an entry is not applied.
type Why string

// Why an entry is not applied.
const (
	Gone    Why = "gone"    // there is nothing of that address any more
	Another Why = "another" // what has that address now is another thing
)

// Unplaced is an entry that fits nothing any more. It is kept and told.
type Unplaced struct {
	Entry Entry
	// Number is the entry's place in the record, from 1.
	Number int
	Why    Why
}

// Placed is what a record says about what is there now.
type Placed struct {
	// Readings are the readings in force, by address and by what was read.
	Readings map[address.Address]map[string]Entry
	// Cuts are the parts that are cut, with the sizes as cut.
	Cuts map[address.Address]Entry
	// Unplaced are entries that no later entry has overtaken and that fit nothing.
	Unplaced []Unplaced
	// Again are readings and cuts in force although a later entry of the same
	// address and thing is unplaced: they fitted before, did not for a while, and
	// do so again. They are to be told, too.
	Again []Entry
}

// Reading returns the reading in force of that address and thing.
func (p Placed) Reading(a address.Address, what string) (Entry, bool) {
	e, ok := p.Readings[a][what]
	return e, ok
}

// Place finds what of a record still holds. The fingerprints are those of
// everything that can be measured or cut, as planned now, by address.
//
// Of several entries of one address and thing the last one that fits wins. A
// spoiled part takes back every earlier entry of the part and of what lies below
// its address, whether it fits or not. An entry whose address is gone, or has
// another fingerprint now, is not applied; unless it was taken back or a later
// entry of the same thing fits, it is unplaced.
func Place(r Record, fingerprints map[address.Address]string) Placed {
	p := Placed{Readings: map[address.Address]map[string]Entry{}, Cuts: map[address.Address]Entry{}}
	type thing struct {
		at   address.Address
		what string
		cut  bool
	}
	settled := map[thing]bool{}
	waiting := map[thing]bool{} // a later entry is unplaced
	spoiled := map[address.Address]bool{}
	for i := len(r) - 1; i >= 0; i-- {
		e := r[i]
		if e.Kind == Spoiled {
			spoiled[e.Address] = true
			continue
		}
		of := thing{e.Address, e.What, e.Kind == Cut}
		if settled[of] || takenBack(spoiled, e.Address) {
			continue
		}
		now, there := fingerprints[e.Address]
		if there && now == e.Fingerprint {
			settled[of] = true
			p.put(e)
			if waiting[of] {
				p.Again = append(p.Again, e)
			}
			continue
		}
		why := Gone
		if there {
			why = Another
		}
		waiting[of] = true
		p.Unplaced = append(p.Unplaced, Unplaced{e, i + 1, why})
	}
	slices.Reverse(p.Unplaced)
	slices.Reverse(p.Again)
	return p
}

// takenBack reports whether the part or something that it belongs to is spoiled.
func takenBack(spoiled map[address.Address]bool, a address.Address) bool {
	for at := string(a); len(spoiled) > 0; {
		if spoiled[address.Address(at)] {
			return true
		}
		i := strings.LastIndexByte(at, '.')
		if i < 0 {
			return false
		}
		at = at[:i]
	}
	return false
}

func (p *Placed) put(e Entry) {
	if e.Kind == Cut {
		p.Cuts[e.Address] = e
		return
	}
	if p.Readings[e.Address] == nil {
		p.Readings[e.Address] = map[string]Entry{}
	}
	p.Readings[e.Address][e.What] = e
}

// All yields the readings in force in the order of their addresses and names.
func (p Placed) All() iter.Seq[Entry] {
	return func(yield func(Entry) bool) {
		for _, a := range slices.SortedFunc(maps.Keys(p.Readings), address.Compare) {
			for _, what := range slices.Sorted(maps.Keys(p.Readings[a])) {
				if !yield(p.Readings[a][what]) {
					return
				}
			}
		}
	}
}
