package screen

import (
	"math/big"
	"strings"

	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// mostStops bounds the values that a stepper goes through.
const mostStops = 400

func (b *builder) inputs() []Input {
	out := []Input{}
	for _, in := range b.Plan.Piece.Inputs {
		out = append(out, b.input(in))
	}
	return out
}

func (b *builder) input(in piece.Input) Input {
	out := Input{
		Name: in.Name, Label: in.Label, Help: in.Help, Kind: OtherInput, Shown: b.value(in.Value), Value: b.written(in),
		Stops: []Stop{}, Choices: []Stop{}, Origin: b.known("origin.", string(in.Origin)),
	}
	switch in.Value.Dim() {
	case unit.DimLength:
		out.Kind, out.Unit = LengthInput, string(b.system())
	case unit.DimCount:
		out.Kind = CountInput
	case unit.DimTruth:
		out.Kind = YesInput
	case unit.DimText:
		if len(in.Choices) > 0 {
			out.Kind = ChoiceInput
		}
	}
	for _, c := range in.Choices {
		out.Choices = append(out.Choices, Stop{c.Text(), b.known("choice.", c.Text())})
	}
	if !in.From.IsZero() && !in.To.IsZero() {
		out.Limits = b.say.Label("screen.limits", message.Text("from", b.value(in.From)), message.Text("to", b.value(in.To)))
		b.stops(&out, in)
	}
	return out
}

// system is what the document counts in.
func (b *builder) system() unit.System {
	if b.Plan.Piece.Units == string(unit.Inches) {
		return unit.Inches
	}
	return unit.Metric
}

// written returns the value as the document writes it, if it is written plainly,
// else as it is shown.
func (b *builder) written(in piece.Input) string {
	at := in.Place
	if at.Start < at.End && at.End <= len(b.Document) {
		text := string(b.Document[at.Start:at.End])
		if q, ok := strings.CutPrefix(text, `"`); ok && strings.HasSuffix(q, `"`) && len(q) > 0 {
			text = strings.TrimSuffix(q, `"`)
		}
		if v, err := unit.ParseValue(text, b.system().Unit()); in.Value.Dim() == unit.DimLength && err == nil && v.Equal(in.Value) {
			return text
		}
	}
	return b.plain(in.Value)
}

// plain writes a value as a document would, without a unit where the document's
// own is meant.
func (b *builder) plain(v unit.Value) string {
	switch v.Dim() {
	case unit.DimLength:
		l, _ := v.Length()
		one := b.system().Unit()
		n := big.NewRat(int64(l), int64(one))
		if b.system() == unit.Inches && !n.IsInt() {
			return unit.Show{System: unit.Inches, Denominator: 64}.FormatUnit(l)
		}
		return strings.TrimSuffix(strings.TrimRight(n.FloatString(6), "0"), ".")
	case unit.DimText:
		return v.Text()
	}
	if n, ok := v.Int(); ok {
		return big.NewInt(n).String()
	}
	return b.value(v)
}

// value says a value in the reader's words and units.
func (b *builder) value(v unit.Value) string {
	switch v.Dim() {
	case unit.DimLength:
		l, _ := v.Length()
		return b.say.Length(l)
	case unit.DimText:
		return b.known("choice.", v.Text())
	case unit.DimTruth:
		if v.Truth() {
			return b.say.Label("screen.yes")
		}
		return b.say.Label("screen.no")
	}
	if n := v.Number(); n != nil {
		f, _ := n.Float64()
		return b.say.Number(f, 3)
	}
	return ""
}

// stops lists the values from the least to the greatest, and the place of the
// present one among them.
func (b *builder) stops(out *Input, in piece.Input) {
	from, to, now := in.From.Number(), in.To.Number(), in.Value.Number()
	if from == nil || to == nil || now == nil || from.Cmp(to) >= 0 {
		return
	}
	step := b.step(in)
	whole := new(big.Rat).Sub(to, from)
	for n := new(big.Rat).Quo(whole, step); n.Cmp(big.NewRat(mostStops, 1)) > 0; n.Quo(whole, step) {
		step.Mul(step, big.NewRat(5, 1))
	}
	last := from
	for at := new(big.Rat).Set(from); at.Cmp(to) < 0; at = new(big.Rat).Add(at, step) {
		b.stop(out, in, at)
		last = at
	}
	b.stop(out, in, to)
	// The last step may be a short one.
	out.At, _ = new(big.Rat).Quo(new(big.Rat).Sub(now, from), step).Float64()
	if now.Cmp(last) > 0 {
		f, _ := new(big.Rat).Quo(new(big.Rat).Sub(now, last), new(big.Rat).Sub(to, last)).Float64()
		out.At = float64(len(out.Stops)-2) + f
	}
}

func (b *builder) stop(out *Input, in piece.Input, at *big.Rat) {
	v := unit.Of(in.Value.Dim(), at)
	out.Stops = append(out.Stops, Stop{b.plain(v), b.value(v)})
}

// step returns what a stepper moves by: what the document says, else one of a
// count, and of a length a millimetre or a sixteenth, five of them in a wide
// range.
func (b *builder) step(in piece.Input) *big.Rat {
	if n := in.Step.Number(); n != nil && n.Sign() > 0 {
		return n
	}
	if in.Value.Dim() != unit.DimLength {
		return big.NewRat(1, 1)
	}
	one := int64(unit.Millimetre)
	if b.system() == unit.Inches {
		one = int64(unit.Inch) / 16
	}
	wide := new(big.Rat).Sub(in.To.Number(), in.From.Number())
	if wide.Cmp(big.NewRat(60*one, 1)) > 0 {
		one *= 5
	}
	return big.NewRat(one, 1)
}
