package equip

import (
	"cmp"
	"slices"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/figure"
	"scantling/internal/formula"
	"scantling/internal/message"
	"scantling/internal/shop"
	"scantling/internal/stock"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// maxCount bounds how many of one thing a shop may have.
const maxCount = 10_000

// Usual returns an empty shop with the habits that a document need not state.
func Usual() *shop.Shop {
	return &shop.Shop{Units: unit.Metric, Region: "en-GB", Currency: "EUR", Resolution: unit.Millimetre / 10, Denominator: 32}
}

// Shop works a shop document out. What is wrong goes to the maker's Report and
// is left out of the shop.
func Shop(file *document.File, m *formula.Maker) *shop.Shop {
	r := &reader{file: file, maker: m, shop: Usual()}
	if file.Head != nil {
		r.head(file.Head)
	}
	for _, b := range file.Blocks {
		if b.Label() != "" && b.Type == "timber" {
			r.timber(b) // boards may be of it
		}
	}
	for _, b := range file.Blocks {
		if b.Label() != "" {
			r.block(b)
		}
	}
	return r.shop
}

// reader works a shop document out.
type reader struct {
	file  *document.File
	maker *formula.Maker
	shop  *shop.Shop
}

// of reads one block.
func (r *reader) of(b *document.Block) formula.Reader {
	return formula.Reader{Maker: r.maker, Scope: nameless{r}, File: r.file, Block: b}
}

func (r *reader) head(b *document.Block) {
	s := r.shop
	s.Name, s.Where = b.Label(), b.Where
	if r.of(b).Choice("units", string(unit.Metric), string(unit.Inches)) == string(unit.Inches) {
		s.Units = unit.Inches
	}
	s.Region = cmp.Or(r.of(b).Choice("region", "en-GB", "en-US"), s.Region)
	s.Currency = cmp.Or(r.words(b, "currency"), s.Currency)
	if l := r.length(b, "resolution"); l > 0 {
		s.Resolution = l
	}
	if n, ok := r.count(b, "denominator", 1, 64); ok {
		if n&(n-1) != 0 {
			r.of(b).Fault(CodeDenominator, b.Attribute("denominator").Value.Place(), message.Count("got", n))
		} else {
			s.Denominator = n
		}
	}
	s.TrimEnds, s.TrimEdges = r.length(b, "trim_ends"), r.length(b, "trim_edges")
	r.climate(b)
	r.grits(b)
}

// climate works out the air at the bench and where the work will live, and the
// moisture that wood takes up there.
func (r *reader) climate(b *document.Block) {
	c := &r.shop.Climate
	t := timber.Temperature(20)
	if v, ok := r.number(b, "temperature"); ok {
		t = timber.Temperature(v)
	}
	air := func(attribute string, usual float64) timber.Air {
		if v, ok := r.number(b, attribute); ok {
			usual = v
		}
		return timber.Air{Temperature: t, Humidity: timber.Humidity(usual)}
	}
	c.Now, c.Dry, c.Wet = air("humidity_now", 50), air("humidity_dry", 35), air("humidity_wet", 65)
	season, err := timber.SeasonOf(c.Now, c.Dry, c.Wet)
	if err != nil {
		r.refused(err, b.Where)
		season, _ = timber.SeasonOf(timber.Air{Temperature: 20, Humidity: 50}, timber.Air{Temperature: 20, Humidity: 35}, timber.Air{Temperature: 20, Humidity: 65})
	}
	c.Season = season
}

func (r *reader) block(b *document.Block) {
	s := r.shop
	switch b.Type {
	case "board":
		if x, ok := r.board(b); ok {
			s.Boards = append(s.Boards, x)
		}
	case "sheet":
		if x, ok := r.sheet(b); ok {
			s.Sheets = append(s.Sheets, x)
		}
	case "machine":
		if x, ok := r.machine(b); ok {
			s.Machines = append(s.Machines, x)
		}
	case "cutter":
		if x, ok := r.cutter(b); ok {
			s.Cutters = append(s.Cutters, x)
		}
	case "fitting":
		if x, ok := r.fitting(b); ok {
			s.Fittings = append(s.Fittings, x)
		}
	case "glue":
		if x, ok := r.glue(b); ok {
			s.Glues = append(s.Glues, x)
		}
	case "finish":
		if x, ok := r.finish(b); ok {
			s.Finishes = append(s.Finishes, x)
		}
	case "rule":
		r.rule(b)
	}
}

func (r *reader) board(b *document.Block) (shop.Board, bool) {
	out := shop.Board{ID: b.Label(), Where: b.Where}
	out.Have, _ = r.count(b, "count", 0, maxCount)
	out.Stock = stock.Board{
		Name: b.Label(), Wood: r.words(b, "species"), Nominal: r.words(b, "nominal"),
		Length: r.length(b, "length"), Width: r.length(b, "width"), Thickness: r.length(b, "thickness"),
		Surface: stock.Sawn, Quantity: out.Have, Price: r.price(b),
	}
	switch r.of(b).Choice("state", "rough", "planed", "finished") {
	case "planed":
		out.Stock.Surface = stock.Planed
	case "finished":
		out.Stock.Surface = stock.Finished
	}
	switch r.of(b).Choice("sawn", "flat", "quarter") {
	case "flat":
		out.Sawn = timber.FlatSawn
	case "quarter":
		out.Sawn = timber.QuarterSawn
	}
	for _, must := range []string{"species", "length", "width", "thickness"} {
		if !b.Has(must) {
			r.of(b).Missing(must)
			return out, false
		}
	}
	if m, ok := r.number(b, "moisture"); ok {
		if !r.refused(figure.NumberRange("timber.moisture", "quantity.moisture", m, 1, 200), r.of(b).Where("moisture")) {
			return out, false
		}
		out.Moisture = timber.Moisture(m)
	}
	species, err := r.shop.Wood(out.Stock.Wood)
	if err != nil {
		wood(r.of(b), nil, err, "species", "")
		return out, false
	}
	out.Species = species.Name
	for _, d := range b.Blocks {
		out.Stock.Defects = append(out.Stock.Defects, r.defect(d, out.Stock))
	}
	return out, r.refused(out.Stock.Check(), b.Where)
}

// defect reads where no part may lie, from the marked end and the marked edge of
// the board; what is not said reaches over its whole length or width, and a kind that
// is not said is a flaw.
func (r *reader) defect(b *document.Block, of stock.Board) stock.Defect {
	out := stock.Defect{Kind: stock.Flaw, To: of.Length, Far: of.Width}
	if word := r.words(b, "kind"); b.Has("kind") {
		if kinds := stock.DefectKinds(); slices.Contains(kinds, stock.DefectKind(word)) {
			out.Kind = stock.DefectKind(word)
		} else {
			r.unknownKind(b, word, kindNames(kinds))
		}
	}
	out.From, out.Near = r.length(b, "from"), r.length(b, "near")
	if b.Has("to") {
		out.To = r.length(b, "to")
	}
	if b.Has("far") {
		out.Far = r.length(b, "far")
	}
	return out
}

func (r *reader) sheet(b *document.Block) (shop.Sheet, bool) {
	out := shop.Sheet{ID: b.Label(), Where: b.Where}
	out.Have, _ = r.count(b, "count", 0, maxCount)
	out.Stock = stock.Sheet{
		Name: b.Label(), Material: r.words(b, "kind"), Nominal: r.length(b, "nominal"), Measured: r.length(b, "thickness"),
		Length: r.length(b, "length"), Width: r.length(b, "width"), Trim: r.shop.TrimEdges,
		Grain: stock.Grain(cmp.Or(r.of(b).Choice("grain", string(stock.AlongLength), string(stock.AlongWidth), string(stock.NoGrain)), string(stock.AlongLength))), Quantity: out.Have, Price: r.price(b),
	}
	for _, must := range []string{"kind", "nominal", "length", "width"} {
		if !b.Has(must) {
			r.of(b).Missing(must)
			return out, false
		}
	}
	return out, r.refused(out.Stock.Check(), b.Where)
}

func (r *reader) rule(b *document.Block) {
	out := shop.Rule{Name: b.Label(), Why: r.words(b, "why"), Where: b.Where}
	g := b.Given()
	if g == nil {
		r.of(b).Missing("length")
		return
	}
	out.At = g.Value.Place()
	v := r.of(b).Value(g.Name, "")
	switch g.Name {
	case "length":
		v, _ = r.maker.Length(v, "")
	case "number":
		v, _ = r.maker.Number(v, unit.DimRatio, "")
	case "yes":
		v, _ = r.maker.Truth(v)
	}
	if v.OK() {
		out.Value = v.Is
		r.shop.Rules = append(r.shop.Rules, out)
	}
}

// yes reads an attribute that is true or false; one that is not there is false.
func (r *reader) yes(b *document.Block, attribute string) bool {
	if !b.Has(attribute) {
		return false
	}
	v, _ := r.maker.Truth(r.of(b).Value(attribute, ""))
	return v.Is.Truth()
}

func (r *reader) words(b *document.Block, attribute string) string {
	return r.of(b).Words(attribute)
}

// length works a size out; it must not be below nought.
func (r *reader) length(b *document.Block, attribute string) unit.Length {
	v, ok := r.of(b).Length(attribute, "")
	if !ok {
		return 0
	}
	l, _ := v.Is.Length()
	if l < 0 {
		r.of(b).Fault(formula.CodeNotPositive, b.Attribute(attribute).Value.Place(), message.Text("name", attribute), message.Length("got", l))
		return 0
	}
	return l
}

func (r *reader) count(b *document.Block, attribute string, least, most int) (int, bool) {
	if !b.Has(attribute) {
		return 0, false
	}
	n, _, ok := r.maker.Count(r.of(b).Value(attribute, ""), least, most, "")
	return n, ok
}

func (r *reader) number(b *document.Block, attribute string) (float64, bool) {
	if !b.Has(attribute) {
		return 0, false
	}
	v, ok := r.maker.Number(r.of(b).Value(attribute, ""), unit.DimRatio, "")
	return v.Is.Float(), ok
}

// price works out what one costs.
func (r *reader) price(b *document.Block) stock.Price {
	if !b.Has("price") {
		return stock.Price{}
	}
	v, ok := r.maker.Number(r.of(b).Value("price", ""), unit.DimMoney, "")
	n, whole := v.Is.Int()
	if !ok || !whole || n < 0 {
		if ok {
			r.of(b).Fault(CodePrice, b.Attribute("price").Value.Place())
		}
		return stock.Price{}
	}
	return stock.Price{Amount: stock.Money(n), Per: stock.PerPiece}
}

// refused turns a refusal of a catalogue into a diagnostic; it answers whether
// there was none.
func (r *reader) refused(err error, where diag.Place) bool {
	if err == nil {
		return true
	}
	r.maker.Refused(err, where)
	return false
}

func (r *reader) unknownKind(b *document.Block, word string, known []string) {
	if !b.Has("kind") {
		r.of(b).Missing("kind")
		return
	}
	r.of(b).NotKnown(CodeUnknownKind, "kind", word, known)
}

func kindNames[T ~string](all []T) []string {
	out := make([]string, len(all))
	for i, k := range all {
		out[i] = string(k)
	}
	return out
}
