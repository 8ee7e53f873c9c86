package stow

import (
	"strings"

	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// ratio reads a ratio: a number, or a text with a percent sign.
func (x *reading) ratio(attribute string) (formula.Value, bool) {
	return x.quantity(attribute, unit.DimRatio)
}

// quantity reads a quantity other than a length, as a number or as a text with
// its unit; it is not below nought.
func (x *reading) quantity(attribute string, dim unit.Dim) (formula.Value, bool) {
	v := x.Value(attribute, x.name+"."+attribute)
	if !v.OK() {
		x.failed = true
		return v, false
	}
	if v.Kind == formula.Text {
		is, err := unit.ParseValue(v.Is.Text(), 0)
		if err != nil || is.Dim() != dim {
			x.fail(CodeQuantity, attribute, message.Text("text", clip(v.Is.Text())), message.Word("want", "kind."+string(dim)))
			return formula.Value{}, false
		}
		v = formula.Value{Kind: formula.Quantity, Is: is, Where: v.Where}
		v.Entry = x.ledger().Given(ledger.Entry{Name: x.name + "." + attribute, Value: is, Origin: ledger.Document, Where: v.Where})
	} else {
		var ok bool
		if v, ok = x.Maker.Number(v, dim, x.name+"."+attribute); !ok {
			x.failed = true
			return v, false
		}
	}
	if v.Is.Sign() < 0 {
		x.fail(CodeQuantity, attribute, message.Text("text", v.Is.Number().RatString()), message.Word("want", "kind."+string(dim)))
		return formula.Value{}, false
	}
	return v, true
}

// mass reads the mass of one thing.
func (x *reading) mass() {
	if x.Has("mass") {
		if v, ok := x.quantity("mass", unit.DimMass); ok {
			x.lot.Mass = piece.Amount{Value: v.Is, Entry: v.Entry}
		}
		return
	}
	if m := x.usual.Mass; !m.IsZero() {
		s := x.usual.Source
		x.lot.From, x.lot.Status = x.usual.Name, string(s.Status)
		x.lot.Mass = piece.Amount{Value: m, Entry: x.ledger().Given(ledger.Entry{Name: x.name + ".mass", Value: m, Origin: ledger.Reference, Source: s.Key + ": " + s.String(), Status: string(s.Status), Where: x.Where("like")})}
	}
}

// Mass reads the mass of one rod, as for a lot.
func Mass(r formula.Reader, name string) (piece.Amount, bool) {
	x := &reading{Reader: r, name: name}
	x.mass()
	return x.lot.Mass, !x.failed
}

// lid reads { arm, rim, back } of a hinged lid.
func (x *reading) lid() {
	if !x.Has("lid") {
		return
	}
	v := x.Value("lid", "")
	if !v.OK() {
		x.failed = true
		return
	}
	if v.Kind != formula.Object {
		x.fail(formula.CodeWrongKind, "lid", message.Word("got", v.Word()), message.Word("want", "kind.object"))
		return
	}
	lid := &piece.Lid{}
	to := map[string]*piece.Figure{"arm": &lid.Arm, "rim": &lid.Rim, "back": &lid.Back}
	for _, f := range v.Fields {
		if to[f.Name] == nil {
			x.failed = true
			x.Fault(formula.CodeUnknownField, f.Value.Where, message.Text("word", clip(f.Name)), message.Text("block", "lid"), message.Text("known", "arm, rim, back"))
			return
		}
		l, ok := x.Maker.Length(f.Value, x.name+".lid."+f.Name)
		*to[f.Name] = x.bounded("lid", l, ok)
	}
	for _, name := range []string{"arm", "rim", "back"} {
		if to[name].Entry == 0 && !x.failed {
			x.fail(formula.CodeMissing, "lid", message.Text("name", name), message.Text("block", "lid"))
			return
		}
	}
	x.lot.Lid = lid
}

func clip(s string) string {
	if len(s) > 80 {
		return strings.ToValidUTF8(s[:80], "")
	}
	return s
}
