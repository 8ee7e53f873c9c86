package stock

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Surface says how a board's faces are when it is bought.
type Surface string

// The surfaces.
const (
	Sawn   Surface = "sawn"
	Planed Surface = "planed"
	// Finished is planed to the thickness that parts have: it may be used as it is bought.
	Finished Surface = "finished"
)

// DefectKind names a defect.
type DefectKind string

// The defects that a maker marks.
const (
	Knot    DefectKind = "knot"
	Check   DefectKind = "check" // an end check or a split
	Sapwood DefectKind = "sapwood"
	Wane    DefectKind = "wane"
	Wild    DefectKind = "wild grain"
	Flaw    DefectKind = "flaw" // any other
)

// DefectKinds returns the kinds, the commonest first.
func DefectKinds() []DefectKind { return []DefectKind{Knot, Check, Sapwood, Wane, Wild, Flaw} }

// Defect is a rectangle of a board that no part may contain, through its whole
// thickness: From and To along the length from the marked end, Near and Far
// across the width from the marked edge.
type Defect struct {
	Kind                DefectKind
	From, To, Near, Far unit.Length
}

// Board is one board, or several alike.
type Board struct {
	// Name is what is chalked on it.
	Name string
	// Wood is the species as its owner calls it; package timber knows which.
	Wood string
	// Nominal is the size that it is sold as ("4/4", "27", "2 x 6"), for people.
	Nominal string
	// Length, Width and Thickness are measured.
	Length, Width, Thickness unit.Length
	// SoldWidth and SoldThickness are what the merchant charges for where that is
	// more than what is there; zero is as measured.
	SoldWidth, SoldThickness unit.Length
	Surface                  Surface
	Defects                  []Defect
	// Quantity is how many there are; zero counts as one.
	Quantity int
	Price    Price
}

// Bounds of stock that a document may state.
const (
	maxBoard    = 20 * unit.Metre
	maxDefects  = 200
	maxQuantity = 10_000
)

// Count returns how many boards there are.
func (b Board) Count() int { return max(1, b.Quantity) }

// SoldAs returns the sizes that the merchant charges for.
func (b Board) SoldAs() (length, width, thickness unit.Length) {
	length, width, thickness = b.Length, b.Width, b.Thickness
	if b.SoldWidth > 0 {
		width = b.SoldWidth
	}
	if b.SoldThickness > 0 {
		thickness = b.SoldThickness
	}
	return length, width, thickness
}

// Check reports a board that cannot be. Keys: "figure.length-range",
// "stock.too-many", "stock.defect-outside", "stock.unknown-surface".
func (b Board) Check() error {
	for _, s := range []struct {
		quantity string
		got      unit.Length
	}{{"quantity.length", b.Length}, {"quantity.width", b.Width}, {"quantity.thickness", b.Thickness}} {
		if err := figure.LengthRange("stock.board", s.quantity, s.got, unit.Millimetre, maxBoard); err != nil {
			return err
		}
	}
	for _, s := range []unit.Length{b.SoldWidth, b.SoldThickness} {
		if err := figure.LengthRange("stock.board", "quantity.sold", s, 0, maxBoard); err != nil {
			return err
		}
	}
	if b.Surface != Sawn && b.Surface != Planed && b.Surface != Finished {
		return figure.Refuse("stock.unknown-surface", message.Text("board", b.Name), message.Text("surface", string(b.Surface))).Or("stock.sawn-or-planed")
	}
	if b.Quantity < 0 || b.Quantity > maxQuantity {
		return figure.Refuse("stock.too-many", message.Text("board", b.Name), message.Count("got", b.Quantity), message.Count("most", maxQuantity))
	}
	if len(b.Defects) > maxDefects {
		return figure.Refuse("stock.too-many", message.Text("board", b.Name), message.Count("got", len(b.Defects)), message.Count("most", maxDefects))
	}
	for _, d := range b.Defects {
		if d.From < 0 || d.From >= d.To || d.To > b.Length || d.Near < 0 || d.Near >= d.Far || d.Far > b.Width {
			return figure.Refuse("stock.defect-outside", message.Text("board", b.Name), message.Word("kind", string(d.Kind)),
				message.Length("from", d.From), message.Length("to", d.To), message.Length("length", b.Length),
				message.Length("near", d.Near), message.Length("far", d.Far), message.Length("width", b.Width)).Or("stock.measure-defect")
		}
	}
	return b.Price.Check()
}

// Cleaning holds how much is planed away before a board is clean: house rules.
type Cleaning struct {
	// OffPlaned and OffSawn are taken off in all, both faces together.
	OffPlaned, OffSawn figure.Of[unit.Length]
	// Step is what the result is rounded down to.
	Step unit.Length
}

// MetricCleaning and InchCleaning return the usual rules: 1 mm off a board bought
// planed (makers allow 0.5 to 2), a quarter of an inch off a sawn one (4/4 gives
// 3/4; more for long or cupped boards), then down to the whole millimetre or the
// next sixteenth. Common practice, no source.
func MetricCleaning() Cleaning { return usualCleaning(unit.Millimetre) }

// InchCleaning is [MetricCleaning] with results down to the next sixteenth.
func InchCleaning() Cleaning { return usualCleaning(unit.Inch / 16) }

func usualCleaning(step unit.Length) Cleaning {
	return Cleaning{
		OffPlaned: figure.Between(unit.Millimetre, unit.Millimetre/2, unit.MM(2), figure.PracticeSource("stock.clean-planed")),
		OffSawn:   figure.Between(unit.Inch/4, unit.MM(4), unit.Inch/2, figure.PracticeSource("stock.clean-sawn")),
		Step:      step,
	}
}

// CleansUp returns the thickness that a board of the surface and thickness is
// planed down to when both faces are cleaned: 19.05 bought planed gives 18. The
// range follows from the rule's range. Common practice, no source. Errors:
// "stock.too-thin" where nothing would be left. What is bought finished is as thick as
// it is.
func (c Cleaning) CleansUp(thickness unit.Length, surface Surface) (figure.Of[unit.Length], error) {
	if surface == Finished {
		return figure.Exactly(thickness, c.OffPlaned.Source), nil
	}
	off := c.OffSawn
	if surface == Planed {
		off = c.OffPlaned
	}
	at := func(off unit.Length) unit.Length { return max(0, (thickness-off).Round(c.Step, unit.Down)) }
	clean := figure.Between(at(off.Value), at(off.High), at(off.Low), off.Source)
	if clean.Value <= 0 {
		return clean, figure.Refuse("stock.too-thin", message.Length("thickness", thickness), message.Length("off", off.Value)).Or("stock.thicker-board")
	}
	return clean, nil
}

// LeastToBuy returns the least thickness of a board of the surface that cleans up
// to what is wanted.
func (c Cleaning) LeastToBuy(wanted unit.Length, surface Surface) figure.Of[unit.Length] {
	if surface == Finished {
		return figure.Exactly(wanted, c.OffPlaned.Source)
	}
	off := c.OffSawn
	if surface == Planed {
		off = c.OffPlaned
	}
	return figure.Between(wanted+off.Value, wanted+off.Low, wanted+off.High, off.Source)
}
