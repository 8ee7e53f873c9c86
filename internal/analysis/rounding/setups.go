package rounding

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// Setups returns the cards with what each setting does: one that brings a part to size
// does what the size does, one that sets the far wall or the depth of a cut what the
// cut does. A card that is set once for several does what the most exacting of them
// does. Fences and stops say where cuts lie, and go to the nearest.
//
// A title that names the setting is rounded with it.
func Setups(p *plan.Plan) []plan.Setup {
	s := settings{plan: p, rows: map[string]plan.PartRow{}, cuts: map[address.Address]piece.Cut{}}
	for _, r := range p.Parts {
		s.rows[r.Mark] = r
	}
	for _, c := range p.Piece.Cuts {
		s.cuts[c.Address] = c
	}
	out := slices.Clone(p.Setups)
	for i := range out {
		s.card(&out[i])
	}
	return out
}

type settings struct {
	plan *plan.Plan
	rows map[string]plan.PartRow
	cuts map[address.Address]piece.Cut
}

func (s settings) card(c *plan.Setup) {
	c.Settings, c.Placements = slices.Clone(c.Settings), slices.Clone(c.Placements)
	for i := range c.Settings {
		set := &c.Settings[i]
		for _, pm := range c.Placements {
			set.Goes = stronger(set.Goes, s.goes(*set, pm))
		}
		c.Title = s.titled(c.Title, *set)
	}
	for n := range c.Placements {
		pm := &c.Placements[n]
		pm.Settings = slices.Clone(pm.Settings)
		for i := range pm.Settings {
			pm.Settings[i].Goes = s.goes(pm.Settings[i], *pm)
		}
	}
}

func stronger(a, b plan.Goes) plan.Goes {
	if rank(b) > rank(a) {
		return b
	}
	return a
}

// ofSize are the settings that bring a part to size, and which size it is.
var ofSize = map[string]int{"stop to blade": 0, "length": 0, "blade to fence": 1, "thickness": 2}

// goes is what a setting does for one placement.
func (s settings) goes(set plan.Setting, pm plan.Placement) plan.Goes {
	if n, ok := ofSize[set.Word]; ok && len(pm.Cuts) == 0 {
		if r, known := s.rows[pm.Mark]; known && r.Sizes()[n].Nm == set.Figure.Nm {
			return r.Goes[n].What
		}
		return plan.Matches // a blank, to which something is left
	}
	out := plan.Matches
	for _, a := range pm.Cuts {
		c := s.cuts[a]
		switch set.Word {
		case "height", "plunge depth", "depth":
			out = stronger(out, plan.DepthOf(c))
		case "fence to cutter edge", "guide to cutter edge", "fence to cutter far edge", "blade to fence", "stop to cutter edge":
			if len(set.Passes) > 1 { // the last path makes the far wall
				out = stronger(out, plan.WidthOf(c))
			}
		}
	}
	return out
}

// titled rounds the setting in a title as on the card, where fractions are shown.
func (s settings) titled(m message.Message, set plan.Setting) message.Message {
	if s.plan.Units() != unit.Inches || set.Goes == plan.Matches {
		return m
	}
	m.Args = slices.Clone(m.Args)
	for i, a := range m.Args {
		if (a.Name == "height" || a.Name == "size") && a.Nm == set.Figure.Nm {
			m.Args[i] = message.LengthRounded(a.Name, a.Nm, set.Goes.Rounding())
		}
	}
	return m
}
