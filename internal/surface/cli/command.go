package cli

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"
)

// Exit statuses.
const (
	exitFine     = 0
	exitFindings = 1
	exitUsage    = 2
)

// errFindings says that the command did its work and found something wrong.
var errFindings = errors.New("there are findings of error severity")

// Main runs the command line and returns the exit status.
func Main(ctx context.Context, args []string, in io.Reader, out, errs io.Writer) int {
	out, errs = plainWriter{out}, plainWriter{errs}
	root := newRoot(in, out, errs)
	root.SetArgs(args)
	err := run(ctx, root, args)
	switch {
	case err == nil:
		return exitFine
	case errors.Is(err, errFindings):
		return exitFindings
	}
	fmt.Fprintln(errs, "scantling:", strings.TrimSpace(err.Error()))
	return exitUsage
}

func run(ctx context.Context, root *cobra.Command, args []string) error {
	root.InitDefaultCompletionCmd(args...)
	root.InitDefaultHelpCmd()
	if len(args) > 0 && (args[0] == cobra.ShellCompRequestCmd || args[0] == cobra.ShellCompNoDescRequestCmd) {
		return root.ExecuteContext(ctx) // a shell asks for completions
	}
	if _, rest, err := root.Find(args); err != nil {
		for _, word := range rest {
			if !strings.HasPrefix(word, "-") {
				return commandTrouble(root, word)
			}
		}
	}
	return root.ExecuteContext(ctx)
}

func newRoot(in io.Reader, out, errs io.Writer) *cobra.Command {
	root := &cobra.Command{
		Use:   "scantling",
		Short: "From what it must hold, your timber and your machines to a plan that can be built",
		Long: `Scantling turns what a piece must hold, your timber and your machines into a plan
that can be built: parts, cutting diagrams, machine set-ups, steps, a booklet.

Exit status: 0 fine or warnings only, 1 an error in the piece, 2 wrong usage or
a file that cannot be read or written.`,
		SilenceUsage:  true,
		SilenceErrors: true,
	}
	root.SetIn(in)
	root.SetOut(out)
	root.SetErr(errs)
	root.SetFlagErrorFunc(flagTrouble)
	root.AddCommand(newCommand(), buildCommand(), checkCommand(), openCommand(), recordCommand(), explainCommand(), cutCommand())
	return root
}
