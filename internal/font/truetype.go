package font

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// The layout of the tables is that of the OpenType specification 1.9 (ISO/IEC
// 14496-22), chapters named like the tables.

var errShort = errors.New("table too short")

// be16 and be32 read big-endian numbers; past the end they read zero, so that
// a broken face gives wrong glyphs and no panic.
func be16(b []byte, at int) uint16 {
	if at < 0 || at+2 > len(b) {
		return 0
	}
	return binary.BigEndian.Uint16(b[at:])
}

func be32(b []byte, at int) uint32 {
	if at < 0 || at+4 > len(b) {
		return 0
	}
	return binary.BigEndian.Uint32(b[at:])
}

// parse reads a face with outlines in glyf.
func parse(data []byte) (*Face, error) {
	f := &Face{data: data, tables: map[string][]byte{}}
	for i := range int(be16(data, 4)) {
		at := 12 + 16*i
		if at+16 > len(data) {
			return nil, errShort
		}
		from, size := int64(be32(data, at+8)), int64(be32(data, at+12))
		if from+size > int64(len(data)) {
			return nil, fmt.Errorf("%s: %w", data[at:at+4], errShort)
		}
		f.tables[string(data[at:at+4])] = data[from : from+size]
	}
	for _, name := range []string{"head", "hhea", "hmtx", "maxp", "loca", "glyf", "cmap", "OS/2"} {
		if f.tables[name] == nil {
			return nil, fmt.Errorf("no table %s", name)
		}
	}
	head, hhea, os2 := f.tables["head"], f.tables["hhea"], f.tables["OS/2"]
	if len(head) < 54 || len(hhea) < 36 || len(os2) < 90 {
		return nil, errShort
	}
	f.em = float64(be16(head, 18))
	if f.em == 0 {
		return nil, errors.New("no units per em")
	}
	for i := range f.Box {
		f.Box[i] = float64(int16(be16(head, 36+2*i))) / f.em
	}
	f.Ascent = float64(int16(be16(hhea, 4))) / f.em
	f.Descent = -float64(int16(be16(hhea, 6))) / f.em
	f.CapHeight = float64(int16(be16(os2, 88))) / f.em
	f.readWidths()
	if err := f.readCmap(); err != nil {
		return nil, err
	}
	f.tabularDigits()
	for r := range f.ascii {
		f.ascii[r] = f.cmap[rune(r)]
	}
	f.readKerning()
	return f, nil
}

// readWidths reads hmtx and loca.
func (f *Face) readWidths() {
	glyphs := int(be16(f.tables["maxp"], 4))
	metrics := int(be16(f.tables["hhea"], 34))
	hmtx, loca := f.tables["hmtx"], f.tables["loca"]
	long := be16(f.tables["head"], 50) != 0
	f.advances = make([]uint16, glyphs)
	f.offsets = make([]uint32, glyphs+1)
	for g := range f.advances {
		f.advances[g] = be16(hmtx, 4*min(g, metrics-1))
	}
	for g := range f.offsets {
		if long {
			f.offsets[g] = be32(loca, 4*g)
		} else {
			f.offsets[g] = 2 * uint32(be16(loca, 2*g))
		}
	}
}

// readCmap reads the Unicode subtable of format 4.
func (f *Face) readCmap() error {
	cmap := f.tables["cmap"]
	for i := range int(be16(cmap, 2)) {
		at := int(be32(cmap, 4+8*i+4))
		if at < len(cmap) && be16(cmap, at) == 4 {
			f.readSegments(cmap[at:])
			return nil
		}
	}
	return errors.New("cmap: no subtable of format 4")
}

func (f *Face) readSegments(t []byte) {
	f.cmap = map[rune]GID{}
	n := int(be16(t, 6)) / 2
	for i := range n {
		end, start := int(be16(t, 14+2*i)), int(be16(t, 16+2*n+2*i))
		delta, at := be16(t, 16+4*n+2*i), 16+6*n+2*i
		rangeOffset := int(be16(t, at))
		for c := start; c <= end && c < 0xFFFF; c++ {
			g := uint16(c) + delta
			if rangeOffset != 0 {
				if g = be16(t, at+rangeOffset+2*(c-start)); g != 0 {
					g += delta
				}
			}
			if g != 0 && int(g) < len(f.advances) {
				f.cmap[rune(c)] = GID(g)
			}
		}
	}
}
