package stow

import (
	"slices"
	"strings"

	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// The kinds of contents.
const (
	Rod    = "rod"
	Jar    = "jar"
	Bottle = "bottle"
	Box    = "box"
	Sheet  = "sheet"
	Coin   = "coin"
)

// Kinds returns the kinds, rods first.
func Kinds() []string { return []string{Rod, Jar, Bottle, Box, Sheet, Coin} }

const (
	anyKind = "label kind each length play spare lining finger mass sharp in through "
	inCells = "like count among growth columns rows stack divider divider_high around above lid "
)

// takes lists the attributes of each kind.
var takes = map[string][]string{
	Rod:    strings.Fields(anyKind + "rod sides across head"),
	Jar:    strings.Fields(anyKind + inCells + "diameter tall shoulder cap"),
	Bottle: strings.Fields(anyKind + inCells + "diameter tall shoulder cap"),
	Box:    strings.Fields(anyKind + inCells + "size"),
	Sheet:  strings.Fields(anyKind + inCells + "size thick flip runs"),
	Coin:   strings.Fields(anyKind + inCells + "diameter thick"),
}

// onlyRods are words of the common list that mean something for rods alone.
var onlyRods = []string{"each", "length"}

// Lot is what a contents block says.
type Lot struct {
	piece.Lot
	// Count, Among, Spare and Wanted are as in piece.Contents.
	Count, Among, Spare  int
	Wanted               int
	Play, Lining, Finger piece.Figure
	Mass                 piece.Amount
	// From and Status tell where sizes that are not stated were found.
	From, Status string
	// Values are what formulas may take.
	Values map[string]formula.Value
}

// KindOf returns the kind of a contents block, rods where it says none, and
// reports a kind that there is not or a word that the kind does not take.
func KindOf(r formula.Reader) (string, bool) {
	kind := Rod
	if like, ok := usualOf(r); ok {
		kind = like.Kind
	} else if r.Has("like") {
		return "", false
	}
	if r.Has("kind") {
		kind = r.Words("kind")
	}
	words, ok := takes[kind]
	if !ok {
		if kind != "" {
			r.BadWord("kind", kind, Kinds())
		}
		return "", false
	}
	for _, a := range r.Block.Attributes {
		if !slices.Contains(words, a.Name) || kind != Rod && slices.Contains(onlyRods, a.Name) {
			if r.Block.Unsure {
				return "", false
			}
			r.Fault(CodeNotOfKind, a.Where, message.Word("kind", "contents."+kind), message.Text("name", a.Name))
			return "", false
		}
	}
	return kind, true
}

// usualOf finds the usual thing that the block likens its own to.
func usualOf(r formula.Reader) (Usual, bool) {
	if !r.Has("like") {
		return Usual{}, false
	}
	word := r.Words("like")
	u, ok := FindUsual(word)
	if !ok && word != "" {
		r.NotKnown(CodeUnknownUsual, "like", word, UsualNames())
	}
	return u, ok
}

// reading is a lot while it is worked out.
type reading struct {
	formula.Reader
	kind, name string
	usual      Usual
	lot        Lot
	// counts hold the entries of the counts that sums multiply by.
	counts map[string]ledger.ID
	failed bool
	flip   piece.Figure
	runs   int
	// spare and growth are the entries of what more is wished for.
	spare, growth ledger.ID
}

// Read works a lot out; name is what it is called in the ledger
// ("contents.jars"). False where something is wrong, which has been reported.
func Read(r formula.Reader, kind, name string) (Lot, bool) {
	x := &reading{Reader: r, kind: kind, name: name, counts: map[string]ledger.ID{}}
	x.usual, _ = usualOf(r)
	x.lot.Values = map[string]formula.Value{}
	x.sizes()
	x.rooms()
	x.mass()
	x.lid()
	if x.failed || !x.cells() {
		return Lot{}, false
	}
	x.sums()
	x.values()
	return x.lot, !x.failed
}

func (x *reading) ledger() *ledger.Ledger { return x.Maker.Ledger }

// fail reports an error; the lot is not worked out then.
func (x *reading) fail(code diag.Code, attribute string, args ...message.Arg) {
	x.failed = true
	x.Fault(code, x.Where(attribute), args...)
}

// need reads a size that must be there and above nought; a usual thing's stands in.
func (x *reading) need(attribute string) piece.Figure {
	if usual := x.usual.size(attribute); usual > 0 && !x.Has(attribute) {
		return x.fromTable(attribute, usual)
	}
	v, ok := x.Above(attribute, x.name+"."+attribute)
	return x.bounded(attribute, v, ok)
}

// fromTable enters a usual size.
func (x *reading) fromTable(attribute string, l unit.Length) piece.Figure {
	s := x.usual.Source
	x.lot.From, x.lot.Status = x.usual.Name, string(s.Status)
	return x.ledger().Figure(x.ledger().Given(ledger.Entry{
		Name: x.name + "." + attribute, Value: unit.OfLength(l), Origin: ledger.Reference, Source: s.Key + ": " + s.String(), Status: string(s.Status), Where: x.Where("like"),
	}))
}

// room reads a size of nought or more; nought where it is not said.
func (x *reading) room(attribute string) piece.Figure {
	if !x.Has(attribute) {
		return x.ledger().Leaf(x.name+"."+attribute, 0, ledger.Default, "")
	}
	v, ok := x.Length(attribute, x.name+"."+attribute)
	return x.bounded(attribute, v, ok)
}

// most bounds the sizes of things.
const most = 10 * unit.Metre

func (x *reading) bounded(attribute string, v formula.Value, ok bool) piece.Figure {
	l, _ := v.Is.Length()
	if !ok {
		x.failed = true
		return piece.Figure{}
	}
	word := "quantity.size"
	switch attribute {
	case "play", "lining":
		word = "quantity." + attribute
	}
	if err := figure.LengthRange("contents."+attribute, word, l, 0, most); err != nil {
		x.failed = true
		x.Maker.Refused(err, x.Where(attribute))
		return piece.Figure{}
	}
	return x.ledger().Figure(v.Entry)
}

// sizes reads what one thing measures.
func (x *reading) sizes() {
	l, lot := x.ledger(), &x.lot
	switch x.kind {
	case Jar, Bottle:
		lot.Diameter, lot.Size[2] = x.need("diameter"), x.need("tall")
		across := lot.Diameter
		if x.Has("cap") {
			lot.Cap = x.room("cap")
		}
		if x.Has("shoulder") {
			lot.Shoulder = x.room("shoulder")
		}
		if x.failed {
			return
		}
		if lot.Cap.Nm > 0 {
			across = l.Greatest(x.name+".across", lot.Diameter, lot.Cap)
		}
		lot.Size[0], lot.Size[1] = across, across
		if lot.Shoulder.Nm > lot.Size[2].Nm {
			x.fail(CodeTaller, "shoulder", message.Length("shoulder", lot.Shoulder.Nm), message.Length("tall", lot.Size[2].Nm))
		}
	case Coin:
		lot.Diameter, lot.Thick = x.need("diameter"), x.need("thick")
		lot.Size = [3]piece.Figure{lot.Diameter, lot.Diameter, lot.Thick}
	case Box:
		lot.Size = [3]piece.Figure(x.list(3, "wide", "deep", "tall"))
	case Sheet:
		size := x.list(2, "wide", "tall")
		lot.Thick = x.need("thick")
		lot.Size = [3]piece.Figure{lot.Thick, size[0], size[1]}
		if x.Has("runs") {
			word := x.Words("runs")
			if x.runs = slices.Index([]string{"right", "back"}, word); x.runs < 0 {
				x.failed, x.runs = true, 0
				x.BadWord("runs", word, []string{"right", "back"})
			}
		}
		if x.runs == 1 {
			lot.Size[0], lot.Size[1] = lot.Size[1], lot.Size[0]
		}
		x.flip = x.flipped()
	}
}

// list reads the list of a thing's sizes.
func (x *reading) list(n int, names ...string) []piece.Figure {
	out := make([]piece.Figure, n)
	if !x.Has("size") && x.usual.size(names[0]) > 0 {
		for i, name := range names {
			out[i] = x.fromTable(name, x.usual.size(name))
		}
		return out
	}
	if !x.Has("size") {
		x.failed = true
		x.Missing("size")
		return out
	}
	v := x.Value("size", "")
	if !v.OK() {
		x.failed = true
		return out
	}
	if v.Kind != formula.List || len(v.Items) != n {
		x.fail(CodeSizes, "size", message.Word("kind", "contents."+x.kind), message.Count("want", n), message.Count("got", max(1, len(v.Items))))
		return out
	}
	for i, item := range v.Items {
		l, ok := x.Maker.Length(item, x.name+"."+names[i])
		if ok && !x.Positive(l, "size", x.name+"."+names[i]) {
			ok = false
		}
		out[i] = x.bounded("size", l, ok)
	}
	return out
}

// flipped is the room that a sheet's share of flipping through takes.
func (x *reading) flipped() piece.Figure {
	if !x.Has("flip") {
		return piece.Figure{}
	}
	v, ok := x.ratio("flip")
	if !ok || x.failed {
		return piece.Figure{}
	}
	id, err := x.ledger().Make(x.name+".flip", ledger.OpMul, "", x.lot.Thick.Entry, v.Entry)
	if err != nil {
		x.failed = true
		return piece.Figure{}
	}
	return x.ledger().Figure(id)
}

// rooms reads what is left beside, over and around.
func (x *reading) rooms() {
	lot := &x.lot
	lot.Play, lot.Lining, lot.Finger = x.room("play"), x.room("lining"), x.room("finger")
	lot.Divider, lot.Around, lot.Above = x.room("divider"), x.room("around"), x.room("above")
	if x.Has("divider_high") {
		lot.DividerHigh = x.room("divider_high")
	}
}
