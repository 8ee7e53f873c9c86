package written

import (
	"encoding/json"

	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// AnswerSchema is what a written answer says that it is.
const AnswerSchema = "cutting-answer/1"

// answer is the written form of an answer. Lengths are whole nanometres.
type answer struct {
	Schema string `json:"schema"`
	Name   string `json:"name,omitempty"`
	Status string `json:"status"`
	// Cost and Bound are in hundredths where the stock has costs, pieces of stock
	// where it has none, hundredths of value under "most value".
	Cost   int64  `json:"cost"`
	Bound  int64  `json:"bound"`
	Proof  string `json:"proof"`
	Priced bool   `json:"priced"`
	Work   int64  `json:"work"`
	// Pieces of stock taken and different diagrams; the widths that a fence and the
	// lengths that a stop are set to, each once.
	Taken    int       `json:"taken"`
	Patterns int       `json:"patterns"`
	Rips     []int64   `json:"rips"`
	Stops    []int64   `json:"stops"`
	Diagrams []diagram `json:"diagrams"`
}

type diagram struct {
	Stock  int     `json:"stock"` // from 1, as in the file
	ID     string  `json:"id,omitempty"`
	Copies int     `json:"copies"`
	Pieces []piece `json:"pieces"`
}

// piece is a piece at some time of the cutting, in the order of sawing.
type piece struct {
	// Of is the number, from 1, of the piece that it was sawn from; 0 for the
	// trimmed stock.
	Of     int    `json:"of"`
	Along  int64  `json:"along"`
	Across int64  `json:"across,omitempty"`
	Length int64  `json:"length"`
	Width  int64  `json:"width,omitempty"`
	Is     string `json:"is"` // sawn, part, remnant, waste
	// Of a sawn piece: crosscut or rip, and how far from its near side the blade
	// begins.
	Cut string `json:"cut,omitempty"`
	At  int64  `json:"at,omitempty"`
	// Of a part.
	Part   int    `json:"part,omitempty"` // from 1, as in the file
	ID     string `json:"id,omitempty"`
	Turned bool   `json:"turned,omitempty"`
}

// kinds names what becomes of a piece.
var kinds = map[problem.Kind]string{
	problem.Sawn: "sawn", problem.Finished: "part", problem.Remnant: "remnant", problem.Waste: "waste",
}

// Answer writes the answer to a question as JSON.
func Answer(q Question, a problem.Answer) ([]byte, error) {
	out := answer{
		Schema: AnswerSchema, Name: q.Problem.Name, Status: a.Status.String(), Cost: int64(a.Cost), Bound: int64(a.Bound),
		Proof: a.Proof.String(), Priced: q.Priced, Work: a.Work, Diagrams: []diagram{},
	}
	rips, stops := a.Settings()
	out.Patterns, out.Rips, out.Stops = len(a.Diagrams), nanometres(rips), nanometres(stops)
	for _, d := range a.Diagrams {
		out.Taken += d.Copies
		w := diagram{Stock: d.Stock + 1, ID: q.Problem.Stock[d.Stock].ID, Copies: d.Copies}
		w.add(q.Problem, d.Root, 0)
		out.Diagrams = append(out.Diagrams, w)
	}
	data, err := json.MarshalIndent(out, "", " ")
	return append(data, '\n'), err
}

func nanometres(lengths []unit.Length) []int64 {
	out := make([]int64, len(lengths))
	for i, l := range lengths {
		out[i] = int64(l)
	}
	return out
}

// add writes a piece and all that is sawn from it.
func (d *diagram) add(p problem.Problem, n *problem.Node, of int) {
	if n == nil {
		return
	}
	w := piece{
		Of: of, Along: int64(n.Along), Across: int64(n.Across), Length: int64(n.Length), Width: int64(n.Width), Is: kinds[n.Kind],
	}
	switch n.Kind {
	case problem.Sawn:
		w.At, w.Cut = int64(n.At), "crosscut"
		if n.Direction == problem.Rip {
			w.Cut = "rip"
		}
	case problem.Finished:
		w.Part, w.ID, w.Turned = n.Part+1, p.Parts[n.Part].ID, n.Turned
	}
	d.Pieces = append(d.Pieces, w)
	me := len(d.Pieces)
	d.add(p, n.Near, me)
	d.add(p, n.Far, me)
}
