package hidden

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"testing"
)

// sameBytes is the hash of scenes solved and drawn. It changes when the kernel
// does, and then in the same commit; it may not differ between platforms: run
// this test natively and under js/wasm.
const sameBytes = "f57b58645ccc4a09b55e6f74b223aa0d2248f5cee496e8a7b6cd31c399efc38a"

func TestSameBytesEverywhere(t *testing.T) {
	h := sha256.New()
	for seed := range uint64(4) {
		all := heap(seed, 12)
		for _, p := range all {
			m := p.Solid.Mesh()
			fmt.Fprintf(h, "%x %x\n", p.Solid.Volume(), p.Solid.Area())
			for _, v := range m.Verts {
				fmt.Fprintf(h, "%x %x %x\n", v.X, v.Y, v.Z)
			}
			fmt.Fprintln(h, m.Tris, m.Creases)
		}
		for _, s := range Draw(all, View{Sight: at(-1, 0.7, -0.9), Up: at(0, 0, 1), Hidden: true}).Strokes {
			fmt.Fprintf(h, "%x %x %x %x %x %x %v\n", s.From, s.To, s.Centre, s.Major, s.Start, s.Sweep, s.Tags)
		}
	}
	if got := hex.EncodeToString(h.Sum(nil)); got != sameBytes {
		t.Errorf("hash %s, recorded %s", got, sameBytes)
	}
}
