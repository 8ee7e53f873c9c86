package font

import "slices"

// The three pieces of OpenType layout that are used: the feature "tnum" as
// single substitutions, and pair adjustments (formats 1 and 2) of "kern".

// featureLookups returns the subtables of the lookups that features of the
// given tag use, as type and bytes.
func featureLookups(t []byte, tag string) (subs []subtable) {
	features, lookups := int(be16(t, 6)), int(be16(t, 8))
	seen := map[int]bool{}
	var found []int
	for i := range int(be16(t, features)) {
		rec := features + 2 + 6*i
		if rec+6 > len(t) || string(t[rec:rec+4]) != tag {
			continue
		}
		feature := features + int(be16(t, rec+4))
		for k := range int(be16(t, feature+2)) {
			n := int(be16(t, feature+4+2*k))
			if seen[n] {
				continue
			}
			seen[n] = true
			found = append(found, n)
		}
	}
	slices.Sort(found) // lookups apply in their own order, not the feature's
	for _, n := range found {
		lookup := lookups + int(be16(t, lookups+2+2*n))
		kind := be16(t, lookup)
		for s := range int(be16(t, lookup+4)) {
			at := lookup + int(be16(t, lookup+6+2*s))
			if at < len(t) {
				subs = append(subs, subtable{kind, n, t[at:]})
			}
		}
	}
	return subs
}

type subtable struct {
	kind   uint16
	lookup int
	data   []byte
}

// coverage returns the glyphs of a coverage table in order.
func coverage(t []byte, at int) (glyphs []GID) {
	n := int(be16(t, at+2))
	if be16(t, at) == 1 {
		for i := range n {
			glyphs = append(glyphs, GID(be16(t, at+4+2*i)))
		}
		return glyphs
	}
	for i := range n {
		rec := at + 4 + 6*i
		for g := int(be16(t, rec)); g <= int(be16(t, rec+2)); g++ {
			glyphs = append(glyphs, GID(g))
		}
	}
	return glyphs
}

// classes sets the class of each glyph that a class definition names.
func classes(t []byte, at int, class []uint16) {
	set := func(g int, c uint16) {
		if g < len(class) {
			class[g] = c
		}
	}
	if be16(t, at) == 1 {
		for i := range int(be16(t, at+4)) {
			set(int(be16(t, at+2))+i, be16(t, at+6+2*i))
		}
		return
	}
	for i := range int(be16(t, at+2)) {
		rec := at + 4 + 6*i
		for g := int(be16(t, rec)); g <= int(be16(t, rec+2)); g++ {
			set(g, be16(t, rec+4))
		}
	}
}

// tabularDigits maps the characters whose glyphs have a tabular form to it.
func (f *Face) tabularDigits() {
	swap := map[GID]GID{}
	for _, s := range featureLookups(f.tables["GSUB"], "tnum") {
		if s.kind != 1 {
			continue
		}
		for i, g := range coverage(s.data, int(be16(s.data, 2))) {
			if be16(s.data, 0) == 1 {
				swap[g] = g + GID(be16(s.data, 4))
			} else {
				swap[g] = GID(be16(s.data, 6+2*i))
			}
		}
	}
	for r := '0'; r <= '9'; r++ {
		if g, ok := swap[f.cmap[r]]; ok {
			f.cmap[r] = g
		}
	}
}

// pairKern is one lookup of pair adjustments: single pairs first, then classes.
type pairKern struct {
	lookup  int
	pairs   map[[2]GID]int16
	inPairs []bool // by first glyph
	tables  []classKern
}

// classKern is a pair adjustment between classes of glyphs.
type classKern struct {
	first  []bool   // by glyph
	a, b   []uint16 // class by glyph
	values []int16
	nB     int
}

func (k *pairKern) value(a, b GID) int16 {
	if k.inPairs[a] {
		if v, ok := k.pairs[[2]GID{a, b}]; ok {
			return v
		}
	}
	for i := range k.tables {
		c := &k.tables[i]
		if !c.first[a] {
			continue
		}
		if i := int(c.a[a])*c.nB + int(c.b[b]); i < len(c.values) {
			return c.values[i]
		}
		return 0
	}
	return 0
}

// readKerning reads pair adjustments that change only the first advance.
func (f *Face) readKerning() {
	for _, s := range featureLookups(f.tables["GPOS"], "kern") {
		t := s.data
		if s.kind != 2 || be16(t, 4) != 4 || be16(t, 6) != 0 {
			continue
		}
		if n := len(f.kern); n == 0 || f.kern[n-1].lookup != s.lookup {
			f.kern = append(f.kern, pairKern{lookup: s.lookup, pairs: map[[2]GID]int16{}, inPairs: make([]bool, len(f.advances))})
		}
		k := &f.kern[len(f.kern)-1]
		first := coverage(t, int(be16(t, 2)))
		if be16(t, 0) == 2 {
			k.tables = append(k.tables, readClassKern(t, first, len(f.advances)))
			continue
		}
		for i, a := range first {
			if int(a) >= len(k.inPairs) {
				continue
			}
			k.inPairs[a] = true
			set := int(be16(t, 10+2*i))
			for n := range int(be16(t, set)) {
				rec := set + 2 + 4*n
				pair := [2]GID{a, GID(be16(t, rec))}
				if _, ok := k.pairs[pair]; !ok {
					k.pairs[pair] = int16(be16(t, rec+2))
				}
			}
		}
	}
}

func readClassKern(t []byte, first []GID, glyphs int) classKern {
	c := classKern{first: make([]bool, glyphs), a: make([]uint16, glyphs), b: make([]uint16, glyphs)}
	for _, g := range first {
		if int(g) < glyphs {
			c.first[g] = true
		}
	}
	classes(t, int(be16(t, 8)), c.a)
	classes(t, int(be16(t, 10)), c.b)
	nA, nB := int(be16(t, 12)), int(be16(t, 14))
	c.nB = nB
	c.values = make([]int16, nA*nB)
	for i := range c.values {
		c.values[i] = int16(be16(t, 16+2*i))
	}
	return c
}
