package equip

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/figure"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/shop"
	"scantling/internal/stock"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// Answer is what the rack has for a material.
type Answer struct {
	// Asks is the author's wording.
	Asks string
	// Sheet tells sheet goods from boards; Species is the catalogue's name of the
	// wood, or the sheet's kind.
	Sheet   bool
	Species string
	// Stock is the shop's name of what answers, empty if nothing does.
	Stock string
	// Nominal is the sheet's trade name.
	Nominal string
	// Sawn is how the boards are sawn: "flat", "quarter" or "".
	Sawn string
	// Thickness is what the stock itself measures where it is used as it is; Entry
	// says where that was found. Zero where the material says what it is dressed to.
	Thickness unit.Length
	Entry     ledger.Entry
	// Found says that the rack answers.
	Found bool
}

// Find looks for what a material block asks for (attribute "asks"; "stock" names
// one where several answer). Need is what boards are dressed to; 0 takes a planed
// board as thick as it is bought.
func Find(r formula.Reader, s *shop.Shop, need unit.Length) Answer {
	if !r.Has("asks") {
		r.Missing("asks")
		return Answer{}
	}
	asks := r.Words("asks")
	if asks == "" {
		return Answer{}
	}
	if kind, nominal, err := stock.ParseSheetName(asks); err == nil && !endsInBoard(asks) {
		return sheet(r, s, asks, kind, nominal)
	}
	return board(r, s, asks, need)
}

func endsInBoard(asks string) bool {
	words := strings.Fields(strings.ToLower(asks))
	return len(words) > 0 && slices.Contains([]string{"board", "boards", "timber", "lumber"}, words[len(words)-1])
}

// sheet finds a sheet by its kind and nominal thickness.
func sheet(r formula.Reader, s *shop.Shop, asks, kind string, nominal unit.Length) Answer {
	chosen := r.Words("stock")
	var near []string
	for _, x := range s.Sheets {
		if !strings.EqualFold(x.Stock.Material, kind) {
			continue
		}
		near = append(near, x.ID)
		if x.Stock.Nominal != nominal || chosen != "" && chosen != x.ID {
			continue
		}
		t := x.Stock.Thickness()
		e := ledger.Entry{Value: unit.OfLength(t.Value), Origin: ledger.Bought, Where: x.Where}
		if t.Source.Status != figure.Stated {
			e.Origin, e.Source, e.Status = ledger.Reference, t.Source.Key, string(t.Source.Status)
		}
		return Answer{Asks: asks, Sheet: true, Species: x.Stock.Material, Stock: x.ID, Found: true,
			Nominal: s.Show(s.Units).FormatUnit(nominal), Thickness: t.Value, Entry: e}
	}
	if len(near) == 0 {
		for _, x := range s.Sheets {
			near = append(near, x.ID)
		}
	}
	notInRack(r, asks, near)
	return Answer{Asks: asks, Sheet: true, Species: kind}
}

// board finds boards of the wood and, of those that are thick enough, the
// thinnest; what is there goes before what must be bought.
func board(r formula.Reader, s *shop.Shop, asks string, need unit.Length) Answer {
	out := Answer{Asks: asks}
	species, ok := speciesOf(r, s, asks)
	if !ok {
		return out
	}
	out.Species = species
	chosen := r.Words("stock")
	var of []shop.Board
	for _, b := range s.Boards {
		if b.Species == species && (chosen == "" || chosen == b.ID) {
			of = append(of, b)
		}
	}
	if len(of) == 0 {
		notInRack(r, asks, boardNames(s.Boards))
		return out
	}
	if need <= 0 {
		return asBought(out, of)
	}
	best, thickest := -1, unit.Length(0)
	for i, b := range of {
		clean, err := cleaning(s).CleansUp(b.Stock.Thickness, b.Stock.Surface)
		if err != nil {
			continue
		}
		thickest = max(thickest, clean.Value)
		if clean.Value >= need && (best < 0 || better(b, of[best])) {
			best = i
		}
	}
	if best < 0 {
		r.Fault(CodeTooThinInRack, r.Where("thickness"), message.Text("name", r.Block.Label()), message.Text("asks", asks),
			message.LengthRounded("needs", need, unit.Up), message.LengthRounded("most", thickest, unit.Down))
		return out
	}
	out.Stock, out.Sawn, out.Found = of[best].ID, sawnWord(of[best].Sawn), true
	return out
}

