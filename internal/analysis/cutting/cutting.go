package cutting

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/optimise"
	"scantling/internal/optimise/problem"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// CodeNotCut says that a blank, or all blanks of one stock, could not be cut.
const CodeNotCut diag.Code = "not-cut"

// CodeNotTogether says that parts that the design wants from one board, side by
// side, are cut apart.
const CodeNotTogether diag.Code = "not-together"

// Stock is one kind of board or sheet as it can be had.
type Stock struct {
	ID, Label                string
	Sheet                    bool
	Length, Width, Thickness ledger.Figure
	// End is trimmed off each end and Edge off each edge, saw cut included.
	End, Edge ledger.Figure
	Have      int
	Price     int64 // hundredths; 0 is unknown
	// Buyable says that more can be had than the rack holds.
	Buyable bool
	// Turns says that pieces may lie across it: a sheet without grain.
	Turns bool
	// Kind is the same for stock that differs in length, width and price only, so
	// that one can stand in for the other; empty is a kind of its own.
	Kind string
	// Defects are places of the boards in the rack where no workpiece may lie.
	Defects []Defect
	// Sold is the size that the merchant reckons with: length, width, thickness.
	// Zero is as measured.
	Sold [3]unit.Length
}

// Defect is a marked place: from the board's marked end and its marked edge.
type Defect struct {
	Kind                string
	From, To, Near, Far ledger.Figure
}

// Input is what the decision rests on.
type Input struct {
	Workpieces []plan.Workpiece
	Stock      []Stock
	Kerf       ledger.Figure
	// Together are parts that are sawn from one board in order.
	Together []piece.Together
	// KeepLength and KeepWidth are the least remnant worth keeping.
	KeepLength, KeepWidth unit.Length
	// FeedLong and FeedShort are the least longer and shorter side of a piece that is
	// put to the saw. What falls off for good, waste or a finished blank, may be smaller.
	FeedLong, FeedShort unit.Length
	Budget              problem.Budget
	Ledger              *ledger.Ledger
}

// Result is what was decided.
type Result struct {
	Diagrams []plan.Diagram
	// Used counts boards by stock: from the rack and to be bought.
	Used []Used
	// From names the diagram that each workpiece is cut from.
	From map[string]string
}

// Used is how many of one stock are cut.
type Used struct {
	Stock     Stock
	Rack, Buy int
	Marks     []string
}

// Decide finds the diagrams for every stock that a workpiece names. Where the rack
// holds too little of it, other stock of its kind stands in, what is in the rack
// before what must be bought, cheap before dear. A workpiece that is larger than
// its stock is told and left out; the others are cut.
func Decide(ctx context.Context, in Input) (Result, diag.List) {
	res := Result{From: map[string]string{}}
	answers, diags := ask(ctx, in)
	for _, a := range answers {
		a.question.read(a.answer, &res)
	}
	return res, diags
}

// ask puts the questions of every kind of stock to the engine, and lists what cannot
// be cut. Nothing is entered in the ledger.
func ask(ctx context.Context, in Input) ([]solved, diag.List) {
	var out []solved
	var diags diag.List
	of := map[string][]plan.Workpiece{}
	for _, w := range in.Workpieces {
		if w.Stock != "" {
			of[w.Stock] = append(of[w.Stock], w)
		}
	}
	done := make([]bool, len(in.Stock))
	for i, s := range in.Stock {
		if done[i] {
			continue
		}
		var kind []Stock
		for j := i; j < len(in.Stock); j++ {
			if t := in.Stock[j]; j == i || s.Kind != "" && t.Kind == s.Kind {
				done[j] = true
				kind = append(kind, t)
			}
		}
		pieces := map[string][]plan.Workpiece{}
		for _, t := range kind {
			for _, w := range of[t.ID] {
				if t.lies(w) {
					pieces[t.ID] = append(pieces[t.ID], w)
				} else {
					diags = append(diags, t.tooLarge(w))
				}
			}
		}
		answers, faults := solve(ctx, in, kind, pieces)
		for _, a := range answers {
			faults = append(faults, a.question.faults...)
		}
		diags = append(diags, faults...)
		out = append(out, answers...)
	}
	return out, diags
}

// solved is a question with its answer.
type solved struct {
	question *question
	answer   problem.Answer
}

// solve cuts the pieces of each stock of a kind from that stock; if anything must
// then be bought and there is other stock of the kind, all from all together, unless
// some are to stay side by side.
func solve(ctx context.Context, in Input, kind []Stock, pieces map[string][]plan.Workpiece) ([]solved, diag.List) {
	var out []solved
	var all []plan.Workpiece
	var diags diag.List
	buys, rows := false, len(in.Together) > 0
	for _, s := range kind {
		if len(pieces[s.ID]) == 0 {
			continue
		}
		all = append(all, pieces[s.ID]...)
		q := newQuestion(in, []Stock{s}, pieces[s.ID])
		a, err := optimise.Solve(ctx, q.problem, in.Budget)
		if err != nil && len(q.problem.Sequences) > 0 {
			for _, t := range q.rows {
				diags = append(diags, apart(t, message.Text("why", err.Error())))
			}
			in.Together = nil
			q = newQuestion(in, []Stock{s}, pieces[s.ID])
			a, err = optimise.Solve(ctx, q.problem, in.Budget)
		}
		if err != nil {
			diags = append(diags, diag.Diagnostic{Severity: diag.Error, Code: CodeNotCut,
				Text: message.New("cutting.not-cut", message.Text("stock", s.Label), message.Text("why", err.Error()))})
			continue
		}
		buys = buys || q.buys(a)
		out = append(out, solved{q, a})
	}
	if !buys && len(diags) == 0 || len(kind) == 1 || rows {
		return out, diags
	}
	q := newQuestion(in, kind, all)
	if a, err := optimise.Solve(ctx, q.problem, in.Budget); err == nil {
		return []solved{{q, a}}, nil
	}
	return out, diags
}

