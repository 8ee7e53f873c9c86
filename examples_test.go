package scantling_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"scantling"
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/plan"
	"scantling/internal/unit"
	"scantling/internal/world"
)

// trap is a small change of an example's text that must raise a finding or a
// diagnostic of that code.
type trap struct {
	name     string
	old, new string
	inputs   map[string]string
	code     diag.Code
}

// planExample plans an example, with texts of its document changed.
func planExample(t testing.TB, name string, inputs map[string]string, changes ...string) *scantling.Result {
	t.Helper()
	w := exampleWorld(t, name)
	file := name + ".piece.hcl"
	if len(changes) > 0 {
		data, err := w.Read(file)
		if err != nil {
			t.Fatal(err)
		}
		for i := 0; i+1 < len(changes); i += 2 {
			if strings.Count(string(data), changes[i]) != 1 {
				t.Fatalf("%q stands %d times in %s", changes[i], strings.Count(string(data), changes[i]), file)
			}
			data = []byte(strings.Replace(string(data), changes[i], changes[i+1], 1))
		}
		shop, err := w.Read("shop.hcl")
		if err != nil {
			t.Fatal(err)
		}
		m, err := world.NewMemory(map[string][]byte{file: data, "shop.hcl": shop}, world.Date{}, 0)
		if err != nil {
			t.Fatal(err)
		}
		w = m
	}
	r, err := scantling.Plan(t.Context(), w, file, scantling.Options{Inputs: inputs})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// spring runs the traps of an example: each must raise its code, and the example
// itself must not.
func spring(t *testing.T, name string, traps []trap) {
	t.Helper()
	good := codes(planExample(t, name, nil))
	for _, tr := range traps {
		var changes []string
		if tr.old != "" {
			changes = []string{tr.old, tr.new}
		}
		if got := codes(planExample(t, name, tr.inputs, changes...)); !slices.Contains(got, tr.code) {
			t.Errorf("%s: %v, want %s", tr.name, got, tr.code)
		}
		if slices.Contains(good, tr.code) {
			t.Errorf("%s: %s is told without the mistake", tr.name, tr.code)
		}
	}
}

// codes lists what is told of a plan, passes apart.
func codes(r *scantling.Result) []diag.Code {
	var out []diag.Code
	for _, d := range r.Plan.Diagnostics {
		out = append(out, d.Code)
	}
	for _, f := range r.Plan.Findings {
		if f.Status != plan.Pass {
			out = append(out, f.Code)
		}
	}
	return out
}

// mm prints lengths in millimetres to the hundredth.
func mm(list ...unit.Length) string {
	var out []string
	for _, l := range list {
		out = append(out, strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.2f", l.Millimetres()), "0"), "."))
	}
	return strings.Join(out, " ")
}

// sizesOf prints length, width and thickness of a part.
func sizesOf(t *testing.T, r *scantling.Result, a address.Address) string {
	p := partIn(t, r, a)
	return mm(p.Length.Nm, p.Width.Nm, p.Thickness.Nm)
}

// settingsOf lists the figures of a word over the placements of all cards with a
// cutter, in working order, without repeats.
func settingsOf(r *scantling.Result, cutter, word string) string {
	var out []unit.Length
	for _, s := range r.Plan.Setups {
		for _, p := range s.Placements {
			for _, x := range p.Settings {
				if s.Cutter == cutter && x.Word == word && !slices.Contains(out, x.Figure.Nm) {
					out = append(out, x.Figure.Nm)
				}
			}
		}
	}
	slices.Sort(out)
	return mm(out...)
}

func want(t *testing.T, what, got, want string) {
	t.Helper()
	if got != want {
		t.Errorf("%s: %s, by hand %s", what, got, want)
	}
}