func better(a, b shop.Board) bool {
	if (a.Have > 0) != (b.Have > 0) {
		return a.Have > 0
	}
	return a.Stock.Thickness < b.Stock.Thickness
}

func cleaning(s *shop.Shop) stock.Cleaning {
	if s.Units == unit.Inches {
		return stock.InchCleaning()
	}
	return stock.MetricCleaning()
}

func sawnWord(s timber.Sawn) string {
	switch s {
	case timber.FlatSawn:
		return "flat"
	case timber.QuarterSawn:
		return "quarter"
	}
	return ""
}

// asBought takes a board as thick as it is bought: a finished one, else a planed one.
func asBought(out Answer, of []shop.Board) Answer {
	out.Found = true
	for _, surface := range []stock.Surface{stock.Finished, stock.Planed} {
		for _, b := range of {
			if b.Stock.Surface == surface {
				out.Stock, out.Sawn, out.Thickness = b.ID, sawnWord(b.Sawn), b.Stock.Thickness
				out.Entry = ledger.Entry{Value: unit.OfLength(b.Stock.Thickness), Origin: ledger.Bought, Where: b.Where}
				return out
			}
		}
	}
	out.Stock, out.Sawn = of[0].ID, sawnWord(of[0].Sawn)
	return out
}

// speciesOf finds the wood. Where a name means several, the rack decides; where
// it holds several of them too, the author is asked.
func speciesOf(r formula.Reader, s *shop.Shop, asks string) (string, bool) {
	found, err := s.Wood(asks)
	if err == nil {
		return found.Name, true
	}
	var many *timber.AmbiguousError
	if errors.As(err, &many) {
		var here []string
		for _, b := range s.Boards {
			if slices.Contains(many.Candidates, b.Species) && !slices.Contains(here, b.Species) {
				here = append(here, b.Species)
			}
		}
		switch len(here) {
		case 1:
			return here[0], true
		case 0:
			notInRack(r, asks, boardNames(s.Boards))
			return "", false
		}
		many.Candidates = here
	}
	wood(r, s, err, "asks", " board")
	return "", false
}

// wood reports a name that means no wood, or several, with what it may mean; what
// the rack holds comes first.
func wood(r formula.Reader, s *shop.Shop, err error, attribute, tail string) {
	where := r.Where(attribute)
	plain := false
	if t, ok := r.Block.Attribute(attribute).Value.(*document.Text); ok {
		_, plain = t.Plain()
	}
	code, names, args := CodeUnknownWood, []string(nil), []message.Arg(nil)
	var many *timber.AmbiguousError
	var none *timber.UnknownError
	switch {
	case errors.As(err, &many):
		code, names, args = CodeWhichWood, many.Candidates, []message.Arg{message.Text("name", many.Name)}
	case errors.As(err, &none):
		names, args = inRackFirst(s, none.Near), []message.Arg{message.Text("name", clip(none.Name))}
	}
	list := make([]message.Arg, len(names))
	var remedies []diag.Remedy
	for i, n := range names {
		list[i] = message.Text("", n)
		if plain {
			remedies = append(remedies, r.File.Replace(where, strconv.Quote(n+tail)))
		}
	}
	r.FaultWith(code, where, remedies, append(args, message.List("near", list...))...)
}

// inRackFirst puts the woods that the rack holds before the others.
func inRackFirst(s *shop.Shop, names []string) []string {
	here := func(name string) int {
		if s != nil && slices.ContainsFunc(s.Boards, func(b shop.Board) bool { return b.Species == name }) {
			return 0
		}
		return 1
	}
	out := slices.Clone(names)
	slices.SortStableFunc(out, func(a, b string) int { return here(a) - here(b) })
	return out
}

func boardNames(all []shop.Board) []string {
	var out []string
	for _, b := range all {
		out = append(out, b.ID)
	}
	return out
}

// notInRack reports a material that nothing in the rack answers, with what is
// there.
func notInRack(r formula.Reader, asks string, have []string) {
	list := make([]message.Arg, len(have))
	for i, h := range have {
		list[i] = message.Text("", h)
	}
	r.Fault(CodeNotInRack, r.Where("asks"), message.Text("asks", clip(asks)), message.List("rack", list...))
}

func clip(s string) string {
	if len(s) > 80 {
		return strings.ToValidUTF8(s[:80], "")
	}
	return s
}
