package trial

import (
	"fmt"

	"scantling/internal/address"
	"scantling/internal/piece"
)

// Drawer is a drawer 200 wide, 380 long and 60 high: a front 14 thick, rebated
// over sides of 10 by lap, a back of 10 let into the sides, and a ply bottom of
// 3.8 in grooves all round with clearances of 0.2 across and 0.5 deep.
func Drawer(lap, back, groove int64) *Builder {
	b := New()
	b.Part("front", Front, 0, 2000, 0, 140, 0, 600)
	b.drawerInside("", 0, 0, 0, lap, back, groove)
	return b
}

// drawerInside adds all of a drawer but its front, at an offset right, back, up.
func (b *Builder) drawerInside(group string, x, y, z, lap, back, groove int64) {
	g := func(name string) string { return group + name }
	at := func(v ...int64) []int64 {
		for i := range v {
			v[i] += [3]int64{x, y, z}[i/2]
		}
		return v
	}
	b.Part(g("left"), SideLow, at(0, 100, 140-lap, 3800, 0, 600)...)
	b.Part(g("right"), SideHigh, at(1900, 2000, 140-lap, 3800, 0, 600)...)
	b.Part(g("back"), Front, at(100-back, 1900+back, 3700, 3800, 0, 600)...)
	b.Part(g("bottom"), GrainBack, at(100-groove, 1900+groove, 140-groove, 3700+groove, 80, 118)...)
	var over []address.Address
	for _, s := range []string{"left", "right"} {
		b.Joint(g("joint.front."+s), piece.RebateJoint, g(s), g("front"), lap, nil)
		b.Joint(g("joint.back."+s), piece.RebateJoint, g("back"), g(s), back, nil)
		over = append(over, address.Address(g("joint.front."+s)), address.Address(g("joint.back."+s)))
	}
	for _, s := range []string{"front", "left", "right", "back"} {
		b.Joint(g("joint.bottom."+s), piece.GrooveJoint, g("bottom"), g(s), groove, func(j *piece.Joint) {
			j.ClearAcross, j.ClearDeep, j.Over, j.Glue = b.Fig("across", 2), b.Fig("deep", 5), over, ""
		})
	}
}

// Carcase is a case 300 wide, 200 deep and 400 high of boards 14 thick, its top
// and bottom rebated into the sides by corner, with one divider from 200 to 214
// in stopped housings and a back of 6 let in by back.
func Carcase(corner, back, housing int64) *Builder {
	b := New()
	b.carcase("", 3000, 2000, 4000, corner, back, housing, 2000)
	return b
}

// carcase adds a case with dividers at the given heights.
func (b *Builder) carcase(group string, w, d, h, corner, back, housing int64, dividers ...int64) {
	g := func(name string) string { return group + name }
	b.Part(g("left"), LeftSide, 0, 140, 0, d, 0, h)
	b.Part(g("right"), RightSide, w-140, w, 0, d, 0, h)
	b.Part(g("top"), GrainRight, 140-corner, w-140+corner, 0, d, h-140, h)
	b.Part(g("bottom"), GrainRight, 140-corner, w-140+corner, 0, d, 0, 140)
	var names []string
	for i, z := range dividers {
		n := "divider"
		if len(dividers) > 1 {
			n = fmt.Sprintf("divider[%d]", i+1)
		}
		names = append(names, n)
		b.Part(g(n), GrainRight, 140-housing, w-140+housing, 0, d-60, z, z+140)
	}
	b.Part(g("panel"), BackPanel, 140-back, w-140+back, d-60, d, 140-back, h-140+back)
	var corners []address.Address
	for _, s := range []string{"left", "right"} {
		for _, a := range []string{"top", "bottom"} {
			b.Joint(g("joint.corner."+a+"."+s), piece.RebateJoint, g(a), g(s), corner, nil)
			corners = append(corners, address.Address(g("joint.corner."+a+"."+s)))
		}
		for _, n := range names {
			b.Joint(g("joint."+n+"."+s), piece.HousingJoint, g(n), g(s), housing, func(j *piece.Joint) { j.StopLow = b.Fig("stop", 80) })
		}
	}
	for _, s := range []string{"left", "right", "top", "bottom"} {
		b.Joint(g("joint.panel."+s), piece.RebateJoint, g("panel"), g(s), back, func(j *piece.Joint) { j.Over = corners })
	}
}

