package shortlist

import (
	"math/bits"
	"slices"

	"scantling/internal/optimise/ceiling"
)

// filling is one way to fill a rectangle: two others side by side, or a piece.
type filling struct {
	guide, value int64
	hash         uint64 // of what it holds
	a, b         int32  // fillings; or a is a piece
	at           int32  // where the second begins
	how          how
}

// how a filling joins two others.
type how int8

const (
	single  how = iota // not at all: a piece
	across             // a crosscut parts them
	along              // a rip parts them
	stacked            // in a column
	beside             // columns in a strip
	above              // strips in a sheet
)

// mostFillings bounds the fillings that are kept at once.
const mostFillings = 1 << 20

// pool holds fillings, and what each of them holds: a byte for every kind.
type pool struct {
	pieces   []ceiling.Piece
	words    int
	limit    []uint64 // of each kind, with the top bit of its byte set
	fillings []filling
	counts   []uint64
	clipped  bool // a kind's limit did not go into seven bits
}

const tops = 0x8080808080808080

// mostOf is the greatest limit that a byte holds beside its top bit.
const mostOf = 127

// slots gives each kind that is left a byte.
func (p *pool) slots(q Question) []int {
	slot := make([]int, len(q.Left))
	n := 0
	seen := make([]bool, len(q.Left))
	for _, l := range p.pieces {
		seen[l.Kind] = true
	}
	for k := range slot {
		slot[k] = -1
		if seen[k] {
			slot[k] = n
			n++
		}
	}
	p.words = (n + 7) / 8
	p.limit = make([]uint64, p.words)
	for k, i := range slot {
		if i < 0 {
			continue
		}
		most := q.Left[k]
		if most > mostOf {
			most, p.clipped = mostOf, true
		}
		p.limit[i/8] |= uint64(most) << (i % 8 * 8)
	}
	for i := range p.limit {
		p.limit[i] |= tops
	}
	return slot
}

// together says whether two fillings hold no kind too often.
func (p *pool) together(a, b int32) bool {
	x := p.counts[int(a)*p.words:][:p.words]
	y := p.counts[int(b)*p.words:][:p.words]
	for i, l := range p.limit {
		if bits.OnesCount64((l-x[i]-y[i])&tops) != 8 {
			return false
		}
	}
	return true
}

// same says whether a filling holds what a and b hold together.
func (p *pool) same(f, a, b int32) bool {
	z := p.counts[int(f)*p.words:][:p.words]
	x := p.counts[int(a)*p.words:][:p.words]
	y := p.counts[int(b)*p.words:][:p.words]
	for i := range z {
		if z[i] != x[i]+y[i] {
			return false
		}
	}
	return true
}

// equal says whether two fillings hold the same.
func (p *pool) equal(f, g int32) bool {
	return slices.Equal(p.counts[int(f)*p.words:][:p.words], p.counts[int(g)*p.words:][:p.words])
}

// add keeps a filling that joins a and b.
func (p *pool) add(f filling) int32 {
	p.fillings = append(p.fillings, f)
	for i := range p.words {
		p.counts = append(p.counts, p.counts[int(f.a)*p.words+i]+p.counts[int(f.b)*p.words+i])
	}
	return int32(len(p.fillings) - 1)
}
