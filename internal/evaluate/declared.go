package evaluate

import (
	"scantling/internal/message"
	"scantling/internal/unit"
)

// Bounds of what a document may repeat and of recipes within recipes.
const (
	maxRepeat  = 10_000
	maxRecipes = 6
)

// present reports whether the block's own condition lets it be.
func (d *decl) present() bool {
	a := d.block.Attribute("if")
	if a == nil {
		return true
	}
	return get(d.s.w, &d.on, func() string { return d.name + ".if" }, a.Where, func() bool {
		v, ok := d.s.maker.Truth(d.s.maker.Eval(a.Value, env{s: d.s}, ""))
		d.failed = d.failed || !ok
		return ok && v.Is.Truth()
	})
}

// repeats returns how many there are to be: 1 unless the block repeats.
func (d *decl) repeats() int {
	if !d.present() {
		return 0
	}
	a := d.block.Attribute("repeat")
	if a == nil {
		return 1
	}
	return get(d.s.w, &d.count, func() string { return d.name + ".repeat" }, a.Where, func() int {
		n, _, ok := d.s.maker.Count(d.s.maker.Eval(a.Value, env{s: d.s}, ""), 0, maxRepeat, "")
		if !ok {
			d.failed = true
			return 0
		}
		return n
	})
}

func (d *decl) repeated() bool { return d.block.Has("repeat") }

// members returns the instances of a declared block, in order.
func (d *decl) members() []node {
	return get(d.s.w, &d.nodes, func() string { return d.block.Type + "." + d.name }, d.block.Where, d.expand)
}

func (d *decl) expand() []node {
	n := d.repeats()
	per := 1
	if d.block.Has("mirror") && d.block.Type == "part" {
		per = 2
	}
	if n == 0 || !d.s.w.take(d.block.Where, n*per) {
		return nil
	}
	var out []node
	for i := 1; i <= n; i++ {
		nth := i
		if !d.repeated() {
			nth = 0
		}
		switch d.block.Type {
		case "part":
			out = append(out, d.newParts(nth)...)
		case "space":
			out = append(out, d.newSpace(nth))
		case "group":
			out = append(out, d.newGroup(nth, n))
		case "use":
			if s := d.newUse(nth, n); s != nil {
				out = append(out, s)
			}
		default:
			out = append(out, &declared{d})
		}
	}
	return out
}

// newGroup makes one instance of a group.
func (d *decl) newGroup(nth, of int) *scope {
	w, up := d.s.w, d.s
	s := w.newScope(up.file, up.maker)
	s.up, s.decl, s.nth, s.of, s.depth = up, d, nth, of, up.depth
	s.addr = addressOf(up.addr, d.name, nth)
	s.group = s.addr
	s.frame = &frame{up: up.frame, depth: up.frame.depth + 1, place: env{s: up, nth: nth}, block: d.block, name: string(s.addr)}
	s.declare(d.block.Blocks)
	return s
}

// newUse makes one instance of a recipe in use: the recipe's outermost scope,
// with inputs that are worked out where the use stands.
func (d *decl) newUse(nth, of int) *scope {
	w, host := d.s.w, d.s
	file := w.recipe(d.block.Label())
	if file == nil {
		w.unknownRecipe(host.file, d.block)
		return nil
	}
	if d.name == "" && nth > 1 {
		return nil // told once: it needs a name
	}
	if host.depth >= maxRecipes {
		w.fault(CodeRecipeDepth, d.block.Where, message.Text("name", d.block.Label()), message.Count("most", maxRecipes))
		return nil
	}
	s := w.newScope(file, w.maker(unitsOf(file)))
	s.host, s.use, s.decl, s.nth, s.of, s.depth = host, d.block, d, nth, of, host.depth+1
	s.addr, s.group = host.addr, host.group
	if d.name != "" {
		s.addr = addressOf(host.addr, d.name, nth)
		s.group = s.addr
	}
	s.frame = &frame{up: host.frame, depth: host.frame.depth + 1, place: env{s: host, nth: nth}, block: d.block, name: string(s.addr)}
	s.declare(file.Blocks)
	s.open()
	s.checkUse(d.block, file)
	return s
}

// open sets up what stands at the outermost level of a document: sizes,
// materials, contents, inputs.
func (s *scope) open() {
	s.reader(s.file.Head).Choice("units", string(unit.Metric), string(unit.Inches))
	s.sizes, s.materials = map[string]*sizeCell{}, map[string]*material{}
	s.contents, s.inputs = map[string]*contents{}, map[string]*input{}
	for _, b := range s.file.Blocks {
		name := b.Label()
		switch b.Type {
		case "sizes":
			for _, a := range b.Attributes {
				if s.sizes[a.Name] == nil {
					s.sizes[a.Name] = &sizeCell{s: s, a: a}
				}
			}
		case "material":
			if s.materials[name] == nil {
				s.materials[name] = &material{s: s, b: b}
			}
		case "contents":
			if s.contents[name] == nil {
				s.contents[name] = &contents{s: s, b: b}
			}
		case "input":
			if s.inputs[name] == nil {
				s.inputs[name] = &input{s: s, b: b}
			}
		}
	}
}
