package evaluate

import (
	"cmp"
	"slices"
	"strings"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/shop"
	"scantling/internal/stock"
	"scantling/internal/timber"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// openShop reads the shop document, or the built-in one of the piece's units,
// and works it out.
func (w *world) openShop(units unit.System) {
	src := w.src.Shop
	if len(src.Text) == 0 {
		src.Name, src.Text = shop.Default(units)
	}
	file := w.read(src)
	w.shop = &shop.Shop{Units: unit.Metric, Region: "en-GB", Currency: "EUR", Resolution: unit.Millimetre / 10, Denominator: 32}
	if file.Kind != document.Shop {
		if file.Head != nil {
			w.fault(CodeWrongDocument, file.Head.Where, message.Word("got", "document."+string(file.Kind)), message.Word("want", "document.shop"))
		}
		name, text := shop.Default(units)
		file, _ = document.Read(document.Source{Name: name, Text: text}, document.Limits{})
	}
	r := &shopReader{w: w, e: env{s: w.newScope(file, w.maker(unitsOf(file)))}, shop: w.shop}
	r.e.s.sizes = map[string]*sizeCell{}
	r.head(file.Head)
	for _, b := range file.Blocks {
		if b.Label() != "" {
			r.block(b)
		}
	}
}

// shopReader works a shop document out.
type shopReader struct {
	w    *world
	e    env
	shop *shop.Shop
}

func (r *shopReader) head(b *document.Block) {
	s := r.shop
	s.Name, s.Where = b.Label(), b.Where
	s.Units = unitsOf(r.e.s.file)
	s.Region = cmp.Or(r.words(b, "region"), s.Region)
	s.Currency = cmp.Or(r.words(b, "currency"), s.Currency)
	if l := r.length(b, "resolution"); l > 0 {
		s.Resolution = l
	}
	if n, ok := r.count(b, "denominator", 1, 64); ok {
		if n&(n-1) != 0 {
			r.w.fault(CodeDenominator, b.Attribute("denominator").Value.Place(), message.Count("got", n))
		} else {
			s.Denominator = n
		}
	}
	s.TrimEnds, s.TrimEdges = r.length(b, "trim_ends"), r.length(b, "trim_edges")
	r.climate(b)
}

// climate works out the air at the bench and where the work will live, and the
// moisture that wood takes up there.
func (r *shopReader) climate(b *document.Block) {
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

func (r *shopReader) block(b *document.Block) {
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
		have, _ := r.count(b, "count", 0, maxRepeat)
		s.Fittings = append(s.Fittings, shop.Fitting{ID: b.Label(), Price: r.price(b), Have: have, Where: b.Where})
	case "rule":
		r.rule(b)
	}
}

func (r *shopReader) board(b *document.Block) (shop.Board, bool) {
	out := shop.Board{ID: b.Label(), Where: b.Where}
	out.Have, _ = r.count(b, "count", 0, maxRepeat)
	out.Stock = stock.Board{
		Name: b.Label(), Wood: r.words(b, "species"), Nominal: r.words(b, "nominal"),
		Length: r.length(b, "length"), Width: r.length(b, "width"), Thickness: r.length(b, "thickness"),
		Surface: stock.Sawn, Quantity: out.Have, Price: r.price(b),
	}
	if r.words(b, "state") == "planed" {
		out.Stock.Surface = stock.Planed
	}
	switch r.words(b, "sawn") {
	case "flat":
		out.Sawn = timber.FlatSawn
	case "quarter":
		out.Sawn = timber.QuarterSawn
	}
	for _, must := range []string{"species", "length", "width", "thickness"} {
		if !b.Has(must) {
			r.e.s.missing(b, must)
			return out, false
		}
	}
	species, err := timber.Default().Find(out.Stock.Wood)
	if err != nil {
		r.w.unknownWood(err, r.e.s.file, b.Attribute("species"), nil)
		return out, false
	}
	out.Species = species.Name
	return out, r.refused(out.Stock.Check(), b.Where)
}

func (r *shopReader) sheet(b *document.Block) (shop.Sheet, bool) {
	out := shop.Sheet{ID: b.Label(), Where: b.Where}
	out.Have, _ = r.count(b, "count", 0, maxRepeat)
	out.Stock = stock.Sheet{
		Name: b.Label(), Material: r.words(b, "kind"), Nominal: r.length(b, "nominal"), Measured: r.length(b, "thickness"),
		Length: r.length(b, "length"), Width: r.length(b, "width"), Trim: r.shop.TrimEdges,
		Grain: stock.Grain(cmp.Or(r.words(b, "grain"), string(stock.AlongLength))), Quantity: out.Have, Price: r.price(b),
	}
	for _, must := range []string{"kind", "nominal", "length", "width"} {
		if !b.Has(must) {
			r.e.s.missing(b, must)
			return out, false
		}
	}
	return out, r.refused(out.Stock.Check(), b.Where)
}

// machineWords are other words for the kinds of machine.
var machineWords = map[string]tool.Kind{
	"thicknesser": tool.ThicknessPlaner, "planer": tool.ThicknessPlaner, "surface planer": tool.Jointer,
	"pillar drill": tool.DrillPress, "miter saw": tool.MitreSaw, "circular saw bench": tool.TableSaw,
}

func (r *shopReader) machine(b *document.Block) (shop.Machine, bool) {
	word := r.words(b, "kind")
	kind, ok := machineWords[word]
	if !ok {
		kind = tool.Kind(word)
	}
	if !slices.Contains(tool.Kinds(), kind) {
		r.unknownKind(b, word, kindNames(tool.Kinds()))
		return shop.Machine{}, false
	}
	m := tool.Machine{Name: b.Label(), Kind: kind}
	for _, limit := range []struct {
		attribute string
		to        *figure.Of[unit.Length]
	}{
		{"least_length", &m.Least.Length}, {"least_width", &m.Least.Width}, {"least_rip", &m.Least.Width},
		{"least_thickness", &m.Least.Thickness}, {"most_length", &m.Greatest.Length}, {"most_width", &m.Greatest.Width},
		{"most_thickness", &m.Greatest.Thickness}, {"most_height", &m.Greatest.Thickness},
		{"kerf", &m.Kerf}, {"accuracy", &m.Accuracy},
	} {
		if b.Has(limit.attribute) {
			*limit.to = tool.Stated(limit.attribute, r.length(b, limit.attribute))
		}
	}
	if l := r.length(b, "shank"); l > 0 {
		m.Collets = []unit.Length{l}
	}
	if n, ok := r.count(b, "most_speed", 1, 60000); ok {
		m.GreatestSpeed = tool.Speed(n)
	}
	return shop.Machine{ID: b.Label(), Tool: m, Fence: r.length(b, "most_fence"), Throat: r.length(b, "throat"), Where: b.Where}, true
}

var cutterWords = map[string]tool.Shape{
	"round nose": tool.RoundNose, "core box": tool.RoundNose, "rounding over": tool.RoundOver, "rounding-over": tool.RoundOver, "v groove": tool.VGroove,
}

func (r *shopReader) cutter(b *document.Block) (shop.Cutter, bool) {
	word := r.words(b, "kind")
	shape, ok := cutterWords[word]
	if !ok {
		shape = tool.Shape(word)
	}
	if !slices.Contains(tool.Shapes(), shape) {
		r.unknownKind(b, word, kindNames(tool.Shapes()))
		return shop.Cutter{}, false
	}
	c := tool.Cutter{
		Name: b.Label(), Shape: shape, Diameter: r.length(b, "diameter"), CuttingLength: r.length(b, "cutting_length"),
		Shank: r.length(b, "shank"), Radius: r.length(b, "radius"),
	}
	if c.Diameter == 0 && c.Radius > 0 {
		c.Diameter = 2 * c.Radius
	}
	if n, ok := r.count(b, "rpm_most", 1, 60000); ok {
		c.Greatest = tool.Speed(n)
	}
	if n, ok := r.count(b, "teeth", 1, 200); ok {
		c.Teeth = n
	}
	lowers := false
	if b.Has("lowers") {
		v, _ := r.e.s.maker.Truth(r.e.value(b, "lowers", ""))
		lowers = v.Is.Truth()
	}
	return shop.Cutter{ID: b.Label(), Tool: c, Lowers: lowers, Where: b.Where}, r.refused(c.Check(), b.Where)
}

func (r *shopReader) rule(b *document.Block) {
	out := shop.Rule{Name: b.Label(), Why: r.words(b, "why"), Where: b.Where}
	g := b.Given()
	if g == nil {
		r.e.s.missing(b, "length")
		return
	}
	v := r.e.value(b, g.Name, "")
	switch g.Name {
	case "length":
		v, _ = r.e.s.maker.Length(v, "")
	case "number":
		v, _ = r.e.s.maker.Number(v, unit.DimRatio, "")
	case "yes":
		v, _ = r.e.s.maker.Truth(v)
	}
	if v.OK() {
		out.Value = v.Is
		r.shop.Rules = append(r.shop.Rules, out)
	}
}

func (r *shopReader) words(b *document.Block, attribute string) string {
	return r.e.words(b, attribute)
}

// length works a size out; it must not be below nought.
func (r *shopReader) length(b *document.Block, attribute string) unit.Length {
	v, ok := r.e.length(b, attribute, "")
	if !ok {
		return 0
	}
	l, _ := v.Is.Length()
	if l < 0 {
		r.w.fault(CodeNotPositive, b.Attribute(attribute).Value.Place(), message.Text("name", attribute), message.Length("got", l))
		return 0
	}
	return l
}

func (r *shopReader) count(b *document.Block, attribute string, least, most int) (int, bool) {
	if !b.Has(attribute) {
		return 0, false
	}
	n, _, ok := r.e.s.maker.Count(r.e.value(b, attribute, ""), least, most, "")
	return n, ok
}

func (r *shopReader) number(b *document.Block, attribute string) (float64, bool) {
	if !b.Has(attribute) {
		return 0, false
	}
	v, ok := r.e.s.maker.Number(r.e.value(b, attribute, ""), unit.DimRatio, "")
	return v.Is.Float(), ok
}

// price works out what one costs.
func (r *shopReader) price(b *document.Block) stock.Price {
	if !b.Has("price") {
		return stock.Price{}
	}
	v, ok := r.e.s.maker.Number(r.e.value(b, "price", ""), unit.DimMoney, "")
	n, whole := v.Is.Int()
	if !ok || !whole || n < 0 {
		if ok {
			r.w.fault(CodePrice, b.Attribute("price").Value.Place())
		}
		return stock.Price{}
	}
	return stock.Price{Amount: stock.Money(n), Per: stock.PerPiece}
}

// refused turns a refusal of a catalogue into a diagnostic; it answers whether
// there was none.
func (r *shopReader) refused(err error, where diag.Place) bool {
	if err == nil {
		return true
	}
	r.w.refused(err, where)
	return false
}

func (r *shopReader) unknownKind(b *document.Block, word string, known []string) {
	at := b.Attribute("kind")
	if at == nil {
		r.e.s.missing(b, "kind")
		return
	}
	var remedies []diag.Remedy
	if near := document.Nearest(word, known); near != "" {
		remedies = append(remedies, r.e.s.file.Replace(at.Value.Place(), quoted(near)))
	}
	r.w.faultWith(CodeUnknownKind, at.Value.Place(), remedies, message.Text("got", clip(word)), message.Text("known", strings.Join(known, ", ")))
}

func kindNames[T ~string](all []T) []string {
	out := make([]string, len(all))
	for i, k := range all {
		out[i] = string(k)
	}
	return out
}
