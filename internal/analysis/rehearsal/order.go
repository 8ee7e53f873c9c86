package rehearsal

import (
	"scantling/internal/message"
)

// order walks through the steps: each after what it names, every operation in
// one step and after what it needs, every card in one step and its operations
// with it.
func (r *rehearsal) order() {
	if len(r.Plan.Steps) == 0 {
		for i, op := range r.Plan.Operations { // a plan without steps: the operations as listed
			r.at[op.ID] = i
		}
		r.needs(func(op, need string) bool { return r.at[need] < r.at[op] })
		return
	}
	step := map[string]int{}
	stepOf := map[string]int{}
	cardIn := map[string]int{}
	place := map[string]int{} // of a card among those of its step
	for i, s := range r.Plan.Steps {
		r.report.Steps++
		if s.N != i+1 {
			r.fail(CodeOrder, "rehearsal.step-number", "", message.Count("is", s.N), message.Count("should", i+1))
		}
		for _, a := range s.After {
			if _, done := step[a]; !done {
				r.fail(CodeOrder, "rehearsal.step-too-early", "", message.Count("step", s.N), message.Text("needs", a))
			}
		}
		if _, twice := step[s.ID]; twice {
			r.fail(CodeTwice, "rehearsal.step-twice", "", message.Text("id", s.ID))
		}
		step[s.ID] = i
		for n, c := range s.Setups {
			if _, twice := cardIn[c]; twice {
				r.fail(CodeTwice, "rehearsal.card-in-two-steps", "", message.Text("id", c))
			}
			cardIn[c], place[c] = i, n
		}
		for _, id := range s.Operations {
			if _, twice := stepOf[id]; twice {
				r.fail(CodeTwice, "rehearsal.operation-twice", "", message.Text("id", id))
			}
			if _, known := r.op[id]; !known {
				r.fail(CodeMissing, "rehearsal.unknown-operation", "", message.Text("id", id))
			}
			stepOf[id] = i
		}
	}
	for i, op := range r.Plan.Operations {
		n, ok := stepOf[op.ID]
		if !ok {
			r.fail(CodeMissing, "rehearsal.operation-in-no-step", "", message.Text("id", op.ID))
		}
		all := len(r.Plan.Operations) + 1
		r.at[op.ID] = (n*all+place[op.Setup])*all + i
		if op.Setup != "" && ok && cardIn[op.Setup] != n {
			r.fail(CodeOrder, "rehearsal.card-elsewhere", "", message.Text("id", op.ID), message.Text("card", op.Setup))
		}
	}
	r.needs(func(op, need string) bool {
		return stepOf[need] < stepOf[op] || stepOf[need] == stepOf[op] && r.at[need] < r.at[op]
	})
}

// needs checks that every operation comes after those that it needs.
func (r *rehearsal) needs(before func(op, need string) bool) {
	for _, op := range r.Plan.Operations {
		r.report.Operations++
		for _, n := range op.Needs {
			if _, known := r.op[n]; !known {
				r.fail(CodeMissing, "rehearsal.unknown-operation", "", message.Text("id", n))
			} else if !before(op.ID, n) {
				r.fail(CodeOrder, "rehearsal.operation-too-early", "", message.Text("id", op.ID), message.Text("needs", n))
			}
		}
	}
}
