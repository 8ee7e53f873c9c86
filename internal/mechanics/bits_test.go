package mechanics_test

import (
	"hash/fnv"
	"math"
	"testing"

	"scantling/internal/mechanics"
	"scantling/internal/unit"
)

// sameBits is the hash of results on amd64; arm64 and wasm must give the same to the last
// bit, or a plan made here would be another one there.
const sameBits = 0x9e06716805bf24d7

func TestSameBits(t *testing.T) {
	h := fnv.New64a()
	add := func(x float64) {
		var b [8]byte
		for i := range b {
			b[i] = byte(math.Float64bits(x) >> (8 * i))
		}
		h.Write(b[:])
	}
	for k := range 400 {
		x := float64(k-200) / 7
		add(mechanics.Exp(x))
		add(mechanics.Ln(float64(k+1) / 3))
		add(mechanics.Power(float64(k+1)/11, 0.89))
		add(float64(mechanics.DowelWithdrawal(unit.MM(8), unit.Length(k)*unit.Millimetre/3, 12.3, 13.9)))
		l, _ := mechanics.SpanFor(mechanics.Stress(1000+float64(k)*37), unit.MM(19), 2.39, 144)
		add(l.Millimetres())
		bow, _ := mechanics.TwoLayer{First: unit.Length(k+1) * unit.Millimetre / 9, Second: unit.MM(6), StiffFirst: 900, StiffSecond: 4763, Apart: 0.0073}.Bow()
		add(float64(bow))
	}
	for _, how := range []mechanics.Keeping{mechanics.FlatOnBench, mechanics.OnEdge, mechanics.BothMachined} {
		each, worst, at, err := tray(11).CupDays(how, unit.MM(180), perPoint, 14)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range append(each, worst) {
			add(float64(c.Bend))
		}
		add(float64(at))
	}
	if got := h.Sum64(); got != sameBits {
		t.Errorf("results are not those of other machines: %#x, want %#x", got, uint64(sameBits))
	}
}
