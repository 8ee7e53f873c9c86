package stages

import (
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/piece"
)

// inOrder returns the measures in an order in which they can be taken: a measure
// comes after those that the parts it reads wait for. Otherwise, and where they
// wait for each other in a circle, they stay as in the document.
func inOrder(p *piece.Piece) []piece.Measure {
	left := slices.Clone(p.Measures)
	before := make(map[address.Address][]address.Address, len(left))
	for _, m := range left {
		before[m.Address] = earlier(p, m)
	}
	var out []piece.Measure
	for len(left) > 0 {
		next := slices.IndexFunc(left, func(m piece.Measure) bool {
			return !slices.ContainsFunc(left, func(other piece.Measure) bool {
				return other.Address != m.Address && slices.Contains(before[m.Address], other.Address)
			})
		})
		next = max(next, 0)
		out = append(out, left[next])
		left = slices.Delete(left, next, next+1)
	}
	return out
}

// earlier lists the measures that what m reads waits for: the parts themselves,
// those that they go into where they are read there, and those that bound a space. Of the group that must be together nothing
// follows: parts may join it later.
func earlier(p *piece.Piece, m piece.Measure) []address.Address {
	reads := make(map[address.Address]bool, len(m.Of))
	for _, of := range m.Of {
		reads[of] = true
	}
	for _, s := range p.Spaces {
		if !reads[s.Address] {
			continue
		}
		for _, face := range s.Bounds {
			if i := strings.LastIndexByte(face, '.'); i > 0 {
				reads[address.Address(face[:i])] = true
			}
		}
	}
	for _, partner := range p.Partners(&m) {
		reads[partner] = true
	}
	var out []address.Address
	for _, part := range p.Parts {
		if !reads[part.Address] {
			continue
		}
		for _, w := range part.CutAfter {
			if w != m.Address && !slices.Contains(out, w) {
				out = append(out, w)
			}
		}
	}
	return out
}
