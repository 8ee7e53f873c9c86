package scantling_test

import (
	"flag"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"scantling"
	"scantling/internal/plan"
)

var update = flag.Bool("update", false, "rewrite golden files")

// grid returns combinations of the demonstration piece's inputs: every number of
// drawers with every length and width, and every timber, thickness and head with
// every number of drawers.
func grid() []map[string]string {
	var all []map[string]string
	for _, drawers := range []string{"2", "3", "4", "5"} {
		for _, length := range []string{"250", "300", "350", "400"} {
			for _, width := range []string{"160", "220", "420"} {
				all = append(all, map[string]string{"drawers": drawers, "needle_length": length, "least_width": width})
			}
		}
		for _, head := range []string{"8", "12", "16"} {
			for _, side := range []string{"12", "14", "18"} {
				for _, timber := range []string{"black cherry", "black walnut", "hard maple"} {
					all = append(all, map[string]string{"drawers": drawers, "head_diameter": head, "side_thickness": side, "timber": `"` + timber + `"`})
				}
			}
		}
	}
	return append(all, map[string]string{"edition": `"in"`}, map[string]string{})
}

// TestFindingsOverTheInputs asserts the exact list of findings and diagnostics of
// the demonstration piece over a grid of its inputs: a false alarm fails as much
// as a missed one.
func TestFindingsOverTheInputs(t *testing.T) {
	var got strings.Builder
	for _, inputs := range grid() {
		listFindings(&got, "", inputs, planDemo(t, inputs))
	}
	golden(t, "testdata/findings.txt", got.String())
}

// exampleInputs are the other examples with a small grid of what may be changed in them.
func exampleInputs() map[string][]map[string]string {
	rack, gouges := []map[string]string(nil), []map[string]string{{}}
	for _, records := range []string{"150", "225", "300", "320"} {
		for _, upright := range []string{"yes", "no"} {
			rack = append(rack, map[string]string{"records": records, "upright": `"` + upright + `"`})
		}
	}
	for _, count := range []string{"3", "5", "9"} {
		for _, sunk := range []string{"6", "8", "10"} {
			gouges = append(gouges, map[string]string{"gouges": count, "sunk": sunk})
		}
	}
	return map[string][]map[string]string{
		"record-rack": rack, "gouge-tray": gouges, "spice-chest": {{}}, "bedside-table": {{}}, "bottle-box": {{}},
		"drawer-insert": {
			{}, {"diagonal_left": "648", "diagonal_right": "649"}, {"diagonal_left": "645", "diagonal_right": "655"},
			{"width_front": "440", "width_back": "440"}, {"width_front": "520", "width_back": "520"}, {"depth_left": "400", "depth_right": "400"}, {"back_high": "50"},
		},
	}
}

// TestFindingsOfTheExamples asserts the exact list of findings and diagnostics of every
// other example over a few of its inputs.
func TestFindingsOfTheExamples(t *testing.T) {
	all := exampleInputs()
	var got strings.Builder
	for _, name := range slices.Sorted(maps.Keys(all)) {
		for _, inputs := range all[name] {
			listFindings(&got, name, inputs, planExample(t, name, inputs))
		}
	}
	golden(t, "testdata/findings-examples.txt", got.String())
}

// listFindings writes what a plan has to say against its piece, under its name and inputs.
func listFindings(out *strings.Builder, name string, inputs map[string]string, r *scantling.Result) {
	var names []string
	if name != "" {
		names = append(names, name)
	}
	for _, k := range slices.Sorted(maps.Keys(inputs)) {
		names = append(names, k+"="+inputs[k])
	}
	fmt.Fprintf(out, "%s\n", strings.Join(names, " "))
	for _, d := range r.Plan.Diagnostics {
		fmt.Fprintf(out, "\t%s %s %s\n", d.Severity, d.Code, d.Address)
	}
	for _, f := range r.Plan.Findings {
		if f.Status != plan.Pass {
			fmt.Fprintf(out, "\t%s %s %s %s %s\n", f.Severity, f.Check, f.Status, f.Code, f.Address)
		}
	}
}

// golden holds findings against a file, or rewrites it.
func golden(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("findings differ from %s (rewrite with -update and read the difference):\n%s", file, difference(string(want), got))
	}
}

// difference lists the lines that stand on one side only, with their heading.
func difference(want, got string) string {
	a, b := sections(want), sections(got)
	var out strings.Builder
	for _, k := range slices.Sorted(maps.Keys(b)) {
		if a[k] != b[k] {
			fmt.Fprintf(&out, "%s\nwant:\n%sgot:\n%s", k, a[k], b[k])
		}
		if out.Len() > 4000 {
			return out.String() + "...\n"
		}
	}
	return out.String()
}

func sections(s string) map[string]string {
	out := map[string]string{}
	head := ""
	for line := range strings.Lines(s) {
		if line[0] != '\t' {
			head = strings.TrimSpace(line)
			continue
		}
		out[head] += line
	}
	for line := range strings.Lines(s) {
		if line[0] != '\t' {
			if _, ok := out[strings.TrimSpace(line)]; !ok {
				out[strings.TrimSpace(line)] = ""
			}
		}
	}
	return out
}
