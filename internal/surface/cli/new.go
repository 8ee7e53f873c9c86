package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"scantling/internal/document"
	"scantling/internal/message"
	"scantling/internal/recipe"
	"scantling/internal/starter"
	"scantling/internal/surface/folder"
	"scantling/internal/unit"
)

func newCommand() *cobra.Command {
	var out, units string
	c := &cobra.Command{
		Use:   "new [RECIPE]",
		Short: "Start a design document from a recipe, with a shop to fill in",
		Long: `Starts a design document from a built-in recipe, with every input written out,
and beside it a copy of the built-in shop. Nothing that is there is overwritten; a
shop.hcl that is there is used. Without a recipe it lists them.`,
		Example: `  scantling new drawer
  scantling new "needle tray" -o knitting/tray.piece.hcl --units in`,
		Args:              wants(0, 1),
		ValidArgsFunction: completeRecipe,
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				listRecipes(c)
				return nil
			}
			r, err := findRecipe(args[0])
			if err != nil {
				return err
			}
			system := unit.System(units)
			if system != unit.Metric && system != unit.Inches {
				return complain("cli.no-units", message.Text("units", units))
			}
			if out == "" {
				out = starter.FileName(r)
			}
			return start(c, r, system, out)
		},
	}
	c.Flags().StringVarP(&out, "output", "o", "", "design document to write (the recipe's name unless said)")
	c.Flags().StringVar(&units, "units", "mm", "mm or in")
	_ = c.RegisterFlagCompletionFunc("units", cobra.FixedCompletions([]string{"mm", "in"}, cobra.ShellCompDirectiveNoFileComp))
	return c
}

func listRecipes(c *cobra.Command) {
	fmt.Fprintln(c.OutOrStdout(), plain().Label("cli.new-list"))
	for _, r := range recipe.All() {
		fmt.Fprintf(c.OutOrStdout(), "  %-14s %s\n", r.Name, r.About)
	}
}

// findRecipe finds a recipe by its name; hyphens count as spaces.
func findRecipe(name string) (recipe.Recipe, error) {
	if r, ok := recipe.Find(strings.ReplaceAll(name, "-", " ")); ok {
		return r, nil
	}
	var known []string
	for _, r := range recipe.All() {
		known = append(known, r.Name)
	}
	e := complain("cli.no-recipe", message.Text("name", name), texts("recipes", known))
	e.near = document.Nearest(name, known)
	return recipe.Recipe{}, e
}

// start writes the two documents. The shop goes first: a design whose shop could
// not be written would not plan.
func start(c *cobra.Command, r recipe.Recipe, system unit.System, out string) error {
	if !strings.HasSuffix(out, designEnding) {
		better := strings.TrimSuffix(out, ".hcl") + designEnding
		return complain("cli.name-ending", message.Text("file", out), message.Text("better", better))
	}
	text, err := starter.Design(r, system)
	if err != nil {
		return err
	}
	dir, name := filepath.Split(out)
	if dir == "" {
		dir = "."
	}
	w, err := folder.Create(dir)
	if err != nil {
		return writeTrouble(err, dir)
	}
	defer w.Close()
	if _, err := w.Read(name); !errors.Is(err, fs.ErrNotExist) {
		return complain("cli.exists", message.Text("file", out))
	}
	say, shop := plain(), filepath.Join(dir, starter.ShopName)
	told := "cli.kept-shop"
	if _, err := w.Read(starter.ShopName); errors.Is(err, fs.ErrNotExist) {
		told = "cli.new-shop"
		if err := w.Write(starter.ShopName, starter.Shop(system)); err != nil {
			return writeTrouble(err, shop)
		}
	}
	if err := w.Write(name, text); err != nil {
		return writeTrouble(err, out)
	}
	print := func(key string, args ...message.Arg) {
		fmt.Fprintln(c.OutOrStdout(), say.Say(message.New(key, args...)))
	}
	print("cli.new-design", message.Text("file", out), message.Text("name", r.Name))
	print(told, message.Text("file", shop))
	print("cli.new-next", message.Text("file", out))
	return nil
}
