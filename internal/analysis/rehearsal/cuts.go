package rehearsal

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// made is what a placement does to one cut of one row.
type made struct {
	card  plan.Setup
	place plan.Placement
	op    plan.Operation
	turn  bool
}

// cuts carries out every card and compares what comes out with the design.
func (r *rehearsal) cuts() {
	by := r.byCut()
	cuts := map[address.Address][]piece.Cut{}
	for _, c := range r.Cuts {
		cuts[c.Part] = append(cuts[c.Part], c)
	}
	for _, row := range r.Plan.Parts {
		for _, c := range cuts[first(row)] {
			r.report.Cuts++
			list := by[rowCut{row.Mark, c.Address}]
			delete(by, rowCut{row.Mark, c.Address})
			switch {
			case len(list) == 0:
				r.fail(CodeMissing, "rehearsal.cut-missing", c.Address, message.Text("mark", row.Mark))
			case c.Kind == piece.LidKerf && isMachined(list[0].place):
				r.lid(row, c, list)
			case c.Slot != nil && isMachined(list[0].place):
				r.machined(row, c, list)
			default:
				r.marked(row, c, list)
			}
		}
	}
	left := make([]rowCut, 0, len(by))
	for k := range by {
		left = append(left, k)
	}
	slices.SortFunc(left, func(a, b rowCut) int {
		return cmp.Or(cmp.Compare(a.mark, b.mark), address.Compare(a.cut, b.cut))
	})
	for _, k := range left {
		r.fail(CodeCut, "rehearsal.cut-unknown", k.cut, message.Text("mark", k.mark))
	}
	r.held()
}

type rowCut struct {
	mark string
	cut  address.Address
}

// byCut gathers the placements by what they cut, in the order of the cards, and
// checks that each is covered by just one operation of its card.
func (r *rehearsal) byCut() map[rowCut][]made {
	opOf := map[rowCut]plan.Operation{}
	for _, op := range r.Plan.Operations {
		for _, a := range op.Cuts {
			k := rowCut{op.Mark, a}
			if _, twice := opOf[k]; twice {
				r.fail(CodeTwice, "rehearsal.cut-twice", a, message.Text("mark", op.Mark))
			}
			opOf[k] = op
		}
	}
	out := map[rowCut][]made{}
	for _, c := range r.Plan.Setups {
		r.cutterIs(c)
		for _, p := range c.Placements {
			for n, a := range p.Cuts {
				k := rowCut{p.Mark, a}
				op, ok := opOf[k]
				if !ok || op.Setup != c.ID {
					r.fail(CodeTwice, "rehearsal.cut-on-another-card", a, message.Text("mark", p.Mark), message.Text("card", c.ID))
					continue
				}
				if len(p.Cuts) > 2 || n == 1 && !p.Turn {
					r.fail(CodeTwice, "rehearsal.two-cuts-one-setting", a, message.Text("mark", p.Mark), message.Text("card", c.ID))
				}
				out[k] = append(out[k], made{c, p, op, n == 1})
			}
		}
	}
	return out
}

// cutterIs compares the card's cutter with the one in the drawer, its blade with
// the saw's kerf.
func (r *rehearsal) cutterIs(c plan.Setup) {
	want := c.CutterSize.Nm
	for _, x := range r.Cutters {
		if x.Name == c.Cutter {
			want = x.Diameter
			switch {
			case x.Shape == tool.RoundOver || x.Shape == tool.Cove:
				want = x.Radius
			case x.Shape == tool.Chamfer: // as much as stands out
				want = c.CutterSize.Nm
			case x.Shape == tool.VGroove: // as wide as it stands in the table's surface
				if want = veeAtTable(c, x); (want - c.CutterSize.Nm).Abs() <= veeSlack {
					want = c.CutterSize.Nm
				}
			}
		}
	}
	if m, ok := r.machine[c.Machine]; ok && c.CutterShape == "saw blade" && m.Kerf.Known() {
		want = m.Kerf.Value
	}
	if c.CutterSize.Nm != want {
		r.fail(CodeCut, "rehearsal.cutter-size", "", message.Text("card", c.ID), message.Length("is", c.CutterSize.Nm), message.Length("want", want))
	}
}

// veeSlack is what rounding a tangent leaves. Common practice, no source.
const veeSlack = 20 * unit.Micrometre

// veeAtTable is how wide a V cutter is where it comes out of the table: half its
// diameter to either side of the point over the length of its edges.
func veeAtTable(c plan.Setup, x tool.Cutter) unit.Length {
	h, ok := setting(c.Settings, "height")
	if !ok || x.CuttingLength <= 0 || h.Figure.Nm > x.CuttingLength {
		return 0
	}
	return unit.FromMillimetres(float64(x.Diameter.Millimetres()*h.Figure.Nm.Millimetres()) / x.CuttingLength.Millimetres())
}

// leans reports whether the cutter leaves what the slot wants of its walls: a V, and
// only a V, where they lean and meet.
func leans(c plan.Setup, s *piece.Slot) bool {
	vee := s.LeanNear.Nm == s.LeanFar.Nm && (s.Far.Nm-s.Near.Nm-2*s.LeanNear.Nm).Abs() <= veeSlack
	straight := s.LeanNear.Nm == 0 && s.LeanFar.Nm == 0
	if c.CutterShape == string(tool.VGroove) {
		return vee
	}
	return straight
}

