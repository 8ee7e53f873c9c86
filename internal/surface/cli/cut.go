package cli

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"scantling"
	"scantling/internal/message"
	"scantling/internal/optimise"
	"scantling/internal/optimise/conform"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/problems"
	"scantling/internal/optimise/written"
	"scantling/internal/unit"
	"scantling/internal/world"
)

// unitsPerSecond is the rate by which a budget in seconds becomes units of work:
// the engine's own default is about two seconds. It is stored, not measured, so
// that the same command gives the same answer everywhere.
const unitsPerSecond = problem.DefaultWork / 2

// mostWork bounds a budget: about five hours.
const mostWork = unitsPerSecond * 18_000

func cutCommand() *cobra.Command {
	var asJSON bool
	var pick string
	b := budget{work: problem.DefaultWork}
	c := &cobra.Command{
		Use:   "cut PROBLEM.json",
		Short: "Cut boards or sheets by a problem of its own, without a piece",
		Long: `Answers a cutting problem: which stock to take and how to saw it, what it costs,
and a proven bound below which nothing can cost. The file is described in
docs/CUTTING-PROBLEM.md; - reads it from the input. Ctrl-C ends the search and
prints the best so far.`,
		Example: `  scantling cut shelves.json
  scantling cut shelves.json --budget 10s --json`,
		Args: wants(1, 1),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return []string{"json"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(c *cobra.Command, args []string) error {
			q, err := readQuestion(c, args[0], pick)
			if err != nil {
				return err
			}
			done := ticking(c.ErrOrStderr())
			a, err := optimise.Solve(c.Context(), q.Problem, problem.Budget{Work: b.work, Workers: 2})
			done()
			var f *problem.Fault
			if errors.As(err, &f) {
				fmt.Fprintln(c.OutOrStdout(), plain().Label("cut.cannot", message.Text("why", f.Text)))
				return errFindings
			}
			if err != nil {
				return err
			}
			if err := conform.Verify(q.Problem, a); err != nil {
				return complain("cut.unsound", message.Text("why", err.Error()))
			}
			if asJSON {
				data, err := written.Answer(q, a)
				if err == nil {
					_, err = c.OutOrStdout().Write(data)
				}
				return err
			}
			printAnswer(c.OutOrStdout(), q, a)
			return nil
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the answer as JSON")
	c.Flags().Var(&b, "budget", "units of work, or seconds as 2s, to be spent at most")
	c.Flags().StringVar(&pick, "pick", "", "name of the problem, of a file that holds several")
	return c
}

// readQuestion reads a file of either kind.
func readQuestion(c *cobra.Command, file, pick string) (written.Question, error) {
	data, err := readProblem(c.InOrStdin(), file)
	if err != nil {
		return written.Question{}, err
	}
	var kind struct{ Schema string }
	if json.Unmarshal(data, &kind) == nil && kind.Schema == problems.Schema {
		return picked(data, file, pick)
	}
	q, err := written.Read(data)
	if err != nil {
		return q, complain("cut.faults", message.Text("file", file), message.Text("faults", err.Error()))
	}
	return q, nil
}

// readProblem reads a file, or the input for "-".
func readProblem(in io.Reader, file string) ([]byte, error) {
	if file == "-" {
		data, err := io.ReadAll(io.LimitReader(in, world.MaxFile+1))
		if err != nil {
			return nil, complain("cut.input", message.Text("why", bare(err)))
		}
		return data, nil
	}
	w, name, err := beside(file, problemFile)
	if err != nil {
		return nil, err
	}
	defer w.Close()
	data, err := w.Read(name)
	if err != nil {
		return nil, fileTrouble(&scantling.FileError{Role: problemFile, Name: name, Err: err}, file)
	}
	return data, nil
}

// problemFile is the role of a cutting problem in messages.
const problemFile scantling.Role = "problem"

// picked takes one problem of a set of published ones.
func picked(data []byte, file, pick string) (written.Question, error) {
	q := written.Question{Unit: unit.Metric}
	set, err := problems.Read(strings.NewReader(string(data)))
	if err != nil {
		return q, complain("cut.faults", message.Text("file", file), message.Text("faults", err.Error()))
	}
	var names []string
	for _, in := range set.Instances {
		if in.Name == pick || pick == "" && len(set.Instances) == 1 {
			if q.Problem, err = in.Problem(problems.Rules{}); err != nil {
				return q, complain("cut.faults", message.Text("file", file), message.Text("faults", err.Error()))
			}
			return q, nil
		}
		names = append(names, in.Name)
	}
	const shown = 10
	return q, complain("cut.pick", message.Text("file", file), message.Count("n", len(names)), texts("names", names[:min(shown, len(names))]))
}

// ticking says on a terminal how long a search has run, once it takes more than a
// second; the function that it returns ends that.
func ticking(errs io.Writer) func() {
	f, ok := errs.(*os.File)
	if !ok {
		return func() {}
	}
	if info, err := f.Stat(); err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return func() {}
	}
	stop, stopped := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(stopped)
		tick := time.NewTicker(time.Second)
		defer tick.Stop()
		for n := 1; ; n++ {
			select {
			case <-tick.C:
				fmt.Fprintf(f, "\r%s", plain().Label("cut.searching", message.Count("seconds", n)))
			case <-stop:
				if n > 1 {
					fmt.Fprintln(f)
				}
				return
			}
		}
	}()
	return func() { close(stop); <-stopped }
}

// budget is the flag for work: a number of units, or a duration at the stored
// rate.
type budget struct{ work int64 }

// Set implements pflag.Value.
func (b *budget) Set(s string) error {
	n, err := strconv.ParseInt(s, 10, 64)
	if err != nil {
		d, failed := time.ParseDuration(s)
		if failed != nil || d > mostWork/unitsPerSecond*time.Second {
			return complain("cut.budget", message.Text("text", s))
		}
		n = int64(d.Seconds() * unitsPerSecond)
	}
	if n <= 0 || n > mostWork {
		return complain("cut.budget", message.Text("text", s))
	}
	b.work = n
	return nil
}

// String implements pflag.Value.
func (b *budget) String() string { return strconv.FormatInt(b.work, 10) }

// Type implements pflag.Value.
func (b *budget) Type() string { return "N|2s" }
