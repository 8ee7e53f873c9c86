package operations

import (
	"cmp"
	"fmt"
	"slices"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
)

// Codes of what this analysis reports.
const (
	// CodeByHand says that a round-bottomed channel, a groove or another long cut
	// must be made by hand because no machine of the shop may make it.
	//
	// Example: a channel of 4 mm radius where the shop has no round-nose cutter of
	// that radius.
	CodeByHand diag.Code = "cut-by-hand"
	// CodeCutCycle says that cuts of one part wait for each other.
	CodeCutCycle diag.Code = "cut-cycle"
)

// rowCuts returns the cuts of a row's first member in working order, each with
// its way. Cuts that are alike are made the same way where one way serves all.
func (d *deriver) rowCuts(row plan.PartRow) []Job {
	finished, long := d.finished(row), d.long(row)
	cuts := d.inOrder(d.cuts[row.Members[0]])
	var jobs []Job
	ways := make([][]Way, len(cuts))
	refused := make([][]message.Message, len(cuts))
	for i, cut := range cuts {
		ways[i], refused[i] = d.waysOf(cut, finished, long)
	}
	onPart := map[address.Address]bool{} // made on the finished part
	for i, cut := range cuts {
		if slices.ContainsFunc(cut.After, func(a address.Address) bool { return onPart[a] }) {
			ways[i] = slices.DeleteFunc(slices.Clone(ways[i]), func(w Way) bool { return w.Long })
		}
		way, ok := common(cuts, ways, i)
		if !ok {
			if cut.Slot != nil && !handwork(cut.Kind) && cut.Kind != piece.LidKerf {
				d.report(cut, refused[i])
			}
			way = byHand(cut, *finished)
		}
		onPart[cut.Address] = !way.Long
		jobs = append(jobs, Job{Row: row, Cut: cut, Way: way})
	}
	return jobs
}

// handwork reports whether a cut is made by hand as a matter of course: a notch is
// small and at a corner, and cut to the knife line; dovetails are sawn and chopped to
// the lines of those already cut, keys' slots sawn into the glued corner.
func handwork(k piece.CutKind) bool {
	switch k {
	case piece.Notch, piece.Tail, piece.Pin, piece.KeySlot:
		return true
	}
	return false
}

// leans reports whether a slot's walls lean, so that no pass of a straight cutter or
// a saw blade makes it.
func leans(s *piece.Slot) bool { return s.LeanNear.Nm != 0 || s.LeanFar.Nm != 0 }

// waysOf returns the ways to make a cut by machine, the best first; none for what is
// made by hand.
func (d *deriver) waysOf(cut piece.Cut, finished, long *work) ([]Way, []message.Message) {
	switch {
	case cut.Slot == nil:
		return []Way{otherWay(d.Shop, d.Ledger, cut, d.cuts[cut.Part], *finished)}, nil
	case handwork(cut.Kind) || cut.AfterGlueUp != "":
		return nil, nil
	case cut.Kind == piece.Mortise || cut.Kind == piece.ScrewSlot:
		return mortiseWays(d.Shop, d.Ledger, cut, finished, long)
	}
	return slotWays(d.Shop, d.Ledger, cut, finished, long)
}

// tools is what cuts that are made the same way share.
type tools struct {
	machine, cutter string
	long            bool
}

func toolsOf(w Way) tools { return tools{w.Machine, w.Cutter.Name, w.Long} }

// common returns the way of cut i: of the tools that can make every cut like it,
// those that cost least in all; its own best way if no tools serve all.
func common(cuts []piece.Cut, ways [][]Way, i int) (Way, bool) {
	if len(ways[i]) == 0 {
		return Way{}, false
	}
	total := map[tools]int{}
	served := map[tools]int{}
	like := 0
	for k := range cuts {
		if !alike(cuts[i], cuts[k]) {
			continue
		}
		like++
		seen := map[tools]bool{}
		for _, w := range ways[k] {
			if t := toolsOf(w); !seen[t] {
				seen[t] = true
				served[t]++
				total[t] += w.Cost()
			}
		}
	}
	best := ways[i][0]
	found := false
	for _, w := range ways[i] {
		t := toolsOf(w)
		if served[t] == like && (!found || total[t] < total[toolsOf(best)]) {
			best, found = w, true
		}
	}
	return best, true
}

// alike reports whether two cuts of one part differ only in where they lie.
func alike(a, b piece.Cut) bool {
	if a.Kind != b.Kind || a.Slot == nil || b.Slot == nil {
		return a.Address == b.Address
	}
	s, t := a.Slot, b.Slot
	return s.Run == t.Run && s.Depth.Nm == t.Depth.Nm && s.Far.Nm-s.Near.Nm == t.Far.Nm-t.Near.Nm &&
		s.StartOpen == t.StartOpen && s.EndOpen == t.EndOpen && len(a.After) == len(b.After)
}

