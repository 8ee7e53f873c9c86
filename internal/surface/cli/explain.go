package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

func messageText(name, s string) message.Arg      { return message.Text(name, s) }
func messageCount(name string, n int) message.Arg { return message.Count(name, n) }

func explainCommand() *cobra.Command {
	var inputs map[string]string
	c := &cobra.Command{
		Use:   "explain FILE MARK",
		Short: "Show where the sizes of a part come from, down to what was written",
		Args:  cobra.ExactArgs(2),
		RunE: func(c *cobra.Command, args []string) error {
			r, w, err := planFile(c.Context(), args[0], inputs)
			if err != nil {
				return err
			}
			defer w.Close()
			for _, row := range r.Plan.Parts {
				if row.Mark == args[1] {
					for _, f := range []plan.Figure{row.Length, row.Width, row.Thickness} {
						explain(c, r.Plan.Ledger, f)
					}
					return nil
				}
			}
			return fmt.Errorf("no part has the mark %q", args[1])
		},
	}
	inputsFlag(c, &inputs)
	return c
}

// explain prints the trail of a figure, one line an entry, last first.
func explain(c *cobra.Command, l *ledger.Ledger, f plan.Figure) {
	out := c.OutOrStdout()
	for i, e := range l.Explain(f.Entry) {
		value := e.Value.String()
		if nm, ok := e.Value.Length(); ok {
			value = unit.Show{System: unit.Metric, Resolution: unit.Micrometre}.FormatUnit(nm)
		}
		from := string(e.Origin)
		if len(e.Args) > 0 {
			var args []string
			for _, a := range e.Args {
				args = append(args, fmt.Sprintf("#%d", a))
			}
			from = fmt.Sprintf("%s %s %s", e.Op, e.Func, strings.Join(args, " "))
		}
		if e.Where.Line > 0 {
			from += fmt.Sprintf("  (%s:%d)", e.Where.File, e.Where.Line)
		}
		if e.Source != "" {
			from += "  " + e.Source
		}
		indent := "  "
		if i == 0 {
			indent = ""
		}
		fmt.Fprintf(out, "%s#%d %s = %s  %s\n", indent, e.ID, e.Name, value, from)
	}
}
