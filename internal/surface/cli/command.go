package cli

import (
	"context"
	"errors"
	"fmt"
	"io"

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
	root := newRoot(in, out, errs)
	root.SetArgs(args)
	err := root.ExecuteContext(ctx)
	switch {
	case err == nil:
		return exitFine
	case errors.Is(err, errFindings):
		return exitFindings
	}
	fmt.Fprintln(errs, "scantling:", err)
	return exitUsage
}

func newRoot(in io.Reader, out, errs io.Writer) *cobra.Command {
	root := &cobra.Command{
		Use:           "scantling",
		Short:         "From what it must hold, your timber and your machines to a plan that can be built",
		SilenceUsage:  true,
		SilenceErrors: true,
	}
	root.SetIn(in)
	root.SetOut(out)
	root.SetErr(errs)
	root.AddCommand(buildCommand(), checkCommand(), openCommand(), recordCommand(), explainCommand())
	return root
}
