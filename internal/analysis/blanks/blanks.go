package blanks

import (
	"fmt"
	"slices"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// CodeNoStock says that no stock in the rack is thick and long enough for a part.
const CodeNoStock diag.Code = "no-stock"

// Input is what the derivation reads.
type Input struct {
	Piece *piece.Piece
	// Cuts are those of all parts, of their own and of joints.
	Cuts       []piece.Cut
	Rows       []plan.PartRow
	Stock      []Stock
	Limits     Limits
	Allowances Allowances
	// Layouts are how the panels of a mark are shared out into strips; a mark that is
	// not there has equal strips, and so has one whose layout cannot be.
	Layouts map[string]Layout
	Ledger  *ledger.Ledger
}

// Derive returns the workpieces, in the order of the rows and, within a row,
// blanks and strips before panels before the part; assemblies come last.
func Derive(in Input) ([]plan.Workpiece, diag.List) {
	d := derive(in)
	return d.out, d.diags
}

func derive(in Input) *deriver {
	d := &deriver{Input: in, series: map[address.Address][]piece.Series{}, slots: map[address.Address][]piece.Cut{}, cuts: map[address.Address][]piece.Cut{},
		own: map[string]string{}, from: map[address.Address][]int{}}
	for _, m := range in.Piece.Materials {
		d.own[m.Name] = m.Stock
	}
	for _, s := range in.Piece.Series {
		d.series[s.Part] = append(d.series[s.Part], s)
	}
	for _, c := range in.Cuts {
		d.cuts[c.Part] = append(d.cuts[c.Part], c)
		if c.Slot != nil {
			d.slots[c.Part] = append(d.slots[c.Part], c)
		}
	}
	var short []plan.PartRow
	for _, row := range in.Rows {
		switch stock, ok := d.stockFor(row); {
		case !ok:
			d.refuse(row)
		case stock.Sheet:
			d.fromSheet(row, stock)
		case d.gangs(row):
			short = append(short, row)
		default:
			d.fromBoard(row, stock)
		}
	}
	d.gang(short)
	for _, row := range in.Rows {
		d.part(row)
	}
	d.assemblies()
	return d
}

type deriver struct {
	Input
	series map[address.Address][]piece.Series
	slots  map[address.Address][]piece.Cut
	cuts   map[address.Address][]piece.Cut
	// own names the stock that answers for a material; from lists the blanks and
	// panels that a part comes out of, by their places in out.
	own  map[string]string
	from map[address.Address][]int
	// glued are the panels, the first of each mark.
	glued []glued
	out   []plan.Workpiece
	diags diag.List
}

// together says with which other parts a part is sawn from one board.
func (d *deriver) together(member address.Address) []message.Message {
	var out []message.Message
	for _, t := range d.Piece.Together {
		if !slices.Contains(t.Parts, member) {
			continue
		}
		var parts []message.Arg
		for _, p := range t.Parts {
			parts = append(parts, message.Address("", p))
		}
		out = append(out, message.New("blanks.together", message.List("parts", parts...)))
	}
	return out
}

// fromSheet makes one blank a part, at its finished size: sheet goods are cut
// once.
func (d *deriver) fromSheet(row plan.PartRow, s Stock) {
	for i, member := range row.Members {
		d.add(plan.Workpiece{
			ID: blankID(row.Mark, i+1), Kind: plan.BlankPiece, Mark: row.Mark, Parts: []address.Address{member}, Count: 1,
			Material: row.Material, Stock: s.ID, Length: row.Length, Width: row.Width, Thickness: row.Thickness,
		})
	}
}

// fromBoard makes a blank or a glued-up panel for each part.
func (d *deriver) fromBoard(row plan.PartRow, s Stock) {
	for i, member := range row.Members {
		length, why := d.length(row, s)
		d.blank(row, s, i+1, []address.Address{member}, length, append(why, d.together(member)...))
	}
}

// add adds a workpiece, and remembers it for the parts that come out of it.
func (d *deriver) add(w plan.Workpiece) {
	for _, p := range w.Parts {
		d.from[p] = append(d.from[p], len(d.out))
	}
	d.out = append(d.out, w)
}

// blank makes the blank number n of a row, for one part or for a gang of parts:
// in one piece where a board is wide enough, else glued up from strips.
func (d *deriver) blank(row plan.PartRow, s Stock, n int, parts []address.Address, length ledger.Figure, why []message.Message) {
	width, widest := d.width(row), d.widest(s)
	if width.Nm > widest {
		d.panel(row, s, n, parts, length, width, widest, why)
		return
	}
	d.add(plan.Workpiece{
		ID: blankID(row.Mark, n), Kind: plan.BlankPiece, Mark: row.Mark, Parts: parts, Count: 1,
		Material: row.Material, Stock: s.ID, Length: length, Width: width, Thickness: row.Thickness, Why: append(why, d.thin(row, s, width.Nm)...),
	})
}

// length is the part's length and both ends' allowance, or what the machines
// need if that is more and the board has it.
func (d *deriver) length(row plan.PartRow, s Stock) (ledger.Figure, []message.Message) {
	length := d.Ledger.Sum("blank."+row.Mark+".length", row.Length, d.Allowances.End, d.Allowances.End)
	least := d.least(row)
	if length.Nm >= least || s.usable() < least {
		return length, nil
	}
	limit := d.Ledger.Leaf("machines.least-length", least, ledger.HouseRule, "the shop's machines")
	length = d.Ledger.Greatest("blank."+row.Mark+".length", length, limit)
	return length, []message.Message{message.New("blanks.kept-long",
		message.Length("part", row.Length.Nm), message.Length("least", least))}
}

// least is the least length that the row's blanks may be fed with.
func (d *deriver) least(row plan.PartRow) unit.Length {
	least := d.Limits.LeastPlane
	if len(d.slots[row.Members[0]]) > 0 {
		least = max(least, d.Limits.LeastRout)
	}
	return least
}

func (d *deriver) width(row plan.PartRow) ledger.Figure {
	return d.Ledger.Sum("blank."+row.Mark+".width", row.Width, d.Allowances.Edge, d.Allowances.Edge)
}

// widest is the widest piece that comes out of one board and over the jointer.
func (d *deriver) widest(s Stock) unit.Length {
	w := s.Width - 2*s.Edge
	if d.Limits.Joint > 0 {
		w = min(w, d.Limits.Joint)
	}
	return w
}

// part ends the chain of a row: the finished parts, from whatever was made for
// them.
func (d *deriver) part(row plan.PartRow) {
	var made []int
	for _, m := range row.Members {
		made = append(made, d.from[m]...)
	}
	slices.Sort(made) // a gang serves several members
	var from []string
	for _, i := range slices.Compact(made) {
		from = append(from, d.out[i].ID)
	}
	d.out = append(d.out, plan.Workpiece{
		ID: "part." + row.Mark, Kind: plan.PartPiece, From: from, Mark: row.Mark, Parts: slices.Clone(row.Members), Count: len(row.Members),
		Material: row.Material, Length: row.Length, Width: row.Width, Thickness: row.Thickness,
	})
}

// assemblies puts each group's parts together; a group inside a group comes
// first.
func (d *deriver) assemblies() {
	markOf := map[address.Address]string{}
	for _, row := range d.Rows {
		for _, m := range row.Members {
			markOf[m] = row.Mark
		}
	}
	for _, g := range d.Piece.Groups {
		var from []string
		for _, p := range d.Piece.Parts {
			if p.Group == g.Address {
				from = append(from, "part."+markOf[p.Address])
			}
		}
		for _, sub := range d.Piece.Groups {
			if sub.Parent == g.Address && sub.Address != g.Address {
				from = append(from, string(sub.Address))
			}
		}
		slices.Sort(from)
		d.out = append(d.out, plan.Workpiece{
			ID: string(g.Address), Kind: plan.AssemblyPiece, From: slices.Compact(from), Group: g.Address, Count: 1,
		})
	}
}

func blankID(mark string, n int) string { return fmt.Sprintf("blank.%s.%d", mark, n) }
