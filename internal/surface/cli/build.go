package cli

import (
	"fmt"
	"os"
	"path"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scantling"
	"scantling/internal/message"
	"scantling/internal/surface/folder"
)

func buildCommand() *cobra.Command {
	var out string
	var all bool
	var inputs map[string]string
	c := &cobra.Command{
		Use:               "build FILE",
		Short:             "Plan the piece and write everything into a folder",
		Args:              wants(1, 1),
		ValidArgsFunction: completeDesign,
		RunE: func(c *cobra.Command, args []string) error {
			if info, err := os.Stat(out); err == nil && !info.IsDir() {
				return complain("cli.output-is-file", message.Text("to", out))
			}
			r, w, err := planFile(c.Context(), args[0], inputs)
			if err != nil {
				return err
			}
			defer w.Close()
			report(c.OutOrStdout(), r, w, all)
			if r.Broken() {
				return errFindings
			}
			if err := writeAll(c, r, out); err != nil {
				return err
			}
			if r.HasErrors() {
				return errFindings
			}
			return nil
		},
	}
	c.Flags().StringVarP(&out, "output", "o", "out", "folder to write into")
	_ = c.MarkFlagDirname("output")
	allFlag(c, &all)
	inputsFlag(c, &inputs)
	return c
}

// writeAll writes every output below a folder, each file whole or not at all, and
// names what an earlier build has left there.
func writeAll(c *cobra.Command, r *scantling.Result, out string) error {
	files, err := r.Files()
	if err != nil {
		return err
	}
	to, err := folder.Create(out)
	if err != nil {
		return writeTrouble(err, out)
	}
	defer to.Close()
	var names []string
	for _, f := range files {
		if err := to.Write(f.Name, f.Data); err != nil {
			return writeTrouble(err, path.Join(out, f.Name))
		}
		names = append(names, f.Name)
	}
	say := r.Words()
	fmt.Fprintln(c.OutOrStdout(), say.Label("cli.written", message.Count("n", len(files)), message.Text("to", out)))
	if old := leftOver(to, names); len(old) > 0 {
		fmt.Fprintln(c.ErrOrStderr(), say.Label("cli.left-over", message.Count("n", len(old)), texts("files", old)))
	}
	return nil
}

// leftOver lists drawings in the folder that this build has not written: of parts
// that there are no more.
func leftOver(to *folder.Folder, written []string) []string {
	there, err := to.List("drawings")
	if err != nil {
		return nil // only a courtesy
	}
	var old []string
	for _, name := range there {
		if strings.HasSuffix(name, ".svg") && !slices.Contains(written, name) {
			old = append(old, name)
		}
	}
	return old
}
