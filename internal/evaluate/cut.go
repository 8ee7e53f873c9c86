package evaluate

import (
	"strings"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// cutter of wood: one cut block on one part.
type cutting struct {
	d    *decl
	b    *document.Block
	e    env
	p    *part
	name string // of the cut in the ledger
	out  piece.Cut
}

var slotKinds = map[string]piece.CutKind{
	"trough": piece.Trough, "groove": piece.Groove, "rebate": piece.Rebate, "housing": piece.Housing,
	"notch": piece.Notch, "recess": piece.Recess, "channel": piece.Channel,
}

const cutKindWords = "trough, groove, rebate, housing, notch, recess, channel, hole, scoop, eased"

// collectCut writes a cut block's cuts into the piece: one on each part named.
func (d *decl) collectCut() {
	if !d.present() {
		return
	}
	e := env{s: d.s}
	if !d.block.Has("on") {
		d.s.missing(d.block, "on")
		return
	}
	for _, x := range e.selections(d.block, "on", "part") {
		for _, n := range x.nodes() {
			p, ok := n.(*part)
			if !ok {
				d.s.w.fault(CodeWrongReference, x.where, message.Word("want", "kind.part"), message.Word("got", "kind.reference"))
				continue
			}
			if !p.done || !d.s.w.take(d.block.Where, 1) {
				continue
			}
			c := &cutting{d: d, b: d.block, e: e, p: p}
			c.out = piece.Cut{Address: p.addr.Child(slug(d.name)), Part: p.addr, Where: d.block.Where}
			c.name = string(c.out.Address)
			if c.work() {
				d.s.w.out.Cuts = append(d.s.w.out.Cuts, c.out)
			}
		}
	}
}

func (c *cutting) w() *world { return c.d.s.w }

func (c *cutting) work() bool {
	word := c.e.words(c.b, "kind")
	c.out.Cutter = c.cutter()
	c.out.After = c.after()
	switch word {
	case "":
		if !c.b.Has("kind") {
			c.d.s.missing(c.b, "kind")
		}
		return false
	case "hole":
		return c.hole()
	case "scoop":
		return c.scoop()
	case "eased":
		return c.eased()
	}
	kind, ok := slotKinds[word]
	if !ok {
		c.w().badWord(c.e, c.b, "kind", word, cutKindWords)
		return false
	}
	c.out.Kind = kind
	return c.slot()
}

// cutter checks that the shop has the cutter that the design asks for.
func (c *cutting) cutter() string {
	id := c.e.words(c.b, "cutter")
	if id == "" {
		return ""
	}
	if _, ok := c.w().shop.Cutter(id); !ok {
		var names []string
		for _, k := range c.w().shop.Cutters {
			names = append(names, k.ID)
		}
		at := c.b.Attribute("cutter").Value.Place()
		var remedies []diag.Remedy
		if near := document.Nearest(id, names); near != "" {
			remedies = append(remedies, c.d.s.file.Replace(at, quoted(near)))
		}
		c.w().faultWith(CodeNoCutter, at, remedies, message.Text("name", clip(id)), message.Text("known", strings.Join(names, ", ")))
		return ""
	}
	return id
}

// after lists the cuts of the same part that come before this one.
func (c *cutting) after() []address.Address {
	var out []address.Address
	for _, x := range c.e.selections(c.b, "after", "cut") {
		if k := x.decl.block.Type; k != "cut" && k != "series" {
			c.w().fault(CodeWrongReference, x.where, message.Word("want", "kind.cut"), message.Word("got", "block."+k))
			continue
		}
		if x.decl.present() {
			out = append(out, c.p.addr.Child(slug(x.decl.name)))
		}
	}
	return out
}

// need works out a length that the cut cannot do without.
func (c *cutting) need(attribute string) (formula.Value, bool) {
	if !c.b.Has(attribute) {
		c.d.s.missing(c.b, attribute)
		return formula.Value{}, false
	}
	return c.e.length(c.b, attribute, c.name+"."+attribute)
}

// open works out the side that the cut goes into.
func (c *cutting) open(attribute string) (piece.Side, piece.Axis, bool) {
	if !c.b.Has(attribute) {
		c.d.s.missing(c.b, attribute)
		return "", 0, false
	}
	word := c.e.words(c.b, attribute)
	d, ok := c.p.faceWord(word)
	if !ok {
		if word != "" {
			c.w().badWord(c.e, c.b, attribute, word, "left, right, front, back, top, bottom")
		}
		return "", 0, false
	}
	axis, _ := d.Axis()
	return c.p.form().frame.SideToward(d), axis, true
}

// local turns a distance along an axis of the piece into one along the part's
// own axis, from its local origin. A plain length counts from the part's low end
// there (from the mirrored end for the right one of a pair); a position is where
// it is.
func (c *cutting) local(axis piece.Axis, v formula.Value) piece.Figure {
	w, p := c.w(), c.p
	size := p.sizeAlong(axis)
	figure := w.figure(v)
	mirrored := p.hand == "right" && axis == piece.Right
	if v.Position != nil && v.Position.Axis == int(axis) {
		v = w.carried(v, w.root.frame, c.d.s.maker)
		figure = w.ledger.Less("", w.figure(v), p.extentIn(axis).low)
		mirrored = false
	}
	if _, sign := p.form().frame.LocalOf(axis); (sign < 0) != mirrored {
		figure = w.ledger.Less("", size, figure)
	}
	return figure
}

// sizeAlong is the part's size along an axis of the piece.
func (p *part) sizeAlong(axis piece.Axis) piece.Figure {
	e := p.extentIn(axis)
	return p.w().ledger.Less(p.name()+"."+sizeWords[axis], e.high, e.low)
}

// stretch turns two places along an axis into the part's own axis, low first.
func (c *cutting) stretch(axis piece.Axis, from, to formula.Value) (low, high piece.Figure) {
	low, high = c.local(axis, from), c.local(axis, to)
	if low.Nm > high.Nm {
		low, high = high, low
	}
	return low, high
}

// slot works out a straight cut.
func (c *cutting) slot() bool {
	side, openAxis, ok := c.open("side")
	if !ok {
		return false
	}
	run, ok := c.run(openAxis)
	if !ok {
		return false
	}
	across := 3 - openAxis - run
	near, far, ok := c.between(across)
	if !ok {
		return false
	}
	depth, ok := c.need("depth")
	if !ok || !c.w().positive(depth, c.b.Attribute("depth"), c.name+".depth") {
		return false
	}
	s := &piece.Slot{Open: side, Depth: c.w().figure(depth)}
	local, _ := c.p.form().frame.LocalOf(run)
	s.Run = local
	s.Near, s.Far = c.stretch(across, near, far)
	whole := c.p.sizeAlong(run)
	s.From, s.To, ok = c.limits(run, whole)
	s.StartOpen, s.EndOpen = s.From.Nm <= 0, s.To.Nm >= whole.Nm
	if k, found := c.w().shop.Cutter(c.out.Cutter); found && k.Tool.NoseRadius() > 0 {
		id := c.w().ledger.Given(ledger.Entry{Name: c.name + ".corner", Value: unit.OfLength(k.Tool.NoseRadius()), Origin: ledger.Bought, Where: k.Where})
		s.Corner = c.w().ledger.Figure(id)
	}
	c.out.Slot = s
	return ok && c.fits(s, openAxis, across)
}

// run works out the axis that a slot runs along: as said, or along the grain.
func (c *cutting) run(open piece.Axis) (piece.Axis, bool) {
	if !c.b.Has("runs") {
		return c.p.form().grain, c.p.form().grain != open
	}
	word := c.e.words(c.b, "runs")
	d, ok := grains[word]
	axis, _ := d.Axis()
	if !ok || axis == open {
		if word != "" {
			c.w().badWord(c.e, c.b, "runs", word, "right, back, up")
		}
		return 0, false
	}
	return axis, true
}

// between works out where a slot lies across its run: near and far, or a centre
// and a width, or one side and a width.
func (c *cutting) between(across piece.Axis) (near, far formula.Value, ok bool) {
	has := c.b.Has
	switch {
	case has("near") && has("far"):
		near, okN := c.need("near")
		far, okF := c.need("far")
		return near, far, okN && okF
	case has("centre") && has("width"):
		centre, okC := c.need("centre")
		width, okW := c.need("width")
		if !okC || !okW {
			return near, far, false
		}
		half := c.w().ledger.Half("", c.w().figure(width))
		return c.shifted(centre, ledger.OpSub, half), c.shifted(centre, ledger.OpAdd, half), true
	case has("near") && has("width"):
		near, okN := c.need("near")
		width, okW := c.need("width")
		if !okN || !okW {
			return near, far, false
		}
		return near, c.shifted(near, ledger.OpAdd, c.w().figure(width)), true
	}
	c.w().fault(CodeCutPlace, c.b.Where, message.Text("name", c.d.name))
	return near, far, false
}

// shifted moves a length or a position by another length.
func (c *cutting) shifted(v formula.Value, op ledger.Op, by piece.Figure) formula.Value {
	out := quantity(c.w().ledger.Figure(c.w().make("", op, v.Entry, by.Entry)))
	if v.Position != nil {
		out.Position = &formula.Position{Axis: v.Position.Axis, Frame: v.Position.Frame}
	}
	return out
}

// limits works out where a slot begins and ends along its run; without words it
// runs through.
func (c *cutting) limits(run piece.Axis, whole piece.Figure) (from, to piece.Figure, ok bool) {
	from, to = c.w().ledger.Leaf(c.name+".from", 0, ledger.Derived, ""), whole
	if !c.b.Has("from") && !c.b.Has("to") {
		return from, to, true
	}
	start, end := quantity(from), quantity(whole)
	if c.b.Has("from") {
		if start, ok = c.need("from"); !ok {
			return from, to, false
		}
	}
	if c.b.Has("to") {
		if end, ok = c.need("to"); !ok {
			return from, to, false
		}
	}
	from, to = c.stretch(run, start, end)
	return from, to, true
}

// fits sees to it that a slot has a width and leaves something of the part.
func (c *cutting) fits(s *piece.Slot, open, across piece.Axis) bool {
	deep := c.p.sizeAlong(open)
	switch {
	case s.Far.Nm <= s.Near.Nm || s.To.Nm <= s.From.Nm:
		c.w().fault(CodeNotPositive, c.b.Where, message.Text("name", c.name), message.Length("got", s.Far.Nm-s.Near.Nm))
		return false
	case s.Far.Nm <= 0 || s.Near.Nm >= c.p.sizeAlong(across).Nm:
		c.w().fault(CodeCutMisses, c.b.Where, message.Text("name", c.d.name), message.Length("near", s.Near.Nm), message.Length("width", c.p.sizeAlong(across).Nm))
		return false
	case s.Depth.Nm >= deep.Nm && c.out.Kind != piece.Notch:
		c.w().fault(CodeCutThrough, c.b.Where, message.Text("name", c.d.name), message.Length("depth", s.Depth.Nm), message.Length("thickness", deep.Nm))
		return false
	}
	return true
}
