package evaluate

import (
	"cmp"
	"slices"
	"strconv"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/formula"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// body is a part's uncut box, for finding what meets.
type body struct {
	p   *part
	box [3]piece.Extent
	nth int // among its side of the joint
}

// resolve finds the pairs of parts that a family joins: those of its two sides
// that touch over a face or overlap.
func (f *family) resolve() {
	if f.kind() == "" || !f.d.present() {
		return
	}
	f.checkWords()
	as, goodA := f.bodies("of")
	bs, goodB := f.bodies("into")
	f.meet(as, bs)
	if goodA && goodB {
		f.checkMeets(len(as), len(bs))
	}
}

// bodies lists one side's parts; good is false where one of them could not be
// worked out, so that a count would be wrong through no fault of the joint's.
func (f *family) bodies(attribute string) ([]body, bool) {
	var out []body
	good := true
	seen := map[*part]bool{}
	selections := f.side(attribute)
	good = len(selections) > 0
	for _, x := range selections {
		if x.failed() {
			good = false
		}
		for _, n := range x.nodes() {
			p, ok := n.(*part)
			if !ok {
				f.w().fault(formula.CodeWrongReference, x.where, message.Word("want", "kind.part"), message.Word("got", "kind.reference"))
				good = false
				continue
			}
			if seen[p] {
				continue
			}
			seen[p] = true
			b := body{p: p, nth: len(out)}
			for axis := range 3 {
				e := p.extentIn(piece.Axis(axis))
				b.box[axis] = piece.Extent{Low: e.low, High: e.high}
				if !e.ok {
					good = false
				}
			}
			if p.conflict {
				good = false
			}
			if p.done == nil {
				good = false
				continue
			}
			out = append(out, b)
		}
	}
	return out, good
}

// meet holds every part of one side against those of the other that can reach
// it along the height, which are found in order of their lower ends.
func (f *family) meet(as, bs []body) {
	sorted := slices.Clone(bs)
	up := func(b body) piece.Extent { return b.box[piece.Up] }
	slices.SortStableFunc(sorted, func(x, y body) int { return cmp.Compare(up(x).Low.Nm, up(y).Low.Nm) })
	highest := make([]int64, len(sorted))
	for i, b := range sorted {
		highest[i] = int64(up(b).High.Nm)
		if i > 0 {
			highest[i] = max(highest[i], highest[i-1])
		}
	}
	joined := map[pair]bool{}
	for _, a := range as {
		var hits []body
		from, _ := slices.BinarySearchFunc(sorted, up(a).High.Nm+1, func(b body, high unit.Length) int { return cmp.Compare(up(b).Low.Nm, high) })
		for i := from - 1; i >= 0 && highest[i] >= int64(up(a).Low.Nm); i-- {
			if f.w().work.Pairs++; f.w().work.Pairs > f.w().limits.Pairs {
				f.w().report(diag.Diagnostic{Severity: diag.Error, Code: CodeTooManyPairs, Where: f.d.block.Where, Text: textOf(CodeTooManyPairs, message.Count("most", f.w().limits.Pairs))})
				return
			}
			if b := sorted[i]; b.p != a.p && meets(a.box, b.box) {
				hits = append(hits, b)
			}
		}
		slices.SortFunc(hits, func(x, y body) int { return cmp.Compare(x.nth, y.nth) })
		for _, b := range hits {
			if joined[pair{b.p, a.p}] || joined[pair{a.p, b.p}] {
				continue
			}
			joined[pair{a.p, b.p}] = true
			f.pairs = append(f.pairs, pair{a.p, b.p})
		}
	}
}

// meets reports whether two boxes overlap or touch over a face; to share only an
// edge or a corner is not to meet.
func meets(a, b [3]piece.Extent) bool {
	touching := 0
	for axis := range 3 {
		over := min(a[axis].High.Nm, b[axis].High.Nm) - max(a[axis].Low.Nm, b[axis].Low.Nm)
		if over < 0 {
			return false
		}
		if over == 0 {
			touching++
		}
	}
	return touching <= 1
}

// checkMeets holds the pairs found against those expected.
func (f *family) checkMeets(as, bs int) {
	w, b := f.w(), f.d.block
	got := len(f.pairs)
	where, want := b.Where, -1
	if a := b.Attribute("meets"); a != nil {
		n, _, ok := f.d.s.maker.Count(f.env().value(b, "meets", ""), 0, maxRepeat*maxRepeat, "")
		if !ok || n == got {
			return
		}
		where, want = a.Value.Place(), n
	} else if got > 0 || as == 0 || bs == 0 {
		return
	}
	d := diag.Diagnostic{Severity: diag.Error, Code: CodeMeets, Where: where, Address: f.address(),
		Text: textOf(CodeMeets, message.Text("name", f.d.name), message.Count("got", got), message.Count("want", max(want, 1)))}
	if want >= 0 && got > 0 {
		d.Remedies = []diag.Remedy{f.d.s.file.Replace(where, strconv.Itoa(got))}
	}
	w.report(d)
}

// collect writes the family's pairs into the piece, with all their figures.
func (f *family) collect() {
	f.resolve()
	for i, p := range f.pairs {
		j := piece.Joint{
			Address: f.d.s.addr.Child("joint").Nth(slug(f.d.name), i+1), Family: f.address(), Kind: f.kind(),
			A: p.a.addr, B: p.b.addr, Where: f.d.block.Where,
		}
		if f.figures(&j, p) {
			f.w().out.Joints = append(f.w().out.Joints, j)
		}
	}
}

// addressesOver lists the families that this one goes before.
func (f *family) addressesOver() []address.Address {
	var out []address.Address
	for _, x := range f.env().selections(f.d.block, "over", "joint") {
		if x.decl.family == nil {
			f.w().fault(formula.CodeWrongReference, x.where, message.Word("want", "kind.joint"), message.Word("got", "kind.reference"))
			continue
		}
		out = append(out, x.decl.family.address())
	}
	return out
}