// box is a stretch along each local axis.
type box [3]span

type span struct{ low, high unit.Length }

func (s span) size() unit.Length { return s.high - s.low }

// boxOf is the wood that a slot takes out of a part.
func boxOf(s *piece.Slot, size state) box {
	var b box
	open, high := s.Open.Axis()
	b[open] = span{0, s.Depth.Nm}
	if high {
		b[open] = span{size[open] - s.Depth.Nm, size[open]}
	}
	b[s.Run] = span{s.From.Nm, s.To.Nm}
	if s.StartOpen {
		b[s.Run].low = 0
	}
	if s.EndOpen {
		b[s.Run].high = size[s.Run]
	}
	b[s.Across()] = span{s.Near.Nm, s.Far.Nm}
	return b
}

// machined works out where the passes land and compares them with the slot, in
// every part that comes out of the work.
func (r *rehearsal) machined(row plan.PartRow, c piece.Cut, list []made) {
	size := state{row.Length.Nm, row.Width.Nm, row.Thickness.Nm}
	want := boxOf(c.Slot, size)
	var passes []pass
	for _, m := range list {
		got, ok := r.passesOf(m)
		if !ok {
			r.fail(CodeCut, "rehearsal.cannot-lie-so", c.Address, message.Text("mark", row.Mark), message.Text("card", m.card.ID))
			return
		}
		passes = append(passes, got...)
		if !leans(m.card, c.Slot) {
			r.fail(CodeCut, "rehearsal.wrong-walls", c.Address, message.Text("mark", row.Mark), message.Text("card", m.card.ID))
		}
		if m.card.CutterShape == "round-nose" != (c.Slot.Corner.Nm > 0) || c.Slot.Corner.Nm > 0 && m.card.CutterSize.Nm/2 != c.Slot.Corner.Nm {
			r.fail(CodeCut, "rehearsal.wrong-bottom", c.Address, message.Text("mark", row.Mark), message.Text("card", m.card.ID))
		}
	}
	for _, start := range r.starts(row, list[0].op) {
		r.compare(row, c, want, passes, start, size)
	}
}

// starts lists where the parts of a row begin in the work that is offered.
func (r *rehearsal) starts(row plan.PartRow, op plan.Operation) []unit.Length {
	blank, ok := r.work[op.Workpiece]
	if !ok || blank.Kind != plan.BlankPiece && blank.Kind != plan.PanelPiece {
		return []unit.Length{0}
	}
	var out []unit.Length
	at := unit.Length(0)
	for _, p := range blank.Parts {
		if slices.Contains(row.Members, p) {
			out = append(out, at)
		}
		at += r.lengthOf[p] + r.kerf()
	}
	return out
}

// kerf is what is lost between two parts of one blank: that of the card that
// cuts to length, else of the saw.
func (r *rehearsal) kerf() unit.Length {
	for _, m := range r.Machines {
		if m.Kind == "table saw" && m.Kerf.Known() {
			return m.Kerf.Value
		}
	}
	return 0
}

// compare checks that the passes open just the wanted box of the part that
// begins at start.
func (r *rehearsal) compare(row plan.PartRow, c piece.Cut, want box, passes []pass, start unit.Length, size state) {
	var across []span
	axis, slack := passes[0].across, passes[0].slack
	for _, p := range passes {
		b := p.box
		b[piece.AlongLength] = span{b[piece.AlongLength].low - start, b[piece.AlongLength].high - start}
		empty := false
		for a := range b {
			b[a] = span{max(0, b[a].low), min(size[a], b[a].high)}
			empty = empty || b[a].size() <= 0
		}
		if empty {
			continue // in another part of the blank
		}
		for a := range b {
			if piece.Local(a) != axis && !lies(b[a], want[a], p.slack) {
				r.lands(row, c, piece.Local(a), b[a], want[a])
				return
			}
		}
		across, slack = append(across, b[axis]), max(slack, p.slack)
	}
	if len(across) == 0 {
		r.fail(CodeMissing, "rehearsal.cut-missing", c.Address, message.Text("mark", row.Mark))
		return
	}
	slices.SortFunc(across, func(a, b span) int { return cmp.Compare(a.low, b.low) })
	all := across[0]
	for _, s := range across[1:] {
		if s.low > all.high+unit.Micrometre {
			r.fail(CodeCut, "rehearsal.wood-left", c.Address, message.Text("mark", row.Mark), message.Length("from", all.high), message.Length("to", s.low))
			return
		}
		all.high = max(all.high, s.high)
	}
	if !lies(all, want[axis], slack) {
		r.lands(row, c, axis, all, want[axis])
	}
}

// lies reports whether a stretch lies where it is wanted.
func lies(a, b span, slack unit.Length) bool {
	return (a.low-b.low).Abs() <= slack && (a.high-b.high).Abs() <= slack
}

func (r *rehearsal) lands(row plan.PartRow, c piece.Cut, axis piece.Local, is, want span) {
	r.fail(CodeCut, "rehearsal.lands-elsewhere", c.Address, message.Text("mark", row.Mark),
		message.Word("axis", [3]string{"size.length", "size.width", "size.thickness"}[axis]),
		message.Length("from", is.low), message.Length("to", is.high),
		message.Length("wanted-from", want.low), message.Length("wanted-to", want.high))
}
