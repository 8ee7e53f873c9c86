// Package pictures draws the joints and cuts of the manual: each document in
// docs/joints is planned, and its parts are drawn apart, together and seen through.
package pictures

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"scantling"
	"scantling/internal/address"
	"scantling/internal/geom/vec"
	"scantling/internal/output/drawing"
	"scantling/internal/page"
	"scantling/internal/plan"
	"scantling/internal/unit"
	"scantling/internal/words"
	"scantling/internal/world"
	"scantling/internal/write/svg"
)

// entry is one document with what its first comment lines say: a line "title: ...",
// "gives: ..." (who gives way), "by rule: ..." (proportions and where they come
// from), lines "pull: ADDRESS WAY MM" and one "from: WAYS", the way to the eye.
type entry struct {
	name, title, text, gives, rule string
	pulls                          []pull
	from                           vec.V3
	cut                            bool
	order                          int
	source                         string
}

type pull struct {
	part string
	by   vec.V3
}

// ways are the piece's directions.
var ways = map[string]vec.V3{
	"right": {X: 1}, "left": {X: -1}, "back": {Y: 1}, "front": {Y: -1}, "up": {Z: 1}, "down": {Z: -1},
}

// Make returns the manual and its pictures by file name. root is the repository.
func Make(ctx context.Context, root string) (map[string][]byte, error) {
	names, err := filepath.Glob(filepath.Join(root, "docs", "joints", "*.piece.hcl"))
	if err != nil {
		return nil, err
	}
	slices.Sort(names)
	files := map[string][]byte{}
	var entries []entry
	var faults []error
	for _, path := range names {
		data, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		e, err := read(strings.TrimSuffix(filepath.Base(path), ".piece.hcl"), string(data))
		if err != nil {
			return nil, err
		}
		picture, err := e.draw(ctx, data)
		if err != nil {
			faults = append(faults, fmt.Errorf("%s: %w", e.name, err))
		}
		files["docs/joints/"+e.name+".svg"] = picture
		entries = append(entries, e)
	}
	slices.SortStableFunc(entries, func(a, b entry) int { return a.order - b.order })
	files["docs/JOINTS.md"] = manual(entries)
	return files, errors.Join(faults...)
}

func read(name, text string) (entry, error) {
	e := entry{name: name, from: vec.V3{X: 1, Y: -1, Z: 0.8}}
	var code []string
	heading := true
	for line := range strings.Lines(text) {
		said, isComment := strings.CutPrefix(strings.TrimSpace(line), "# ")
		if !heading || !isComment {
			heading = false
			code = append(code, line)
			continue
		}
		key, value, _ := strings.Cut(said, ": ")
		switch key {
		case "title":
			e.title = value
		case "order":
			e.order, _ = strconv.Atoi(value)
		case "cut":
			e.cut = true
			e.title = value
		case "gives":
			e.gives = value
		case "by rule":
			e.rule = value
		case "pull":
			f := strings.Fields(value)
			if len(f) != 3 || ways[f[1]] == (vec.V3{}) {
				return e, fmt.Errorf("%s: pull %q", name, value)
			}
			mm, err := strconv.ParseFloat(f[2], 64)
			if err != nil {
				return e, fmt.Errorf("%s: %w", name, err)
			}
			e.pulls = append(e.pulls, pull{f[0], ways[f[1]].Mul(mm)})
		case "from":
			e.from = vec.V3{}
			for i, f := range strings.Fields(value) {
				weight := []float64{1, 0.75, 0.6}[min(i, 2)]
				e.from = e.from.Add(ways[f].Mul(weight))
			}
		default:
			e.text += said + " "
		}
	}
	if e.title == "" {
		return e, fmt.Errorf("%s: no title", name)
	}
	e.source = strings.TrimLeft(strings.Join(code, ""), "\n")
	return e, nil
}

