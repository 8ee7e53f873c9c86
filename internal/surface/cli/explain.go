package cli

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scantling"
	"scantling/internal/address"
	"scantling/internal/document"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/output/sums"
	"scantling/internal/plan"
)

func explainCommand() *cobra.Command {
	var inputs map[string]string
	var depth int
	c := &cobra.Command{
		Use:   "explain FILE ADDRESS|MARK [WHAT]",
		Short: "Show where a size comes from, down to what was written",
		Example: `  scantling explain chest.piece.hcl A1
  scantling explain chest.piece.hcl 'drawer[1].front' length
  scantling explain chest.piece.hcl sizes.case_wide`,
		Args:              wants(2, 3),
		ValidArgsFunction: completeExplain,
		RunE: func(c *cobra.Command, args []string) error {
			r, w, err := planFile(c.Context(), args[0], inputs)
			if err != nil {
				return err
			}
			defer w.Close()
			what := ""
			if len(args) == 3 {
				what = args[2]
			}
			asked, err := figuresOf(r, args[1], what)
			if err != nil {
				return err
			}
			for i, a := range asked {
				if i > 0 {
					fmt.Fprintln(c.OutOrStdout())
				}
				a.print(c.OutOrStdout(), r, depth)
			}
			return nil
		},
	}
	c.Flags().IntVar(&depth, "depth", 12, "how many steps down the sums are told")
	inputsFlag(c, &inputs)
	return c
}

// figure is one thing that is explained.
type figure struct {
	title string
	entry ledger.ID
}

func (f figure) print(out io.Writer, r *scantling.Result, depth int) {
	say := r.Words()
	if f.title != "" {
		fmt.Fprintln(out, f.title)
	}
	lines, more := sums.Of(r.Plan.Ledger, f.entry, say, sums.Options{Depth: depth})
	for _, l := range lines {
		fmt.Fprintf(out, "%s%s\n", strings.Repeat("  ", l.Depth), l.Text(say, r.Plan.Piece.File))
	}
	if more {
		fmt.Fprintln(out, say.Label("cli.lines-left-out", message.Count("n", len(lines))))
	}
}

// sizes are the words for a part's own three figures.
var sizes = [3]string{"length", "width", "thickness"}

// figuresOf finds what is asked for: the sizes of a part by its mark or address,
// or any figure of the ledger by its name.
func figuresOf(r *scantling.Result, of, what string) ([]figure, error) {
	for _, row := range r.Plan.Parts {
		member := slices.IndexFunc(row.Members, func(a address.Address) bool { return string(a) == of })
		if row.Mark != of && member < 0 {
			continue
		}
		name := max(member, 0)
		if what != "" && !slices.Contains(sizes[:], what) {
			return named(r, string(row.Members[name]), what)
		}
		return sizesOfPart(r, row, row.Members[name], what), nil
	}
	return named(r, of, what)
}

func sizesOfPart(r *scantling.Result, row plan.PartRow, member address.Address, what string) []figure {
	figures := [3]plan.Figure{row.Length, row.Width, row.Thickness}
	for _, p := range r.Plan.Piece.Parts {
		if p.Address == member {
			figures = p.Sizes()
		}
	}
	var out []figure
	for i, f := range figures {
		if what == "" || what == sizes[i] {
			out = append(out, figure{r.Words().Label("cli.size", message.Text("mark", row.Mark), message.Text("name", row.Name),
				message.Word("size", "size."+sizes[i]), message.Length("is", f.Nm)), f.Entry})
		}
	}
	return out
}

// named finds figures of the ledger: the one of that name, or all that are one
// step below it. A name that was entered more than once stands for its last.
func named(r *scantling.Result, of, what string) ([]figure, error) {
	full := of
	if what != "" {
		full += "." + what
	}
	last := map[string]ledger.ID{}
	var order, known []string
	for _, e := range r.Plan.Ledger.Entries() {
		if _, twice := last[e.Name]; !twice && e.Name != "" && e.Name != "nth" && e.Name != "unit" {
			known = append(known, e.Name)
			if below, ok := strings.CutPrefix(e.Name, of+"."); ok && what == "" && !strings.ContainsAny(below, ".") {
				order = append(order, e.Name)
			}
		}
		last[e.Name] = e.ID
	}
	if id, ok := last[full]; ok && full != "" {
		return []figure{{"", id}}, nil
	}
	var out []figure
	for _, name := range order {
		out = append(out, figure{"", last[name]})
	}
	if len(out) == 0 {
		for _, row := range r.Plan.Parts {
			known = append(known, row.Mark)
		}
		return nil, &usageError{key: "cli.no-figure", args: []message.Arg{message.Text("name", full)}, near: document.Nearest(full, known)}
	}
	return out, nil
}
