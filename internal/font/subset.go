package font

import (
	"encoding/binary"
	"slices"
)

// Subset returns a TrueType file with the outlines of the given glyphs, of the
// glyphs that they are made of, and of glyph 0. Glyphs keep their numbers; the
// outlines of all others are empty. The same glyphs give the same bytes.
func (f *Face) Subset(glyphs []GID) []byte {
	keep := make([]bool, len(f.advances))
	f.reach(0, keep, 0)
	for _, g := range glyphs {
		f.reach(g, keep, 0)
	}
	var glyf []byte
	loca := make([]byte, 0, 4*len(f.offsets))
	for g := range f.advances {
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
		if keep[g] {
			glyf = append(glyf, f.outline(GID(g))...)
			for len(glyf)%4 != 0 {
				glyf = append(glyf, 0)
			}
		}
	}
	loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
	head := slices.Clone(f.tables["head"])
	binary.BigEndian.PutUint32(head[8:], 0)  // checksum adjustment, set below
	binary.BigEndian.PutUint16(head[50:], 1) // long offsets
	tables := map[string][]byte{"glyf": glyf, "loca": loca, "head": head}
	for _, name := range []string{"hhea", "hmtx", "maxp", "cvt ", "fpgm", "prep"} {
		if t := f.tables[name]; t != nil {
			tables[name] = t
		}
	}
	return assemble(tables)
}

// reach marks a glyph and those that a composite glyph is made of.
func (f *Face) reach(g GID, keep []bool, depth int) {
	if int(g) >= len(keep) || keep[g] || depth > 8 {
		return
	}
	keep[g] = true
	d := f.outline(g)
	if len(d) < 10 || int16(be16(d, 0)) >= 0 {
		return
	}
	const argsAreWords, scale, more, xyScale, twoByTwo = 1 << 0, 1 << 3, 1 << 5, 1 << 6, 1 << 7
	for at := 10; at+4 <= len(d); {
		flags := be16(d, at)
		f.reach(GID(be16(d, at+2)), keep, depth+1)
		at += 6
		if flags&argsAreWords != 0 {
			at += 2
		}
		switch {
		case flags&scale != 0:
			at += 2
		case flags&xyScale != 0:
			at += 4
		case flags&twoByTwo != 0:
			at += 8
		}
		if flags&more == 0 {
			return
		}
	}
}

// assemble writes a TrueType file of the tables, in the order of their names.
func assemble(tables map[string][]byte) []byte {
	var names []string
	for name := range tables {
		names = append(names, name)
	}
	slices.Sort(names)
	n := len(names)
	power, log := 1, 0
	for power*2 <= n {
		power, log = power*2, log+1
	}
	out := []byte{0, 1, 0, 0}
	for _, v := range []int{n, 16 * power, log, 16 * (n - power)} {
		out = binary.BigEndian.AppendUint16(out, uint16(v))
	}
	at, headAt := 12+16*n, 0
	var body []byte
	for _, name := range names {
		t := tables[name]
		if name == "head" {
			headAt = at
		}
		out = append(out, name...)
		for _, v := range []uint32{checksum(t), uint32(at), uint32(len(t))} {
			out = binary.BigEndian.AppendUint32(out, v)
		}
		body = append(body, t...)
		for len(body)%4 != 0 {
			body = append(body, 0)
		}
		at = 12 + 16*n + len(body)
	}
	out = append(out, body...)
	binary.BigEndian.PutUint32(out[headAt+8:], 0xB1B0AFBA-checksum(out))
	return out
}

// checksum adds a table up in words, as the OpenType specification's chapter
// "Calculating Checksums" says.
func checksum(t []byte) (sum uint32) {
	for i := 0; i < len(t); i += 4 {
		var w [4]byte
		copy(w[:], t[i:])
		sum += binary.BigEndian.Uint32(w[:])
	}
	return sum
}
