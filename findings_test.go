package scantling_test

import (
	"flag"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

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
	const golden = "testdata/findings.txt"
	var got strings.Builder
	for _, inputs := range grid() {
		r := planDemo(t, inputs)
		var names []string
		for _, k := range slices.Sorted(maps.Keys(inputs)) {
			names = append(names, k+"="+inputs[k])
		}
		fmt.Fprintf(&got, "%s\n", strings.Join(names, " "))
		for _, d := range r.Plan.Diagnostics {
			fmt.Fprintf(&got, "\t%s %s %s\n", d.Severity, d.Code, d.Address)
		}
		for _, f := range r.Plan.Findings {
			if f.Status != plan.Pass {
				fmt.Fprintf(&got, "\t%s %s %s %s %s\n", f.Severity, f.Check, f.Status, f.Code, f.Address)
			}
		}
	}
	if *update {
		if err := os.WriteFile(golden, []byte(got.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if got.String() != string(want) {
		t.Errorf("findings differ from %s (rewrite with -update and read the difference):\n%s", golden, difference(string(want), got.String()))
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