// byHand is the way of a cut that no machine makes.
func byHand(cut piece.Cut, w work) Way {
	if cut.Slot != nil {
		return handSlot(cut, w)
	}
	return Way{Machine: Hand, Guide: ByHand, Work: w.size, At: w.at}
}

// report tells of a cut that no machine makes; cuts of one part from one line of the
// document that are refused for the same reasons are told once.
func (d *deriver) report(cut piece.Cut, refused []message.Message) {
	key := fmt.Sprint(cut.Part, cut.Kind, cut.Where, refused)
	if !cut.Where.IsZero() && d.refused[key] {
		return
	}
	if d.refused == nil {
		d.refused = map[string]bool{}
	}
	d.refused[key] = true
	diagnostic := diag.Diagnostic{
		Severity: diag.Warning, Code: CodeByHand, Where: cut.Where, Address: cut.Address,
		Text: message.New("operations.cut-by-hand", message.Word("cut", "cut."+string(cut.Kind)), message.Address("part", cut.Part)),
	}
	for _, r := range refused {
		diagnostic.Related = append(diagnostic.Related, diag.Related{Text: r, Where: cut.Where})
	}
	d.diags = append(d.diags, diagnostic)
}

// rankOfCut orders the cuts of one part where nothing else does: across the
// grain before along it, so that the later cut takes away the torn edge; blind
// work and outline work last.
func rankOfCut(c piece.Cut) int {
	switch {
	case c.Bore != nil:
		return 5
	case c.Dip != nil:
		return 7
	case c.Ease != nil:
		return 8
	case c.Pocket != nil:
		return 6
	case c.Slot == nil: // a slice: what is measured from the edge is done by then
		return 7
	case c.Kind == piece.Notch:
		return 6
	case c.Kind == piece.Socket:
		return 1
	case c.Kind == piece.Channel:
		return 4
	case c.Slot.Run == piece.AlongLength:
		return 3
	}
	return 2
}

// inOrder sorts cuts by rank, then as they were given, but none before those
// that it must come after. Cuts that wait for each other are reported and kept
// in the order of their ranks.
func (d *deriver) inOrder(cuts []piece.Cut) []piece.Cut {
	left := slices.Clone(cuts)
	slices.SortStableFunc(left, func(a, b piece.Cut) int { return cmp.Compare(rankOfCut(a), rankOfCut(b)) })
	var out []piece.Cut
	waits := map[address.Address]bool{}
	for _, c := range left {
		waits[c.Address] = true
	}
	for len(left) > 0 {
		i := slices.IndexFunc(left, func(c piece.Cut) bool {
			return !slices.ContainsFunc(c.After, func(a address.Address) bool { return a != c.Address && waits[a] })
		})
		if i < 0 {
			d.diags = append(d.diags, diag.Diagnostic{
				Severity: diag.Error, Code: CodeCutCycle, Where: left[0].Where, Address: left[0].Address,
				Text: message.New("operations.cut-cycle", message.Address("part", left[0].Part), message.Count("cuts", len(left))),
			})
			return append(out, left...)
		}
		delete(waits, left[i].Address)
		out = append(out, left[i])
		left = slices.Delete(left, i, i+1)
	}
	return out
}

// finished is the row's part at its finished size.
func (d *deriver) finished(row plan.PartRow) *work {
	return &work{
		size: [3]piece.Figure{row.Length, row.Width, row.Thickness},
		at:   []piece.Figure{d.Ledger.Less("zero", row.Length, row.Length)},
	}
}

// long is the blank that the row's first part is still in before it is cut to
// length, nil if it is not longer or holds parts of other rows.
func (d *deriver) long(row plan.PartRow) *work {
	blank, ok := d.blankOf(row.Members[0])
	if !ok || row.Sheet || blank.Length.Nm <= row.Length.Nm || blank.Length.Entry == 0 {
		return nil
	}
	for _, p := range blank.Parts {
		if d.rowOf[p] != row.Mark {
			return nil
		}
	}
	w := work{size: [3]piece.Figure{blank.Length, row.Width, row.Thickness}, long: true}
	at := d.Ledger.Less("zero", row.Length, row.Length)
	kerf := d.kerf()
	for range blank.Parts {
		w.at = append(w.at, at)
		at = d.Ledger.Sum(blank.ID+".at", at, row.Length, kerf)
	}
	return &w
}

// blankOf returns the workpiece that becomes the part: a blank or a panel.
func (d *deriver) blankOf(part address.Address) (plan.Workpiece, bool) {
	i, ok := d.blanks[part]
	if !ok {
		return plan.Workpiece{}, false
	}
	return d.Workpieces[i], true
}

// kerf is what the saw that cuts parts to length turns to dust.
func (d *deriver) kerf() piece.Figure {
	for _, kind := range []tool.Kind{tool.TableSaw, tool.MitreSaw, tool.BandSaw} {
		for _, m := range d.Shop.Of(kind) {
			if m.Kerf.Known() {
				return d.figure("machine."+m.Name+".kerf", m.Kerf)
			}
		}
	}
	return piece.Figure{Entry: d.figureZero().Entry}
}
