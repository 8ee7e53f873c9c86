package cli

import (
	"encoding/json"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"scantling"
	"scantling/internal/diag"
	"scantling/internal/plan"
	"scantling/internal/words"
)

func checkCommand() *cobra.Command {
	var asJSON bool
	var inputs map[string]string
	c := &cobra.Command{
		Use:   "check FILE",
		Short: "Say what is wrong with the piece, and what is not known",
		Args:  cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			r, w, err := planFile(c.Context(), args[0], inputs)
			if err != nil {
				return err
			}
			defer w.Close()
			if err := report(c, r, asJSON); err != nil {
				return err
			}
			if r.HasErrors() {
				return errFindings
			}
			return nil
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print diagnostics and findings as JSON")
	inputsFlag(c, &inputs)
	return c
}

// report prints diagnostics and findings.
func report(c *cobra.Command, r *scantling.Result, asJSON bool) error {
	if asJSON {
		return reportJSON(c.OutOrStdout(), r)
	}
	say := r.Words()
	out := c.OutOrStdout()
	for _, d := range r.Plan.Diagnostics {
		printDiagnostic(out, d, say)
	}
	passed := 0
	for _, f := range r.Plan.Findings {
		if f.Status == plan.Pass {
			passed++
			continue
		}
		printFinding(out, f, say)
	}
	for _, u := range r.Plan.Unplaced {
		fmt.Fprintln(out, say.Label("cli.unplaced", messageText("of", u)))
	}
	_, err := fmt.Fprintln(out, say.Label("cli.passed", messageCount("n", passed)))
	return err
}

func printDiagnostic(out io.Writer, d diag.Diagnostic, say *words.Words) {
	if !d.Where.IsZero() {
		fmt.Fprintf(out, "%s:%d:%d: ", d.Where.File, d.Where.Line, d.Where.Column)
	}
	fmt.Fprintf(out, "%s %s: %s [%s]\n", sign(d.Severity), say.Label("severity."+string(d.Severity)), say.Say(d.Text), d.Code)
	for _, rel := range d.Related {
		fmt.Fprintf(out, "    %s:%d: %s\n", rel.Where.File, rel.Where.Line, say.Say(rel.Text))
	}
	for _, rem := range d.Remedies {
		fmt.Fprintf(out, "    → %s\n", say.Say(rem.Text))
	}
}

func printFinding(out io.Writer, f plan.Finding, say *words.Words) {
	if !f.Where.IsZero() {
		fmt.Fprintf(out, "%s:%d:%d: ", f.Where.File, f.Where.Line, f.Where.Column)
	}
	status := say.Label(f.Word())
	fmt.Fprintf(out, "%s %s: %s [%s]\n", sign(f.Severity), status, say.Say(f.Text), f.Code)
	for _, rem := range f.Remedy {
		fmt.Fprintf(out, "    → %s\n", say.Say(rem.Text))
	}
}

// sign is never the only sign: the severity's word stands beside it.
func sign(s diag.Severity) string {
	switch s {
	case diag.Error:
		return "■"
	case diag.Warning:
		return "▲"
	}
	return "●"
}

func reportJSON(out io.Writer, r *scantling.Result) error {
	enc := json.NewEncoder(out)
	enc.SetIndent("", " ")
	return enc.Encode(struct {
		Diagnostics diag.List      `json:"diagnostics"`
		Findings    []plan.Finding `json:"findings"`
		Unplaced    []string       `json:"unplaced"`
	}{r.Plan.Diagnostics, r.Plan.Findings, r.Plan.Unplaced})
}
