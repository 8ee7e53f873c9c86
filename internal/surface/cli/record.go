package cli

import (
	"fmt"
	"path/filepath"

	"github.com/spf13/cobra"

	"scantling"
	"scantling/internal/surface/folder"
)

func recordCommand() *cobra.Command {
	var n scantling.Note
	c := &cobra.Command{
		Use:   "record FILE ADDRESS",
		Short: "Write what was measured, cut or spoiled into the as-built record",
		Example: `  scantling record chest.piece.hcl case.side.left --what thickness --value 17.6
  scantling record chest.piece.hcl 'case.opening[2]' --what "width front" --value 381.4
  scantling record chest.piece.hcl case.side.left --cut --length 213.5`,
		Args: cobra.ExactArgs(2),
		RunE: func(c *cobra.Command, args []string) error {
			dir, name := filepath.Split(args[0])
			if dir == "" {
				dir = "."
			}
			w, err := folder.Open(dir)
			if err != nil {
				return err
			}
			defer w.Close()
			n.Of = args[1]
			e, err := scantling.Record(c.Context(), w, name, n)
			if err != nil {
				return err
			}
			fmt.Fprintf(c.OutOrStdout(), "%s: %s %s %s\n", scantling.RecordName(name), e.Kind, e.Address, e.What)
			return nil
		},
	}
	f := c.Flags()
	f.StringVar(&n.What, "what", "", `what was read: thickness, length, width, "width front", "height left" ...`)
	f.StringVar(&n.Value, "value", "", `the reading: 17.6, "5 3/8 in"`)
	f.BoolVar(&n.Cut, "cut", false, "the part is cut; sizes that are not said are as planned")
	f.StringVar(&n.Sizes[0], "length", "", "length as cut")
	f.StringVar(&n.Sizes[1], "width", "", "width as cut")
	f.StringVar(&n.Sizes[2], "thickness", "", "thickness as cut")
	f.BoolVar(&n.Spoiled, "spoiled", false, "the part was spoiled and is to be made again")
	f.StringVar(&n.Humidity, "humidity", "", "relative humidity in the shop, in percent")
	f.StringVar(&n.Remark, "note", "", "a remark of your own")
	return c
}
