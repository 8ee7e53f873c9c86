package cli

import (
	"context"
	"fmt"
	"path/filepath"

	"github.com/spf13/cobra"

	"scantling"
	"scantling/internal/surface/folder"
)

// planFile plans the document at a path of the disk.
func planFile(ctx context.Context, file string, inputs map[string]string) (*scantling.Result, *folder.Folder, error) {
	dir, name := filepath.Split(file)
	if dir == "" {
		dir = "."
	}
	w, err := folder.Open(dir)
	if err != nil {
		return nil, nil, err
	}
	r, err := scantling.Plan(ctx, w, name, scantling.Options{Inputs: inputs})
	if err != nil {
		w.Close()
		return nil, nil, err
	}
	return r, w, nil
}

func buildCommand() *cobra.Command {
	var out string
	var inputs map[string]string
	c := &cobra.Command{
		Use:   "build FILE",
		Short: "Plan the piece and write everything into a folder",
		Args:  cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			r, w, err := planFile(c.Context(), args[0], inputs)
			if err != nil {
				return err
			}
			defer w.Close()
			if err := report(c, r, false); err != nil {
				return err
			}
			if r.Broken() {
				return errFindings
			}
			files, err := r.Files()
			if err != nil {
				return err
			}
			to, err := folder.Create(out)
			if err != nil {
				return err
			}
			defer to.Close()
			for _, f := range files {
				if err := to.Write(f.Name, f.Data); err != nil {
					return err
				}
			}
			fmt.Fprintf(c.OutOrStdout(), "%d files in %s\n", len(files), out)
			if r.HasErrors() {
				return errFindings
			}
			return nil
		},
	}
	c.Flags().StringVarP(&out, "output", "o", "out", "folder to write into")
	inputsFlag(c, &inputs)
	return c
}
