package problems

import (
	"encoding/json"
	"fmt"
	"io"

	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// Schema is the name that a cutbench file must carry.
const Schema = "cutbench/1"

// maxBytes bounds a benchmark file.
const maxBytes = 64 << 20

// Set is a file of instances.
type Set struct {
	Schema    string     `json:"schema"`
	Name      string     `json:"set"`
	Instances []Instance `json:"instances"`
}

// Instance is one published problem as its file states it.
type Instance struct {
	Name      string         `json:"name"`
	Set       string         `json:"set"`
	Dim       int            `json:"dim"`
	Class     string         `json:"problem"`
	Objective string         `json:"objective"`
	Kerf      int64          `json:"kerf"`
	Stock     []FileStock    `json:"stock"`
	Parts     []FilePart     `json:"parts"`
	Defects   []FileDefect   `json:"defects"`
	Limits    map[string]any `json:"limits"`
	Targets   []Target       `json:"targets"`
}

// FileStock is a kind of stock in the file's own words.
type FileStock struct {
	ID   any    `json:"id"`
	W    int64  `json:"w"`
	H    int64  `json:"h"`
	Qty  *int   `json:"qty"` // null: as many as wanted
	Cost *int64 `json:"cost"`
	Trim int64  `json:"trim"` // 1-D: taken off w in all
}

// FilePart is a kind of part in the file's own words.
type FilePart struct {
	ID     any   `json:"id"`
	W      int64 `json:"w"`
	H      int64 `json:"h"`
	Qty    *int  `json:"qty"` // null: any number
	Value  int64 `json:"value"`
	Rotate bool  `json:"rotate"`
}

// FileDefect is a rectangle that no part may cover.
type FileDefect struct {
	Stock any   `json:"stock"`
	X     int64 `json:"x"`
	Y     int64 `json:"y"`
	W     int64 `json:"w"`
	H     int64 `json:"h"`
}

// Target is a published result for one way of cutting.
type Target struct {
	Variant   string   `json:"variant"`
	BestKnown *float64 `json:"best_known"`
	Bound     *float64 `json:"bound"`
	Proved    bool     `json:"proved"`
	Source    string   `json:"source"`
}

// Read reads a cutbench/1 file.
func Read(r io.Reader) (Set, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	if err != nil {
		return Set{}, err
	}
	if len(data) > maxBytes {
		return Set{}, fmt.Errorf("the file has more than %d bytes", maxBytes)
	}
	var s Set
	if err := json.Unmarshal(data, &s); err != nil {
		return Set{}, fmt.Errorf("not a %s file: %w", Schema, err)
	}
	if s.Schema != Schema {
		return Set{}, fmt.Errorf("schema %q is not %q", s.Schema, Schema)
	}
	return s, nil
}

// Rules says how an instance is to be cut.
type Rules struct {
	Cutting problem.Cutting
	Turn    bool // every part may be turned, whatever the file says
}

// Problem returns the instance as the engine takes it. It refuses what the
// engine does not know (order within stacks) and figures out of range.
func (in Instance) Problem(r Rules) (problem.Problem, error) {
	p := problem.Problem{Name: in.Name, Cutting: r.Cutting}
	switch {
	case in.Dim == 2:
		p.Form = problem.Sheets
	case in.Dim != 1:
		return p, fmt.Errorf("%s: dimension %d", in.Name, in.Dim)
	}
	switch in.Class {
	case "csp", "csp-multi", "csp-patterns":
	case "knapsack":
		p.Goal = problem.MostValue
	default:
		return p, fmt.Errorf("%s: problem %q is not known", in.Name, in.Class)
	}
	var err error
	length := func(n int64) unit.Length {
		if n < 0 || n > int64(unit.MaxLength/unit.Millimetre) {
			err = fmt.Errorf("%s: size %d is out of range", in.Name, n)
			return 0
		}
		return unit.MM(n)
	}
	p.Kerf = length(in.Kerf)
	for _, s := range in.Stock {
		p.Stock = append(p.Stock, s.stock(in, p.Form, length))
	}
	for _, f := range in.Parts {
		p.Parts = append(p.Parts, f.part(in, r, p.Form, length))
	}
	if err != nil {
		return p, err
	}
	return p, p.Check()
}

func (s FileStock) stock(in Instance, form problem.Form, length func(int64) unit.Length) problem.Stock {
	out := problem.Stock{ID: fmt.Sprint(s.ID), Cost: 1}
	out.Length = length(s.W)
	out.Trim.End = length(s.Trim)
	if s.Cost != nil {
		out.Cost = problem.Cost(*s.Cost)
	}
	if s.Qty != nil {
		out.Limit = *s.Qty
	}
	if form == problem.Sheets {
		out.Width = length(s.H)
	}
	for _, d := range in.Defects {
		if fmt.Sprint(d.Stock) == out.ID {
			out.Defects = append(out.Defects, problem.Box{
				Point: problem.Point{Along: length(d.X), Across: length(d.Y)},
				Size:  problem.Size{Length: length(d.W), Width: length(d.H)},
			})
		}
	}
	return out
}

func (f FilePart) part(in Instance, r Rules, form problem.Form, length func(int64) unit.Length) problem.Part {
	out := problem.Part{ID: fmt.Sprint(f.ID), Turn: f.Rotate || r.Turn, Value: problem.Cost(f.Value)}
	out.Length = length(f.W)
	if form == problem.Sheets {
		out.Width = length(f.H)
	}
	switch {
	case f.Qty != nil:
		out.Quantity = *f.Qty
	case len(in.Stock) == 1 && f.W > 0 && f.H > 0:
		// Any number: as many as its area allows.
		s := in.Stock[0]
		out.Quantity = int(min((s.W/f.W+1)*(s.H/f.H+1), problem.MaxPieces/int64(len(in.Parts))))
		if !out.Turn {
			out.Quantity = int(min((s.W/f.W)*(s.H/f.H), problem.MaxPieces/int64(len(in.Parts))))
		}
	}
	return out
}
