package operations

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// CodeLidByHand says that no table saw of the shop may saw a lid off, so that it is
// sawn off by hand.
//
// Example: a lid that is reckoned with a kerf of 2 where the saw's is 3.
const CodeLidByHand diag.Code = "lid-by-hand"

// sawLids saws lids off the groups that stand, row by row of their walls.
func (d *deriver) sawLids() {
	for i := range d.Piece.Sawn {
		s := &d.Piece.Sawn[i]
		groups := map[string]bool{}
		var made []string
		for _, row := range d.Rows {
			if op, ok := d.sawLid(s, row, groups); ok {
				made = append(made, op)
			}
		}
		for g := range groups { // all sides at one setting: none waits for another
			d.last[g] = made
		}
	}
}

// sawLid saws the walls of one row, in every closed group that has some of them, which
// it notes.
func (d *deriver) sawLid(s *piece.Sawn, row plan.PartRow, groups map[string]bool) (string, bool) {
	at := slices.IndexFunc(d.cuts[row.Members[0]], func(c piece.Cut) bool { return s.Saws(&c) })
	if at < 0 {
		return "", false
	}
	cut := d.cuts[row.Members[0]][at]
	way, refused := d.lidWay(s, cut, row)
	if way.Machine == Hand && !s.ByHand {
		d.lidByHand(s, refused)
	}
	op := plan.Operation{
		ID: opID(string(s.Group), "cut", string(cut.Address)), Kind: plan.MakeCut, Workpiece: string(s.Group), Mark: row.Mark,
		Members: row.Members, Cuts: []address.Address{cut.Address}, Machine: way.Machine, Before: way.Work, After: way.Work,
	}
	for _, other := range d.Piece.Sawn {
		if slices.ContainsFunc(row.Members, other.Wall) {
			groups[string(other.Group)] = true
			op.Needs = append(op.Needs, d.last[string(other.Group)]...)
		}
	}
	slices.Sort(op.Needs)
	op.Needs = slices.Compact(op.Needs)
	d.out.Jobs = append(d.out.Jobs, Job{Operation: d.add(op), Row: row, Cut: cut, Way: way})
	return op.ID, true
}

// lidByHand tells why, once for each lid.
func (d *deriver) lidByHand(s *piece.Sawn, refused []message.Message) {
	for _, told := range d.diags {
		if told.Code == CodeLidByHand && told.Where == s.Where {
			return
		}
	}
	out := diag.Diagnostic{Severity: diag.Warning, Code: CodeLidByHand, Where: s.Where, Address: s.Address,
		Text: message.New("operations.lid-by-hand", message.Text("name", s.Name), message.Address("group", s.Group))}
	for _, r := range refused {
		out.Related = append(out.Related, diag.Related{Text: r, Where: s.Where})
	}
	d.diags = append(d.diags, out)
}

// lidWay is the table saw, the box on the outside of the wall and the lid's upper side
// against the fence, with the blade a little lower than the wall is thick, so that
// nothing comes loose while it turns; by hand where a saw does not take the box, or its
// kerf is not the one that was reckoned with. What is left at the saw goes to a knife.
// Common practice, no source.
func (d *deriver) lidWay(s *piece.Sawn, cut piece.Cut, row plan.PartRow) (Way, []message.Message) {
	way := handSlot(cut, *d.finished(row))
	way.Work = s.Size
	if s.ByHand {
		return way, nil
	}
	var refused []message.Message
	web := d.figure("rule.lid-web", d.rules.LidWeb)
	depth := d.Ledger.Less(string(cut.Address)+".blade", cut.Slot.Depth, web)
	for _, m := range d.Shop.Of(tool.TableSaw) {
		reasons := lidRefused(m, s, cut.Slot.Depth.Nm, depth.Nm, d.Shop.Reach[m.Name])
		if refused = append(refused, reasons...); len(reasons) > 0 {
			continue
		}
		way.Machine, way.Kind, way.Guide = m.Name, m.Kind, ByFence
		way.Depth, way.Size = depth, d.figure("machine."+m.Name+".kerf", m.Kerf)
		_, sign := d.frameOf(row).LocalOf(piece.Up)
		way.Fences = []piece.Side{piece.SideOf(cut.Slot.Across(), sign > 0)}
		return way, nil
	}
	return way, refused
}

func (d *deriver) frameOf(row plan.PartRow) piece.Frame {
	p, _ := d.part(row.Members[0])
	return p.Frame
}

// lidRefused says why a saw does not take a lid off.
func lidRefused(m tool.Machine, s *piece.Sawn, wall, depth, reach unit.Length) []message.Message {
	var out []message.Message
	for _, e := range m.Check(tool.Size{Length: max(s.Size[piece.Right].Nm, s.Size[piece.Back].Nm), Thickness: max(depth, 0)}) {
		out = append(out, e.Message())
	}
	name := message.Text("machine", m.Name)
	if m.Kerf.Value != s.Kerf.Nm {
		out = append(out, message.New("operations.lid-kerf", name, message.Length("got", m.Kerf.Value), message.Length("limit", s.Kerf.Nm)))
	}
	if depth < wall/2 {
		out = append(out, message.New("operations.lid-thin", name, message.Length("got", wall)))
	}
	if at := s.Lid.Nm + s.Clean.Nm; reach > 0 && at > reach {
		out = append(out, message.New("operations.fence-reach", name, message.Length("got", at), message.Length("limit", reach)))
	}
	return out
}