// Chest is a case with two drawers, each with a tray of eight channels, a trough
// for heads and a finger hollow, all in place.
func Chest() *Builder {
	b := New()
	// Inside 200.8 wide; openings 61.5 high; 380 deep, 8 clear behind.
	const w, d, opening = 2008 + 280, 3800 + 80 + 60, 615
	b.Group("case", "")
	b.carcase("case.", w, d, 3*140+2*opening, 70, 70, 47, 140+opening)
	for k := range int64(2) {
		z := 140 + k*(opening+140)
		b.Space(fmt.Sprintf("case.opening[%d]", k+1), 140, w-140, 0, d-60, z, z+opening)
		group := fmt.Sprintf("drawer[%d]", k+1)
		b.Group(group, fmt.Sprintf("case.opening[%d]", k+1))
		b.drawer(group+".", 144, 0, z)
	}
	return b
}

// drawer adds a drawer with its tray at an offset.
func (b *Builder) drawer(group string, x, y, z int64) {
	b.Part(group+"front", Front, x, x+2000, y, y+140, z, z+600)
	b.drawerInside(group, x, y, z, 80, 50, 40)
	b.Piece.Cuts = append(b.Piece.Cuts, piece.Cut{
		Address: address.Address(group + "front.scoop"), Part: address.Address(group + "front"), Kind: piece.Scoop,
		Dip: &piece.Dip{Open: piece.EdgeHigh, Centre: b.Fig("scoop", 1000), Chord: b.Fig("scoop", 640), Depth: b.Fig("scoop", 160)},
	}, piece.Cut{
		Address: address.Address(group + "front.eased"), Part: address.Address(group + "front"), Kind: piece.Eased,
		Ease: &piece.Ease{Sides: [2]piece.Side{piece.EdgeHigh, piece.FaceHigh}, Radius: b.Fig("eased", 10)},
	})
	tray := group + "tray"
	// 176 wide and 353 long between sides of 10, front 14 and back at 370.
	b.Part(tray, Tray, x+120, x+1880, y+145, y+3675, z+118, z+268)
	b.Slot(tray, "heads", piece.Trough, piece.FaceHigh, piece.AlongWidth, 0, 1760, 0, 130, 65, 0)
	b.Slot(tray, "hollow", piece.Trough, piece.FaceHigh, piece.AlongWidth, 0, 1760, 1600, 2000, 70, 63)
	series := piece.Series{Address: address.Address(tray + ".channel"), Part: address.Address(tray), Kind: piece.Channel, Across: piece.AlongWidth}
	for i := range int64(8) {
		// Six to their radius of 3.2, and two of a radius that they do not reach.
		wide, depth, corner := int64(64), int64(32), int64(32)
		if i > 5 {
			wide, depth, corner = 128, 30, 64
		}
		mid := 180 + i*200
		c := b.Slot(tray, fmt.Sprintf("channel[%d]", i+1), piece.Channel, piece.FaceHigh, piece.AlongLength,
			0, 3530, mid-wide/2, mid+wide/2, depth, corner)
		c.Series, c.Nth = series.Address, int(i)+1
	}
	b.Piece.Series = append(b.Piece.Series, series)
}

// Rack is a rack of uprights 18 thick and bays of shelves in stopped housings,
// with a space over each shelf but the topmost: (cols + 1) uprights and cols × rows
// shelves. It measures how things grow.
func Rack(cols, rows int64) *Builder {
	b := New()
	for c := range cols + 1 {
		b.Part(fmt.Sprintf("side[%d]", c+1), LeftSide, c*2000, c*2000+180, 0, 2000, 0, rows*1000)
	}
	for c := range cols {
		for k := range rows {
			name := fmt.Sprintf("bay[%d].shelf[%d]", c+1, k+1)
			b.Part(name, GrainRight, c*2000+120, c*2000+2060, 0, 2000, k*1000+400, k*1000+580)
			for s, side := range []int64{c + 1, c + 2} {
				b.Joint(fmt.Sprintf("bay[%d].joint.shelf[%d]", c+1, 2*k+int64(s)+1), piece.HousingJoint, name, fmt.Sprintf("side[%d]", side), 60,
					func(j *piece.Joint) { j.StopLow = b.Fig("stop", 80) })
			}
			if k+1 < rows {
				b.Space(fmt.Sprintf("bay[%d].clear[%d]", c+1, k+1), c*2000+180, c*2000+2000, 0, 2000, k*1000+580, k*1000+1400)
			}
		}
	}
	return b
}
