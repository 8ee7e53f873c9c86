package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"scantling"
	"scantling/internal/message"
	"scantling/internal/record"
)

func recordCommand() *cobra.Command {
	var n scantling.Note
	c := &cobra.Command{
		Use:   "record FILE ADDRESS",
		Short: "Write what was measured, cut or spoiled into the as-built record",
		Example: `  scantling record chest.piece.hcl case.side.left --what thickness --value 17.6
  scantling record chest.piece.hcl 'case.opening[2]' --what "width front" --value 381.4
  scantling record chest.piece.hcl case.side.left --cut --length 213.5`,
		Args:              wants(2, 2),
		ValidArgsFunction: completeRecord,
		RunE: func(c *cobra.Command, args []string) error {
			w, name, err := beside(args[0], scantling.DesignFile)
			if err != nil {
				return err
			}
			defer w.Close()
			n.Of = args[1]
			e, err := scantling.Record(c.Context(), w, name, n)
			if err != nil {
				return recordTrouble(err, n.Of, args[0])
			}
			of := message.Address("of", e.Address)
			file := message.Text("file", scantling.RecordName(name))
			say := plain()
			switch e.Kind {
			case record.Cut:
				fmt.Fprintln(c.OutOrStdout(), say.Label("cli.recorded-cut", file, of, message.Length("length", e.Sizes[0]),
					message.Length("width", e.Sizes[1]), message.Length("thickness", e.Sizes[2])))
			case record.Spoiled:
				fmt.Fprintln(c.OutOrStdout(), say.Label("cli.recorded-spoiled", file, of))
			default:
				fmt.Fprintln(c.OutOrStdout(), say.Label("cli.recorded", file, of, message.Text("what", e.What), message.Text("is", e.Value.String())))
			}
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
