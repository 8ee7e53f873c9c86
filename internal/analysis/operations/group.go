package operations

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/analysis/turns"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

// groups adds what is done to groups, turn by turn: assembly, cuts after glue-up,
// fitting into spaces, parts that are added late; finish at the end.
func (d *deriver) groups() {
	events := turns.Order(d.Piece)
	late := turns.Late(events)
	fitted := map[string]bool{} // rows of late parts
	for _, e := range events {
		switch {
		case e.Group != "":
			d.assemble(e.Group, late)
			for _, f := range d.Piece.Fits {
				if f.Moves == e.Group {
					d.fit(f)
				}
			}
		case e.Late != "":
			if mark := d.rowOf[e.Late]; !fitted[mark] {
				fitted[mark] = true
				d.addLate(mark)
			}
		}
	}
	d.sawLids()
	for _, f := range d.Piece.Finishes {
		d.finish(f)
	}
}

// assemble joins the parts of a group that have joints with each other.
func (d *deriver) assemble(g address.Address, late map[address.Address]bool) {
	members := d.joined(g, late)
	if len(members) < 2 {
		return
	}
	id := string(g)
	keys := []string{id}
	for _, m := range members {
		keys = append(keys, "part."+d.rowOf[m])
	}
	d.after(plan.Operation{
		ID: opID(id, string(plan.Assemble)), Kind: plan.Assemble, Workpiece: id, Makes: id,
		Members: members, Machine: Hand,
	}, keys...)
	for _, m := range members {
		for _, c := range d.cuts[m] {
			if c.AfterGlueUp == g && c.Kind != piece.LidKerf {
				d.cutAssembly(g, m, c)
			}
		}
	}
}

// cutAssembly cuts a part of a group that is already together, by hand.
func (d *deriver) cutAssembly(g address.Address, m address.Address, c piece.Cut) {
	id := string(g)
	op := plan.Operation{
		ID: opID(id, "cut", string(c.Address)), Kind: plan.MakeCut, Workpiece: id, Mark: d.rowOf[m],
		Members: []address.Address{m}, Cuts: []address.Address{c.Address}, Machine: Hand,
	}
	for _, row := range d.Rows {
		if row.Mark == op.Mark {
			job := Job{Operation: d.after(op, id), Row: row, Cut: c, Way: Way{Machine: Hand, Guide: ByHand}}
			if c.Slot != nil {
				job.Way = handSlot(c, *d.finished(row))
			}
			d.out.Jobs = append(d.out.Jobs, job)
			return
		}
	}
}

// addLate fits a row's parts to the group that already stands.
func (d *deriver) addLate(mark string) {
	i := slices.IndexFunc(d.Rows, func(r plan.PartRow) bool { return r.Mark == mark })
	if i < 0 {
		return
	}
	row := d.Rows[i]
	keys := []string{partID(row)}
	for _, m := range row.Members {
		if p, ok := d.part(m); ok {
			keys = append(keys, string(p.Group))
		}
	}
	slices.Sort(keys)
	d.after(plan.Operation{
		ID: opID(row.Mark, string(plan.FitPart)), Kind: plan.FitPart, Workpiece: partID(row), Mark: row.Mark,
		Members: row.Members, Machine: Hand,
	}, slices.Compact(keys)...)
}

// joined returns the parts of the group that a joint holds to another part, in
// the order of the piece.
func (d *deriver) joined(g address.Address, late map[address.Address]bool) []address.Address {
	if d.held == nil {
		d.held = turns.Joined(d.Piece)
	}
	var out []address.Address
	for _, p := range d.Piece.Parts {
		if p.Group != g {
			continue
		}
		if d.held[p.Address] && !late[p.Address] {
			out = append(out, p.Address)
		}
	}
	return out
}

// fit fits a moving group in its space.
func (d *deriver) fit(f piece.Fit) {
	d.after(plan.Operation{
		ID: opID(string(f.Moves), string(plan.FitPart), string(f.Address)), Kind: plan.FitPart, Workpiece: string(f.Moves),
		Members: []address.Address{f.Moves}, Machine: Hand,
	}, string(f.Moves), string(f.Inside.Parent()))
}

// finish finishes a set of parts, before or after they are put together.
func (d *deriver) finish(f piece.Finish) {
	op := plan.Operation{
		ID: opID(string(f.Address), string(plan.FinishPart)), Kind: plan.FinishPart, Workpiece: string(f.Address),
		Members: f.On, Machine: Hand,
	}
	keys := []string{}
	for _, a := range f.On {
		keys = append(keys, "part."+d.rowOf[a])
		if p, ok := d.part(a); ok && f.When != "before assembly" {
			keys = append(keys, string(p.Group))
		}
	}
	slices.Sort(keys)
	d.after(op, slices.Compact(keys)...)
}

func (d *deriver) part(a address.Address) (piece.Part, bool) {
	for _, p := range d.Piece.Parts {
		if p.Address == a {
			return p, true
		}
	}
	return piece.Part{}, false
}
