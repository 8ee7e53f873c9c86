package evaluate

import (
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/proportion"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// maxFingers bounds a box joint.
const maxFingers = 100

// fingers divides the common edge of a box joint: by a count, a size, or the
// cutter of the shop that suits best. The sizes add up to the edge exactly.
func (f *family) fingers(j *piece.Joint, p pair) bool {
	w, b, e := f.w(), f.d.block, f.env()
	run := runOf(p)
	ea, eb := p.a.extentIn(run), p.b.extentIn(run)
	low, high := w.ledger.Greatest("", ea.low, eb.low), w.ledger.Least("", ea.high, eb.high)
	edge := w.ledger.Less(string(j.Address)+".edge", high, low)
	if !f.first(j) {
		return false
	}
	if b.Has("fingers") {
		n, _, ok := f.d.s.maker.Count(e.value(b, "fingers", ""), 3, maxFingers, "")
		if !ok {
			return false
		}
		for k := range n {
			j.Fingers = append(j.Fingers, w.ledger.ShareOf(string(j.Address)+".finger", edge, k+1, n))
		}
		j.Finger = j.Fingers[0]
		return true
	}
	finger, ok := f.fingerSize(j, p, edge)
	if !ok {
		return false
	}
	j.Finger = finger
	found, err := proportion.BoxJoint(edge.Nm, finger.Nm)
	if err != nil {
		f.d.s.maker.Refused(err, b.Where)
		return false
	}
	for range found.Whole {
		j.Fingers = append(j.Fingers, finger)
	}
	if found.Last > 0 {
		whole := w.ledger.Times("", finger, int64(found.Whole), 1)
		j.Fingers = append(j.Fingers, w.ledger.Less(string(j.Address)+".last-finger", edge, whole))
	}
	return true
}

// fingerSize is the finger as stated, or the straight cutter that suits best.
func (f *family) fingerSize(j *piece.Joint, p pair, edge piece.Figure) (piece.Figure, bool) {
	w, b := f.w(), f.d.block
	name := string(j.Family) + ".finger"
	if b.Has("finger") {
		v, ok := f.env().length(b, "finger", name)
		if !ok || !f.env().reader(b).Positive(v, "finger", "finger") {
			return piece.Figure{}, false
		}
		return w.figure(v), true
	}
	var diameters []unit.Length
	for _, c := range w.shop.Cutters {
		if c.Tool.Shape == tool.Straight {
			diameters = append(diameters, c.Tool.Diameter)
		}
	}
	thin, _ := p.b.thickness().Is.Length()
	best, err := proportion.BestBoxJoint(edge.Nm, thin, diameters)
	if err != nil {
		f.d.s.maker.Refused(err, b.Where)
		return piece.Figure{}, false
	}
	for _, c := range w.shop.Cutters {
		if c.Tool.Shape == tool.Straight && c.Tool.Diameter == best.Finger.Value {
			id := w.ledger.Given(ledger.Entry{Name: name, Value: unit.OfLength(c.Tool.Diameter), Origin: ledger.Bought, Where: c.Where, Source: best.Finger.Source.Key})
			return w.ledger.Figure(id), true
		}
	}
	return piece.Figure{}, false
}

// first says who keeps the first finger from the low end.
func (f *family) first(j *piece.Joint) bool {
	j.First = "a"
	if !f.d.block.Has("first") {
		return true
	}
	switch word := f.env().words(f.d.block, "first"); word {
	case "of":
	case "into":
		j.First = "b"
	case "":
		return false
	default:
		f.env().reader(f.d.block).BadWord("first", word, []string{"of", "into"})
		return false
	}
	return true
}

// dowels places the dowels of a dowel joint; what is not said follows the rules
// of the trade.
func (f *family) dowels(j *piece.Joint, p pair) bool {
	w := f.w()
	if !f.d.block.Has("dowels") {
		f.d.s.missing(f.d.block, "dowels")
		return false
	}
	v, ok := f.object("dowels", "diameter", "count", "margin", "in_of", "in_into")
	if !ok {
		return false
	}
	name := string(j.Family) + ".dowels"
	out := &piece.Dowels{}
	n, counted := v.Field("count")
	if !counted {
		w.fault(formula.CodeMissing, v.Where, message.Text("name", "count"), message.Text("block", "dowels"))
		return false
	}
	var okC, okD, okM, okA, okB bool
	out.Count, _, okC = f.d.s.maker.Count(n, 1, 100, "")
	out.Diameter, okD = f.field(v, "diameter", name+".diameter")
	out.Margin, okM = f.field(v, "margin", name+".margin")
	out.InA, okA = f.field(v, "in_of", name+".in_of")
	out.InB, okB = f.field(v, "in_into", name+".in_into")
	if !okC || !okD || !okM || !okA || !okB {
		return false
	}
	if out.Diameter.Nm == 0 {
		w.fault(formula.CodeMissing, v.Where, message.Text("name", "diameter"), message.Text("block", "dowels"))
		return false
	}
	rule, err := proportion.DowelLength(out.Diameter.Nm, w.shop.Step())
	if err != nil {
		f.d.s.maker.Refused(err, v.Where)
		return false
	}
	for _, in := range []*piece.Figure{&out.InA, &out.InB} {
		if in.Nm == 0 {
			id := w.ledger.Given(ledger.Entry{Name: name + ".hole", Value: unit.OfLength(rule.Hole.Value), Origin: ledger.Reference, Source: rule.Hole.Source.Key, Status: string(rule.Hole.Source.Status)})
			*in = w.ledger.Figure(id)
		}
	}
	j.Dowels = out
	return true
}
