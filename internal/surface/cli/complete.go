package cli

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scantling"
	"scantling/internal/recipe"
)

// completeDesign offers design documents.
func completeDesign(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return []string{strings.TrimPrefix(designEnding, ".")}, cobra.ShellCompDirectiveFilterFileExt
}

// completeRecord offers design documents, then what can be measured or cut.
func completeRecord(c *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	if len(args) != 1 {
		return completeDesign(c, args, begun)
	}
	return planned(c, args[0], func(r *scantling.Result) []string {
		var out []string
		for _, p := range r.Plan.Piece.Parts {
			out = append(out, string(p.Address))
		}
		for _, s := range r.Plan.Piece.Spaces {
			out = append(out, string(s.Address))
		}
		return out
	})
}

// completeExplain offers design documents, then marks and addresses, then sizes.
func completeExplain(c *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	switch len(args) {
	case 1:
		return planned(c, args[0], func(r *scantling.Result) []string {
			var out []string
			for _, row := range r.Plan.Parts {
				out = append(out, row.Mark)
				for _, m := range row.Members {
					out = append(out, string(m))
				}
			}
			return out
		})
	case 2:
		return sizes[:], cobra.ShellCompDirectiveNoFileComp
	}
	return completeDesign(c, args, begun)
}

// completeRecipe offers the recipes.
func completeRecipe(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var out []string
	for _, r := range recipe.All() {
		out = append(out, r.Name+"\t"+r.About)
	}
	return out, cobra.ShellCompDirectiveNoFileComp
}

// planned offers names out of a plan; where there is none, nothing.
func planned(c *cobra.Command, file string, names func(*scantling.Result) []string) ([]string, cobra.ShellCompDirective) {
	r, w, err := planFile(c.Context(), file, nil)
	if err != nil {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	defer w.Close()
	out := names(r)
	slices.Sort(out)
	return slices.Compact(out), cobra.ShellCompDirectiveNoFileComp
}