// draw plans the document and lays its views side by side.
func (e entry) draw(ctx context.Context, data []byte) ([]byte, error) {
	w, err := world.NewMemory(map[string][]byte{"joint.piece.hcl": data}, world.Date{}, 0)
	if err != nil {
		return nil, err
	}
	r, err := scantling.Plan(ctx, w, "joint.piece.hcl", scantling.Options{})
	if err != nil {
		return nil, err
	}
	for _, d := range r.Plan.Diagnostics {
		if d.Severity == "error" {
			return nil, fmt.Errorf("%s: %s", d.Code, r.Words().Say(d.Text))
		}
	}
	for _, f := range r.Plan.Findings {
		if f.Check == "collision" && f.Status != plan.Pass {
			return nil, fmt.Errorf("collision: %s", r.Words().Say(f.Text))
		}
	}
	say := words.New(words.English, words.British, unit.Show{System: unit.Metric, Resolution: unit.Millimetre / 10}, words.Currency("EUR"))
	apart := map[address.Address]vec.V3{}
	for _, p := range e.pulls {
		found := false
		for _, part := range r.Plan.Piece.Parts {
			if a := address.Address(p.part); a.Has(part.Address) || a == part.Address {
				apart[part.Address], found = apart[part.Address].Add(p.by), true
			}
		}
		if !found {
			return nil, fmt.Errorf("no part %s to pull", p.part)
		}
	}
	views := []drawing.Pulled{{By: apart, Toward: e.from}}
	if !e.cut {
		views = append(views, drawing.Pulled{Toward: e.from}, drawing.Pulled{Toward: e.from, Through: true})
	}
	solids := r.Solids()
	const room, gap, most = 180.0, 10.0, 62.0
	wide, high := 0.0, 0.0
	for i := range views {
		views[i].Factor = 1
		box := drawing.Joint(r.Plan, solids, views[i], say).Area()
		wide, high = wide+box.Width(), max(high, box.Height())
	}
	factor := min((room-gap*float64(len(views)-1))/wide, most/high)
	out := page.Drawing{Name: e.title, Alt: e.title}
	x := 0.0
	for _, v := range views {
		v.Factor = factor
		one := drawing.Joint(r.Plan, solids, v, say)
		area := one.Area()
		for _, item := range one.Placed(1, page.Point{X: x - area.Min.X, Y: high*factor - area.Max.Y}).Items {
			out.Items = append(out.Items, item)
		}
		x += area.Width() + gap
	}
	return svg.Drawing(out, svg.Options{}), nil
}

// manual writes docs/JOINTS.md.
func manual(entries []entry) []byte {
	var b bytes.Buffer
	b.WriteString(`# Joints and cuts
Every joint and cut, drawn from the document under it by ` + "`make docs`" + `. From left to right: pulled apart, together, and seen through. The
double arrow lies along the grain. Figures that a document does not say are the trade's, and where they come from is said; whatever is said in the document
goes before them. How the words are written is in [LANGUAGE.md](LANGUAGE.md).

A joint shares out the wood where both bodies lie: what one keeps, what the other keeps, and what neither keeps (clearance). So no wood is counted twice, and it
does not matter in which order joints are written. Where three parts want the same wood, ` + "`over`" + ` says which joint stays whole.

`)
	for _, section := range []struct {
		title string
		cut   bool
	}{{"Joints", false}, {"Cuts", true}} {
		fmt.Fprintf(&b, "## %s\n\n", section.title)
		for _, e := range entries {
			if e.cut != section.cut {
				continue
			}
			fmt.Fprintf(&b, "### %s\n%s\n\n![%s](joints/%s.svg)\n\n", e.title, strings.TrimSpace(e.text), e.title, e.name)
			if e.gives != "" {
				fmt.Fprintf(&b, "**Gives way:** %s\n\n", e.gives)
			}
			if e.rule != "" {
				fmt.Fprintf(&b, "**By rule:** %s\n\n", e.rule)
			}
			fmt.Fprintf(&b, "<details><summary>Document</summary>\n\n```hcl\n%s```\n\n</details>\n\n", e.source)
		}
	}
	return b.Bytes()
}
