package evaluate

import (
	"cmp"
	"slices"

	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/recipe"
	"scantling/internal/unit"
)

// Piece evaluates a set of documents. It always returns a result with a piece,
// a shop and a ledger in it, as much of them as could be worked out, and reports
// everything that is wrong.
func Piece(src Sources) Result {
	if src.Limits == (Limits{}) {
		src.Limits = DefaultLimits
	}
	planned := evaluated(src, nil)
	if len(src.Record) == 0 {
		return planned
	}
	r := evaluated(src, planned.Piece)
	r.Planned = planned.Piece
	return r
}

// evaluated works everything out, with the record held against the piece as it
// is planned without it.
func evaluated(src Sources, planned *piece.Piece) Result {
	w := &world{
		src: src, limits: src.Limits, ledger: ledger.New(Functions()), out: &piece.Piece{File: src.Document.Name},
		told: map[toldKey]bool{}, files: map[string]*document.File{}, fits: map[fitKey]*cell[formula.Value]{}, taken: map[address.Address]diag.Place{},
	}
	file := w.read(src.Document)
	units := unitsOf(file)
	w.openRecipes()
	w.openShop(units)
	w.openRecord(planned)
	if file.Kind == document.Piece {
		w.collect(file, units)
	} else if file.Head != nil {
		w.fault(CodeWrongDocument, file.Head.Where, message.Word("got", "document."+string(file.Kind)), message.Word("want", "document.piece"))
	}
	w.work.Formulas, w.work.Entries = w.steps, len(w.ledger.Entries())
	return Result{Piece: w.out, Planned: w.out, Shop: w.shop, Ledger: w.ledger, Diagnostics: w.diags.Sorted(), Document: file, Work: w.work,
		Unplaced: w.record.unplaced, Placed: w.record.count}
}

// read reads a document once and keeps what is wrong with it.
func (w *world) read(src document.Source) *document.File {
	f, faults := document.Read(src, document.Limits{})
	for _, d := range faults {
		w.report(d)
	}
	w.files[src.Name] = f
	return f
}

// openRecipes indexes the recipes by name: the given ones, then the built-in.
func (w *world) openRecipes() {
	w.recipes = map[string]*document.File{}
	for _, src := range w.src.Recipes {
		f := w.read(src)
		if f.Kind != document.Recipe {
			if f.Head != nil {
				w.fault(CodeWrongDocument, f.Head.Where, message.Word("got", "document."+string(f.Kind)), message.Word("want", "document.recipe"))
			}
			continue
		}
		if name := f.Head.Label(); w.recipes[name] == nil {
			w.recipes[name] = f
		}
	}
}

// recipe returns a recipe by name, one of the document's own before a built-in one.
func (w *world) recipe(name string) *document.File {
	if f, ok := w.recipes[name]; ok {
		return f
	}
	return builtinRecipes()[name]
}

