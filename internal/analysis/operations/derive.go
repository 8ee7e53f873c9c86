package operations

import (
	"fmt"
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Derive returns the operations in a valid order: rough work, planing, cuts row
// by row, assembly, fitting, finish. It reports cuts that no machine makes.
func Derive(in Input) (Result, diag.List) {
	d := deriver{
		Input: in, rules: in.Shop.Rules.Completed(),
		cuts: map[address.Address][]piece.Cut{}, rowOf: map[address.Address]string{}, blanks: map[address.Address]int{},
		last: map[string][]string{},
	}
	d.Shop = in.Shop.indexed()
	for _, c := range in.Cuts {
		d.cuts[c.Part] = append(d.cuts[c.Part], c)
	}
	for _, row := range in.Rows {
		for _, m := range row.Members {
			d.rowOf[m] = row.Mark
		}
	}
	for i, w := range in.Workpieces {
		if w.Kind == plan.BlankPiece || w.Kind == plan.PanelPiece {
			for _, p := range w.Parts {
				d.blanks[p] = i
			}
		}
	}
	d.rough()
	for _, row := range in.Rows {
		d.prepare(row)
	}
	for _, row := range in.Rows {
		d.row(row)
	}
	d.groups()
	return d.out, d.diags
}

type deriver struct {
	Input
	rules  Rules
	cuts   map[address.Address][]piece.Cut
	rowOf  map[address.Address]string
	blanks map[address.Address]int
	held   map[address.Address]bool // parts that a joint holds
	thick  map[string]piece.Figure  // of the board that a blank is sawn from
	// last holds what was done last to a workpiece, a row or a group: what the
	// next operation on it needs.
	last  map[string][]string
	out   Result
	diags diag.List
	// refused are the cuts by hand that are told already.
	refused map[string]bool
}

// add appends an operation.
func (d *deriver) add(op plan.Operation) string {
	d.out.Operations = append(d.out.Operations, op)
	return op.ID
}

// after appends an operation that needs all that was done to the keys and is
// then the last thing done to them.
func (d *deriver) after(op plan.Operation, keys ...string) string {
	for _, k := range keys {
		op.Needs = append(op.Needs, d.last[k]...)
	}
	slices.Sort(op.Needs)
	op.Needs = slices.Compact(op.Needs)
	for _, k := range keys {
		d.last[k] = []string{op.ID}
	}
	return d.add(op)
}

// figure enters a figure of the shop in the ledger.
func (d *deriver) figure(name string, f figure.Of[unit.Length]) piece.Figure {
	origin := ledger.HouseRule
	switch f.Source.Status {
	case figure.Stated:
		origin = ledger.Bought
	case figure.Read, figure.Memory:
		origin = ledger.Reference
	}
	return d.Ledger.Leaf(name, f.Value, origin, f.Source.String())
}

func (d *deriver) figureZero() piece.Figure {
	return d.Ledger.Leaf("zero", 0, ledger.Derived, "")
}

// row adds the operations that make the cuts of a row, those on the longer
// blank before it is cut to length.
func (d *deriver) row(row plan.PartRow) {
	key := partID(row)
	jobs := d.rowCuts(row)
	var long, short []Job
	for _, j := range jobs {
		switch {
		case j.Cut.AfterGlueUp != "":
			continue // made on the assembly
		case j.Way.Long:
			long = append(long, j)
		default:
			short = append(short, j)
		}
	}
	d.cutsOf(row, key, long)
	d.toLength(row, key)
	d.cutsOf(row, key, short)
}

// batchKey groups the cuts of one row that one machine makes at one setting of
// height, in one rank.
type batchKey struct {
	machine, cutter string
	down            piece.Side
	run             piece.Local
	depth           unit.Length
	rank            int
	ends            [2]bool
	from, to        unit.Length // of the ends that stop in the wood
	kind            piece.CutKind
}

func keyOf(j Job) batchKey {
	k := batchKey{
		machine: j.Way.Machine, cutter: j.Way.Cutter.Name, down: j.Way.Down, run: j.Way.Run,
		depth: j.Way.Depth.Nm, rank: rankOfCut(j.Cut), kind: j.Cut.Kind,
		ends: [2]bool{j.Way.StartOpen, j.Way.EndOpen},
	}
	if !j.Way.StartOpen {
		k.from = j.Way.From.Nm
	}
	if !j.Way.EndOpen {
		k.to = j.Way.To.Nm
	}
	if j.Cut.Slot == nil { // holes of one drill, scoops, edges: each kind together
		k.down, k.run = "", 0
	}
	return k
}

// cutsOf adds one operation for each batch of cuts; a batch needs the batches of
// lower rank, and those that hold a cut that it must come after.
func (d *deriver) cutsOf(row plan.PartRow, key string, jobs []Job) {
	var order []batchKey
	batches := map[batchKey][]Job{}
	for _, j := range jobs {
		k := keyOf(j)
		if _, ok := batches[k]; !ok {
			order = append(order, k)
		}
		batches[k] = append(batches[k], j)
	}
	before := slices.Clone(d.last[key])
	made := map[address.Address]string{} // cut: operation
	byRank := map[int][]string{}
	var all []string
	for _, k := range order {
		batch := batches[k]
		op := d.cutOperation(row, batch)
		op.Needs = slices.Clone(before)
		for r, ids := range byRank {
			if r < k.rank {
				op.Needs = append(op.Needs, ids...)
			}
		}
		for _, j := range batch {
			made[j.Cut.Address] = op.ID
			for _, a := range j.Cut.After {
				if id := made[a]; id != "" && id != op.ID {
					op.Needs = append(op.Needs, id)
				}
			}
		}
		slices.Sort(op.Needs)
		op.Needs = slices.Compact(op.Needs)
		byRank[k.rank] = append(byRank[k.rank], op.ID)
		all = append(all, d.add(op))
		for _, j := range batch {
			j.Operation = op.ID
			d.out.Jobs = append(d.out.Jobs, j)
		}
	}
	if len(all) > 0 {
		d.last[key] = all
	}
}

func (d *deriver) cutOperation(row plan.PartRow, batch []Job) plan.Operation {
	first := batch[0]
	op := plan.Operation{
		ID: opID(row.Mark, "cut", string(first.Cut.Address)), Kind: plan.MakeCut,
		Workpiece: partID(row), Mark: row.Mark, Members: row.Members,
		Machine: first.Way.Machine, Cutter: first.Way.Cutter.Name,
		Before: first.Way.Work, After: first.Way.Work,
	}
	if first.Way.Long {
		blank, _ := d.blankOf(row.Members[0])
		op.Workpiece = blank.ID
	}
	for _, j := range batch {
		op.Cuts = append(op.Cuts, j.Cut.Address)
	}
	return op
}

func partID(row plan.PartRow) string { return "part." + row.Mark }

// opID is readable and says what the operation is done to.
func opID(to string, words ...string) string {
	return to + ": " + strings.Join(words, " ")
}

// sized returns a figure triple.
func sized(w plan.Workpiece) [3]piece.Figure {
	return [3]piece.Figure{w.Length, w.Width, w.Thickness}
}

func numbered(word string, n int) string { return fmt.Sprintf("%s %d", word, n) }
