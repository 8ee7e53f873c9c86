package cover

import (
	"cmp"
	"slices"
)

// rememberedOfKind bounds the patterns that are remembered for each kind.
const rememberedOfKind = 60

// Memory keeps good patterns of plans that came to nothing else: for each kind
// those of the greatest merit that hold it. They are what [Improve] may begin
// with, so that its prices are good from the start.
type Memory struct {
	byKind [][]remembered
}

type remembered struct {
	p     *Pattern
	merit float64
}

// NewMemory returns an empty memory for so many kinds.
func NewMemory(kinds int) *Memory { return &Memory{byKind: make([][]remembered, kinds)} }

// Note remembers a pattern if it is among those of the greatest merit of one of
// its kinds. merit is any measure that says how well patterns use their stock.
func (y *Memory) Note(p *Pattern, merit float64) {
	for _, e := range p.Use {
		y.insert(e.Kind, remembered{p, merit})
	}
}

func (y *Memory) insert(kind int, r remembered) {
	list := y.byKind[kind]
	at, _ := slices.BinarySearchFunc(list, r, func(a, b remembered) int { return cmp.Compare(b.merit, a.merit) })
	if at == rememberedOfKind {
		return
	}
	for _, q := range list[at:] {
		if q.merit != r.merit {
			break
		}
		if q.p.Stock == r.p.Stock && slices.Equal(q.p.Use, r.p.Use) {
			return
		}
	}
	if list = slices.Insert(list, at, r); len(list) > rememberedOfKind {
		list = list[:rememberedOfKind]
	}
	y.byKind[kind] = list
}

// Patterns returns what is remembered, each pattern once, by kind.
func (y *Memory) Patterns() []*Pattern {
	seen := map[*Pattern]bool{}
	var out []*Pattern
	for _, list := range y.byKind {
		for _, r := range list {
			if !seen[r.p] {
				seen[r.p] = true
				out = append(out, r.p)
			}
		}
	}
	return out
}
