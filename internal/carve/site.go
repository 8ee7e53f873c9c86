package carve

import (
	"strings"

	"scantling/internal/address"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/shop"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// Site is one cut or series block on one part.
type Site struct {
	formula.Reader
	Shop *shop.Shop
	// Part is the part as it stands in the piece.
	Part piece.Part
	// Assembled says that the part is a group after glue-up (see package assembled).
	Assembled bool
	// Name is the block's; Address the cut's, below its part.
	Name    string
	Address address.Address
	// After are the cuts of the same part that come before.
	After []address.Address
	// Carried brings a position into the piece's frame.
	Carried func(formula.Value) formula.Value
	// Things returns what a value lists, and the last thing of the contents that it
	// was taken from, which spare places are like.
	Things func(formula.Value) (list formula.Value, last Held)
}

// maxCuts bounds one series.
const maxCuts = 4096

// Held is a thing that lies in a channel.
type Held interface {
	// Name is the thing's key; Size its diameter.
	Name() string
	Size() formula.Value
	// Lies tells it where it came to lie.
	Lies(in, cut address.Address)
}

// Nth is the address of number n of several cuts; Keyed of the one that holds a
// thing.
func (s Site) Nth(n int) address.Address {
	return s.Part.Address.Nth(s.Address.Last().Name, n)
}

// Keyed is the address of the cut that holds the thing of that key.
func (s Site) Keyed(key string) address.Address {
	return s.Part.Address.Keyed(s.Address.Last().Name, key)
}

// figure is a length value as a figure.
func (s Site) figure(v formula.Value) piece.Figure { return s.Maker.Ledger.Figure(v.Entry) }

// make enters lengths that are known to go together.
func (s Site) make(op ledger.Op, ids ...ledger.ID) ledger.ID {
	id, err := s.Maker.Ledger.Make("", op, "", ids...)
	if err != nil { // a sum beyond the range of lengths
		return s.Maker.Ledger.Given(ledger.Entry{Value: unit.OfLength(0), Origin: ledger.Derived})
	}
	return id
}

// roundNoses returns the shop's round-nose cutters, or the one asked for, and
// their line in the ledger.
func (s Site) roundNoses(asked string) ([]tool.Cutter, ledger.ID) {
	var tools []tool.Cutter
	var values []unit.Value
	for _, c := range s.Shop.Cutters {
		if c.Tool.Shape == tool.RoundNose && (asked == "" || asked == c.ID) {
			tools = append(tools, c.Tool)
			values = append(values, unit.OfList(unit.OfText(c.ID), unit.OfLength(c.Tool.Diameter), unit.OfLength(c.Tool.CuttingLength)))
		}
	}
	return tools, s.Maker.Ledger.Given(ledger.Entry{Name: "shop.round-nose-cutters", Value: unit.OfList(values...), Origin: ledger.Bought, Where: s.Shop.Where})
}

// quantity is a length that is already in the ledger.
func quantity(f piece.Figure) formula.Value {
	return formula.Value{Kind: formula.Quantity, Is: unit.OfLength(f.Nm), Entry: f.Entry}
}

func splitWords(list string) []string { return strings.Split(list, ", ") }
