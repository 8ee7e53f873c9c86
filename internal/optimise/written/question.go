package written

import (
	"errors"
	"fmt"

	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// Schema is what a file says that it is.
const Schema = "cutting-problem/1"

// Question is a problem with how its figures are shown.
type Question struct {
	Problem problem.Problem
	// Unit is what bare numbers count in: millimetres or inches.
	Unit unit.System
	// Priced says that the stock has costs, in hundredths; otherwise each piece of
	// stock counts one.
	Priced bool
}

// Read reads a problem. What is wrong comes back as [Faults]: with the writing,
// with a figure, or with the problem as a whole ([problem.Problem.Check]). A part
// that fits on no stock is none: the engine says so.
func Read(data []byte) (Question, error) {
	n, err := parse(data)
	if err != nil {
		return Question{}, err
	}
	r := &reader{data: data, bare: unit.Millimetre}
	q := r.question(n)
	if len(r.faults) > 0 {
		return Question{}, r.faults
	}
	var f *problem.Fault
	if err := q.Problem.Check(); errors.As(err, &f) && f.Reason != problem.TooLong {
		return Question{}, Faults{r.whole(n, f)}
	}
	return q, nil
}

// whole finds the line of a fault of the problem as a whole.
func (r *reader) whole(n node, f *problem.Fault) Fault {
	t := thing{r, n, ""}
	for _, where := range []struct {
		list string
		i    int
	}{{"parts", f.Part}, {"stock", f.Stock}} {
		if l, ok := t.field(where.list); ok && where.i >= 0 && where.i < len(l.items) {
			return Fault{line(r.data, l.items[where.i].at), fmt.Sprintf("%s[%d]", where.list, where.i+1), f.Text}
		}
	}
	return Fault{line(r.data, n.at), "", f.Text}
}

func (r *reader) question(n node) Question {
	t := r.thing(n, "", "schema", "name", "unit", "form", "goal", "kerf", "stock", "parts",
		"stages", "first", "exact", "feed", "useful", "together")
	t.must("schema", "form", "stock", "parts")
	if said := t.word("schema", Schema); said == "" {
		return Question{}
	}
	q := Question{Unit: unit.Metric}
	if t.word("unit", "mm", "in") == "in" {
		q.Unit = unit.Inches
	}
	r.bare = q.Unit.Unit()
	p := &q.Problem
	p.Name = t.name("name")
	if t.word("form", "boards", "sheets") == "sheets" {
		p.Form = problem.Sheets
	}
	if t.word("goal", "least cost", "most value") == "most value" {
		p.Goal = problem.MostValue
	}
	p.Kerf = t.length("kerf")
	r.cutting(t, p)
	if f, ok := t.field("feed"); ok {
		of := r.thing(f, "feed", "long", "short")
		p.Feed = problem.Feed{Long: of.length("long"), Short: of.length("short")}
	}
	if f, ok := t.field("useful"); ok {
		p.Useful = r.size(r.thing(f, "useful", "length", "width"), p.Form)
	}
	r.stock(t, &q)
	r.parts(t, p)
	r.together(t, p)
	return q
}

func (r *reader) cutting(t thing, p *problem.Problem) {
	p.Cutting = problem.Cutting{Stages: t.count("stages", 0), Exact: t.truth("exact")}
	switch t.word("first", "crosscut", "rip") {
	case "crosscut":
		p.Cutting.First = problem.Crosscut
	case "rip":
		p.Cutting.First = problem.Rip
	}
	for _, name := range []string{"stages", "first", "exact"} {
		if n, ok := t.field(name); ok && p.Form == problem.Boards {
			r.fault(n, name, "boards are only crosscut: leave this out, or say \"form\": \"sheets\"")
		}
	}
}

// size takes length and width; boards have no width.
func (r *reader) size(t thing, form problem.Form) problem.Size {
	t.must("length")
	s := problem.Size{Length: t.length("length")}
	n, wide := t.field("width")
	switch {
	case form == problem.Sheets:
		t.must("width")
		s.Width = t.length("width")
	case wide:
		r.fault(n, t.at("width"), "boards are cut across only and have no width here: leave this out, or say \"form\": \"sheets\"")
	}
	return s
}

func (r *reader) stock(t thing, q *Question) {
	priced := 0
	items := t.list("stock", problem.MaxStock)
	for i, n := range items {
		of := r.thing(n, fmt.Sprintf("stock[%d]", i+1), "id", "length", "width", "cost", "count", "trim", "defects")
		s := problem.Stock{ID: of.name("id"), Size: r.size(of, q.Problem.Form), Cost: of.hundredths("cost"), Limit: of.count("count", 0)}
		if n, ok := of.field("count"); ok && s.Limit == 0 {
			r.fault(n, of.at("count"), "none is there: leave this stock out, or leave the count out for as many as are wanted")
		}
		if _, ok := of.field("cost"); ok {
			priced++
		}
		if f, ok := of.field("trim"); ok {
			trim := r.thing(f, of.at("trim"), "start", "end", "low", "high")
			s.Trim = problem.Trim{Start: trim.length("start"), End: trim.length("end"), Low: trim.length("low"), High: trim.length("high")}
		}
		for k, d := range of.list("defects", problem.MaxDefects) {
			box := r.thing(d, fmt.Sprintf("%s[%d]", of.at("defects"), k+1), "along", "across", "length", "width")
			s.Defects = append(s.Defects, problem.Box{Point: problem.Point{Along: box.length("along"), Across: box.length("across")}, Size: r.size(box, q.Problem.Form)})
		}
		q.Problem.Stock = append(q.Problem.Stock, s)
	}
	switch q.Priced = priced > 0; {
	case priced == 0:
		for i := range q.Problem.Stock {
			q.Problem.Stock[i].Cost = 1
		}
	case priced < len(items):
		r.fault(t.node, "stock", "%d of %d have a cost: give one to each, or to none to use the fewest", priced, len(items))
	}
}

func (r *reader) parts(t thing, p *problem.Problem) {
	seen := map[string]bool{}
	for i, n := range t.list("parts", problem.MaxKinds) {
		of := r.thing(n, fmt.Sprintf("parts[%d]", i+1), "id", "length", "width", "count", "turn", "value")
		part := problem.Part{ID: of.name("id"), Size: r.size(of, p.Form), Quantity: of.count("count", 1), Turn: of.truth("turn"), Value: of.hundredths("value")}
		if n, ok := of.field("value"); ok && p.Goal == problem.LeastCost {
			r.fault(n, of.at("value"), "a value counts only with \"goal\": \"most value\"")
		}
		if part.ID != "" && seen[part.ID] {
			r.fault(n, of.at("id"), "%s is the name of another part", clip(part.ID))
		}
		seen[part.ID] = true
		p.Parts = append(p.Parts, part)
	}
}

// together reads rows of parts that stay together, named by their ids.
func (r *reader) together(t thing, p *problem.Problem) {
	index := map[string]int{}
	for i, part := range p.Parts {
		if part.ID != "" {
			index[part.ID] = i
		}
	}
	for i, n := range t.list("together", problem.MaxPieces) {
		of := r.thing(n, fmt.Sprintf("together[%d]", i+1), "parts", "row")
		of.must("parts")
		s := problem.Sequence{Direction: problem.Crosscut}
		if of.word("row", "along", "across") == "across" {
			s.Direction = problem.Rip
		}
		for _, id := range of.list("parts", problem.MaxPieces) {
			k, ok := index[id.text]
			if !ok {
				r.fault(id, of.at("parts"), "%s is the id of no part", clip(id.text))
				continue
			}
			s.Parts = append(s.Parts, k)
		}
		p.Sequences = append(p.Sequences, s)
	}
}