// apart says that a row is not cut together, and why.
func apart(t piece.Together, why message.Arg) diag.Diagnostic {
	var parts []message.Arg
	for _, p := range t.Parts {
		parts = append(parts, message.Address("", p))
	}
	return diag.Diagnostic{Severity: diag.Warning, Code: CodeNotTogether, Address: t.Address, Where: t.Where,
		Text: message.New("cutting.not-together", message.List("parts", parts...), why)}
}

// usable is what is left of the stock when it is trimmed.
func (s Stock) usable() problem.Size {
	return problem.Size{Length: s.Length.Nm - 2*s.End.Nm, Width: s.Width.Nm - 2*s.Edge.Nm}
}

// lies reports whether a workpiece lies on the trimmed stock.
func (s Stock) lies(w plan.Workpiece) bool {
	u := s.usable()
	on := func(l, w unit.Length) bool { return l > 0 && w > 0 && l <= u.Length && w <= u.Width }
	return on(w.Length.Nm, w.Width.Nm) || s.Turns && on(w.Width.Nm, w.Length.Nm)
}

func (s Stock) tooLarge(w plan.Workpiece) diag.Diagnostic {
	u := s.usable()
	x := diag.Diagnostic{Severity: diag.Error, Code: CodeNotCut, Text: message.New("cutting.too-large", message.Text("id", w.ID), message.Text("stock", s.Label),
		message.Length("length", w.Length.Nm), message.Length("width", w.Width.Nm), message.Length("longest", u.Length), message.Length("widest", u.Width))}
	if len(w.Parts) > 0 {
		x.Address = w.Parts[0]
	}
	return x
}

// copy is one board of an answer with the workpieces that it gives, in the order
// of its leaves.
type copy struct {
	root   *problem.Node
	pieces []plan.Workpiece
	// rack tells a board of the rack from one that is bought, flawed one with defects.
	rack, flawed bool
}

// read turns the engine's answer into diagrams, by stock: boards that are cut
// alike and give the same marks at the same places share one.
func (q *question) read(a problem.Answer, res *Result) {
	boards := 0
	var labels []string
	first := len(res.Diagrams)
	for i, s := range q.from {
		if i > 0 && q.from[i-1].ID == s.ID {
			continue // in the rack and bought
		}
		used := Used{Stock: s}
		var alike [][]copy
		at := map[string]int{}
		for _, d := range a.Diagrams {
			if q.from[d.Stock].ID != s.ID {
				continue
			}
			if q.bought[d.Stock] {
				used.Buy += d.Copies
			} else {
				used.Rack += d.Copies
			}
			for range d.Copies {
				c := q.deal(d.Root)
				c.rack, c.flawed = !q.bought[d.Stock], len(s.Defects) > 0
				key := c.key()
				i, ok := at[key]
				if !ok {
					i = len(alike)
					at[key], alike = i, append(alike, nil)
				}
				alike[i] = append(alike[i], c)
			}
		}
		if len(alike) == 0 {
			continue
		}
		boards += used.Rack + used.Buy
		labels = append(labels, s.Label)
		q.add(s, alike, &used, res)
	}
	note := bound(strings.Join(labels, ", "), a, boards)
	for i := first; i < len(res.Diagrams); i++ {
		res.Diagrams[i].Bound = note
	}
}

// add adds the diagrams of one stock.
func (q *question) add(s Stock, alike [][]copy, used *Used, res *Result) {
	for i, copies := range alike {
		out := q.diagram(s, fmt.Sprintf("%s #%d", s.ID, i+1), copies)
		for _, p := range out.Pieces {
			for _, w := range p.Workpieces() {
				res.From[w] = out.ID
			}
			used.Marks = append(used.Marks, p.Mark)
		}
		res.Diagrams = append(res.Diagrams, out)
	}
	slices.Sort(used.Marks)
	used.Marks = slices.Compact(used.Marks)
	res.Used = append(res.Used, *used)
}

// deal hands out workpieces to the finished pieces of one board.
func (q *question) deal(root *problem.Node) copy {
	c := copy{root: root}
	for n := range root.Nodes() {
		if n.Kind == problem.Finished {
			c.pieces = append(c.pieces, q.waiting[n.Part][0])
			q.waiting[n.Part] = q.waiting[n.Part][1:]
		}
	}
	return c
}

// key tells boards apart that are not cut alike: the cuts, and the marks of what
// they give.
func (c copy) key() string {
	var b strings.Builder
	fmt.Fprintln(&b, c.rack && c.flawed)
	i := 0
	for n := range c.root.Nodes() {
		fmt.Fprint(&b, n.Kind, n.Direction, n.At, n.Turned, n.Box, ";")
		if n.Kind == problem.Finished {
			b.WriteString(c.pieces[i].Mark)
			b.WriteByte('\n')
			i++
		}
	}
	return b.String()
}

// bound says how good the answer is.
func bound(stock string, a problem.Answer, boards int) message.Message {
	if a.Status == problem.Proved {
		return message.New("cutting.proved", message.Text("stock", stock), message.Count("boards", boards))
	}
	gap := 0.0
	if a.Cost > 0 {
		gap = 100 * float64(a.Cost-a.Bound) / float64(a.Cost)
	}
	return message.New("cutting.gap", message.Text("stock", stock), message.Count("boards", boards), message.Percent("gap", gap))
}
