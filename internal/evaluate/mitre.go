package evaluate

import (
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/proportion"
	"scantling/internal/unit"
)

// across is what a mitre comes to, for the rules of what goes across it: the thinner
// part's thickness, how long the mitre's face is from the inner to the outer corner,
// and how high the corner.
type across struct {
	thickness, face, high piece.Figure
	frame                 bool
}

// mitre works out what goes across a mitre: a spline or keys, if any.
func (f *family) mitre(j *piece.Joint, p pair) bool {
	spline, _, splined, okS := f.saying("spline", "", "thickness", "depth", "heel")
	keys, count, keyed, okK := f.saying("keys", "count", "count", "thickness", "depth", "margin")
	if !okS || !okK {
		return false
	}
	if !splined && !keyed {
		return true
	}
	m, ok := f.acrossOf(j, p)
	if !ok {
		return false
	}
	if splined {
		s := &piece.Spline{}
		rule := func(what string) func() (piece.Figure, bool) {
			return func() (piece.Figure, bool) {
				return f.byRuleOf("spline."+what, "spline_"+what, m.thickness.Entry, m.face.Entry)
			}
		}
		var okT, okD, okH bool
		s.Thickness, okT = f.saidOr(spline, "thickness", "spline.thickness", rule("thickness"))
		s.Depth, okD = f.saidOr(spline, "depth", "spline.depth", rule("depth"))
		if okH = m.frame; !m.frame {
			s.Heel, okH = f.saidOr(spline, "heel", "spline.heel", rule("heel"))
		}
		if j.Spline = s; !okT || !okD || !okH {
			return false
		}
	}
	if !keyed {
		return true
	}
	k := &piece.Keys{}
	rule := func(what string) func() (piece.Figure, bool) {
		return func() (piece.Figure, bool) {
			return f.byRuleOf("key."+what, "key_"+what, m.high.Entry, m.thickness.Entry, m.face.Entry)
		}
	}
	var okT, okD, okM bool
	k.Thickness, okT = f.saidOr(keys, "thickness", "key.thickness", rule("thickness"))
	k.Depth, okD = f.saidOr(keys, "depth", "key.depth", rule("depth"))
	margin, okM := f.field(keys, "margin", string(f.address())+".key.margin")
	if !okT || !okD || !okM {
		return false
	}
	if count == 0 {
		found, err := proportion.MitreKeys(m.high.Nm, m.thickness.Nm, m.face.Nm, f.w().shop.Step())
		if err != nil {
			f.d.s.maker.Refused(err, f.d.block.Where)
			return false
		}
		count = found.Count
	}
	f.keyRow(j, k, m.high, margin, count)
	j.Keys = k
	return true
}

// keyRow places keys along a corner: evenly, or the first and the last a margin from
// the ends and the rest shared between.
func (f *family) keyRow(j *piece.Joint, k *piece.Keys, high, margin piece.Figure, count int) {
	l, name := f.w().ledger, string(j.Address)+".key"
	for n := range int64(count) {
		switch {
		case margin.Nm == 0 || count == 1:
			k.At = append(k.At, l.Times(name, high, 2*n+1, int64(2*count)))
		default:
			span := l.Less(name, high, margin, margin)
			k.At = append(k.At, l.Sum(name, margin, l.Times(name, span, n, int64(count-1))))
		}
	}
}

// acrossOf works out what a mitre comes to.
func (f *family) acrossOf(j *piece.Joint, p pair) (across, bool) {
	w, l := f.w(), f.w().ledger
	ta, tb := p.a.thickness(), p.b.thickness()
	fa, fb := p.a.form(), p.b.form()
	if !ta.OK() || !tb.OK() || !fa.ok || !fb.ok {
		return across{}, false
	}
	name := string(j.Address) + ".mitre"
	out := across{thickness: l.Least(name, w.figure(ta), w.figure(tb)), frame: fa.thick == fb.thick}
	one, other := ta, tb
	if out.frame {
		one, other = p.a.size(fa.wide), p.b.size(fb.wide)
		out.high = out.thickness
	} else {
		run := runOf(p)
		ea, eb := p.a.extentIn(run), p.b.extentIn(run)
		if !ea.ok || !eb.ok {
			return across{}, false
		}
		out.high = l.Less(name, l.Least("", ea.high, eb.high), l.Greatest("", ea.low, eb.low))
	}
	if !one.OK() || !other.OK() || out.high.Nm < unit.Millimetre {
		return across{}, one.OK() && other.OK()
	}
	id, err := l.Make(name, ledger.OpCall, "mitre_length", one.Entry, other.Entry)
	if err != nil {
		f.d.s.maker.Refused(err, f.d.block.Where)
		return across{}, false
	}
	out.face = l.Figure(id)
	return out, true
}
