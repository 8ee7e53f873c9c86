package cli

import "github.com/spf13/cobra"

func checkCommand() *cobra.Command {
	var asJSON, all bool
	var inputs map[string]string
	c := &cobra.Command{
		Use:               "check FILE",
		Short:             "Say what is wrong with the piece, and what is not known",
		Args:              wants(1, 1),
		ValidArgsFunction: completeDesign,
		RunE: func(c *cobra.Command, args []string) error {
			r, w, err := planFile(c.Context(), args[0], inputs)
			if err != nil {
				return err
			}
			defer w.Close()
			if !asJSON {
				report(c.OutOrStdout(), r, w, all)
			} else if err := reportJSON(c.OutOrStdout(), r); err != nil {
				return err
			}
			if r.HasErrors() {
				return errFindings
			}
			return nil
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print diagnostics and findings as JSON")
	allFlag(c, &all)
	inputsFlag(c, &inputs)
	return c
}

func allFlag(c *cobra.Command, all *bool) {
	c.Flags().BoolVar(all, "all", false, "print every finding, however many there are")
}