func (w *world) unknownRecipe(file *document.File, b *document.Block) {
	var names []string
	for _, r := range recipe.All() {
		names = append(names, r.Name)
	}
	for name, f := range w.recipes {
		if f != nil {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	names = slices.Compact(names)
	var remedies []diag.Remedy
	if near := document.Nearest(b.Label(), names); near != "" && len(b.LabelAt) > 0 {
		remedies = append(remedies, file.Replace(b.LabelAt[0], quoted(near)))
	}
	w.faultWith(CodeUnknownRecipe, b.Where, remedies, message.Text("name", clip(b.Label())), message.Text("known", joinWords(names)))
}

// choices reads the choices file: the names of inputs with their values.
func (w *world) choices() map[string]string {
	if w.chosen != nil {
		return w.chosen
	}
	w.chosen = map[string]string{}
	if len(w.src.Choices.Text) == 0 {
		return w.chosen
	}
	f := w.read(w.src.Choices)
	if f.Kind != document.Choices {
		if f.Head != nil {
			w.fault(CodeWrongDocument, f.Head.Where, message.Word("got", "document."+string(f.Kind)), message.Word("want", "document.choices"))
		}
		return w.chosen
	}
	for _, a := range f.Head.Attributes {
		w.chosen[a.Name] = f.Written(a.Value.Place())
	}
	return w.chosen
}

// collect works everything out and writes it into the piece, in the order of the
// document.
func (w *world) collect(file *document.File, units unit.System) {
	s := w.newScope(file, w.maker(units))
	s.frame = &frame{place: env{s: s}}
	w.root = s
	s.declare(file.Blocks)
	s.open()
	w.out.Name, w.out.Units = file.Head.Label(), string(units)
	w.out.About = s.words(file.Head, "about")
	w.out.Purpose = s.words(file.Head, "purpose")
	s.collectInputs()
	w.out.Edition = w.edition(s, file, units)
	for _, b := range file.Of("sizes") {
		for _, a := range b.Attributes {
			v := s.sizes[a.Name].get()
			if v.Kind == formula.Quantity || v.Kind == formula.Truth || v.Kind == formula.Text {
				w.out.Sizes = append(w.out.Sizes, piece.Named{Name: a.Name, Value: v.Is, Entry: v.Entry})
			}
		}
	}
	s.collectMaterials()
	s.collectParts()
	s.collectJoints()
	s.collectCuts()
	s.collectContents()
	s.collectRest()
	w.waits()
	w.readInPlace()
}

// edition is what the plan is printed in: as said, or the document's units.
func (w *world) edition(s *scope, file *document.File, units unit.System) string {
	word := cmp.Or(s.words(file.Head, "edition"), string(units))
	if word != "mm" && word != "in" && word != "both" {
		s.reader(file.Head).BadWord("edition", word, []string{"mm", "in", "both"})
		return string(units)
	}
	return word
}

// collectParts writes groups, parts and spaces, this scope's and then those
// within.
func (s *scope) collectParts() {
	for _, d := range s.order {
		switch d.block.Type {
		case "part", "space", "group", "use":
		default:
			continue
		}
		for _, n := range d.members() {
			if d.name != "" {
				s.w.unique(n.address(), d)
			}
			switch n := n.(type) {
			case *part:
				n.collect()
			case *space:
				n.collect()
			case *scope:
				n.collectGroup()
				if n.host != nil {
					n.collectMaterials()
				}
				n.collectParts()
			}
		}
	}
}

// unique sees to it that an address is given once.
func (w *world) unique(addr address.Address, d *decl) {
	if was, ok := w.taken[addr]; ok {
		w.report(diag.Diagnostic{Severity: diag.Error, Code: CodeNameTaken, Where: d.block.Where, Address: addr,
			Text:    textOf(CodeNameTaken, message.Text("name", string(addr)), message.Word("first", "block.part"), message.Word("second", "block."+d.block.Type)),
			Related: []diag.Related{{Text: message.New("related.first-here"), Where: was}}})
		return
	}
	w.taken[addr] = d.block.Where
}

// collectGroup writes a group into the piece; a recipe used without a name is no
// group of its own.
func (s *scope) collectGroup() {
	if s.decl.name == "" {
		return
	}
	w := s.w
	out := piece.Group{Address: s.addr, Name: s.decl.name, Parent: s.outer().group, Where: s.decl.block.Where}
	e := env{s: s.outer(), nth: s.nth}
	out.Label = e.words(s.decl.block, "label")
	if s.nth > 0 {
		out.Nth, out.Of = s.nth, s.of
	}
	for axis := range 3 {
		f, ok := w.originOf(s.frame, piece.Axis(axis))
		if !ok {
			return
		}
		out.Origin[axis] = f
	}
	if s.host == nil {
		if inside := w.addresses(e, s.decl.block, "inside"); len(inside) == 1 {
			out.Inside = inside[0]
		} else if s.decl.block.Has("inside") && len(inside) > 1 {
			e.several(e.selections(s.decl.block, "inside", "space")[0], s.decl.block.Attribute("inside").Value.Place(), len(inside))
		}
	}
	w.out.Groups = append(w.out.Groups, out)
}

// each walks this scope and those within, in order.
func (s *scope) each(visit func(*scope)) {
	visit(s)
	for _, d := range s.order {
		if d.block.Type != "group" && d.block.Type != "use" {
			continue
		}
		for _, n := range d.members() {
			n.(*scope).each(visit)
		}
	}
}

func (s *scope) collectJoints() {
	s.each(func(s *scope) {
		for _, d := range s.order {
			if d.family != nil {
				d.family.collect()
			}
		}
	})
}

func (s *scope) collectCuts() {
	s.each(func(s *scope) {
		for _, d := range s.order {
			switch d.block.Type {
			case "cut":
				d.collectCut()
			case "series":
				d.collectSeries()
			}
		}
	})
}

func (s *scope) collectRest() {
	s.each(func(s *scope) {
		for _, d := range s.order {
			switch d.block.Type {
			case "fit":
				d.collectFit()
			case "measure":
				d.collectMeasure()
			case "hardware":
				d.collectHardware()
			case "finish":
				d.collectFinish()
			case "together":
				d.collectTogether()
			case "step":
				d.collectStep()
			case "require":
				d.collectRequire()
			case "output":
				env{s: s}.value(d.block, "value", "")
			}
		}
	})
}
