package hidden

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
)

// writeSVG draws for a person to look at, where SCANTLING_LOOK names a folder.
func writeSVG(t *testing.T, name string, d Drawing) {
	dir := os.Getenv("SCANTLING_LOOK")
	if dir == "" {
		return
	}
	var b strings.Builder
	lo, hi := polygon.P2{X: 1e9, Y: 1e9}, polygon.P2{X: -1e9, Y: -1e9}
	for _, s := range d.Strokes {
		var path []string
		for _, p := range s.Points(32) {
			lo = polygon.P2{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
			hi = polygon.P2{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
			path = append(path, fmt.Sprintf("%.3f,%.3f", p.X, -p.Y))
		}
		style := `stroke="black" stroke-width="0.5"`
		if s.Hidden {
			style = `stroke="gray" stroke-width="0.25" stroke-dasharray="2,1"`
		}
		if s.Outline {
			style = strings.Replace(style, "black", "blue", 1)
		}
		fmt.Fprintf(&b, "<polyline fill=\"none\" %s points=\"%s\"/>\n", style, strings.Join(path, " "))
	}
	head := fmt.Sprintf("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"1400\" viewBox=\"%.1f %.1f %.1f %.1f\"><rect x=\"-9999\" y=\"-9999\" width=\"19999\" height=\"19999\" fill=\"white\"/>\n",
		lo.X-5, -hi.Y-5, hi.X-lo.X+10, hi.Y-lo.Y+10)
	if err := os.WriteFile(dir+"/"+name+".svg", []byte(head+b.String()+"</svg>\n"), 0o644); err != nil {
		t.Fatal(err)
	}
}

// cradle is the board of 36 channels, with a trough and holes.
func cradle() *solid.Solid {
	cuts := []solid.Primitive{}
	for k := range 36 {
		f := vec.Frame{Origin: at(0, 15+float64(k)*10, 18), U: at(0, -1, 0), V: at(0, 0, 1), W: at(1, 0, 0)}
		f.U = f.V.Cross(f.W)
		sides, caps := solid.Whole(solid.Tag(10 + k))
		cuts = append(cuts, solid.Prism{Frame: f, Profile: polygon.RoundBottom(9.5, 4.75, 4.75), From: 0, To: 300, Sides: sides, Caps: caps})
	}
	f := vec.Frame{Origin: at(150, 0, 18), U: at(1, 0, 0), V: at(0, 0, 1), W: at(0, -1, 0)}
	sides, caps := solid.Whole(5)
	cuts = append(cuts, solid.Prism{Frame: f, Profile: polygon.RoundBottom(25.4, 8, 12.7), From: -380, To: 0, Sides: sides, Caps: caps})
	return solid.Build([]solid.Primitive{solid.Block(vec.World, vec.V3{}, at(300, 380, 18), 1)}, cuts, solid.Options{})
}

func TestLook(t *testing.T) {
	c := cradle()
	if st, why := c.Status(); st != solid.Verified {
		t.Fatal(why)
	}
	iso := View{Sight: at(-1, 1, -1), Up: at(0, 0, 1)}
	writeSVG(t, "cradle-iso", Draw([]solid.Placed{{Solid: c, Frame: vec.World}}, iso))
	top := View{Sight: at(0, 0, -1), Up: at(0, 1, 0), Hidden: true}
	d := Draw([]solid.Placed{{Solid: c, Frame: vec.World}}, top)
	writeSVG(t, "cradle-top", d)
	t.Log(len(d.Strokes))
	f := vec.World
	f.Origin = at(20, 10, 20)
	two := []solid.Placed{{Solid: plate(hole(50, 30, 20), hole(20, 20, 4)), Frame: vec.World}, {Solid: plate(hole(50, 30, 10)), Frame: f}}
	iso.Hidden = true
	writeSVG(t, "two", Draw(two, iso))
}
