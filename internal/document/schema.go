package document

import (
	"maps"
	"slices"
	"strings"
)

// shape says what may stand in a block.
type shape struct {
	labels     int      // how many labels it takes
	attributes []string // the names of its attributes
	free       bool     // it takes attributes of any name (sizes, use, choices)
	blocks     map[string]shape
}

func words(s string) []string { return strings.Fields(s) }

const (
	places = " left right front back bottom top wide deep high "
	fixing = " pins nails screws dowels tenon loose glue "
)

var made = map[string]shape{
	"part":  {labels: 1, attributes: words("label of repeat grain mirror show form diameter profile outline holes leans after if" + places)},
	"space": {labels: 1, attributes: words("label repeat if" + places)},
	"joint": {labels: 1, attributes: words("label kind of into meets depth stopped clear over slides finger fingers first tongue spline keys tails lap slide if" + fixing)},
	"cut": {labels: 1, attributes: words("label kind on side runs near far centre width from to middle length holds play depth cutter ends corner " +
		"edge edges chord radius leg chamfer at diameter countersink counterbore through end sides keeps by leaves angle angles outline line symmetrical base high kerf clean saw after if")},
	"series": {labels: 1, attributes: words("label kind on side runs row near far centre holds slots count pitch pitches land place margin starts at diameter width angle radius " +
		"from to middle length flat play depth cutter ends corner countersink counterbore through after if")},
	"use":      {labels: 1, free: true},
	"hardware": {labels: 1, attributes: words("label kind count on with side runs toward margin centre note if")},
}

var common = map[string]shape{
	"material": {labels: 1, attributes: words("label asks thickness stock sawn")},
	"sizes":    {free: true},
	"finish":   {labels: 1, attributes: words("label kind coats on when")},
	"step":     {labels: 1, attributes: words("text after before caution")},
	"together": {labels: 1, attributes: words("of row")},
	"require":  {labels: 1, attributes: words("that message warn")},
}

var asked = shape{labels: 1, attributes: words("label help count length angle number choice text yes material things head from to step choices")}

// schema holds the shape of every kind of document: of its head block under its
// own word, beside the other outermost blocks.
var schema = map[Kind]map[string]shape{
	Piece: merge(made, common, map[string]shape{
		"piece": {labels: 1, attributes: words("about purpose units edition shop")},
		"input": asked,
		"contents": {labels: 1, attributes: words("label kind like rod sides across each length head diameter tall shoulder cap size thick count among growth spare " +
			"play lining finger flip columns rows stack divider divider_high around above runs mass sharp in through lid")},
		"group":   group(3),
		"fit":     {labels: 1, attributes: words("moves inside sides above behind")},
		"measure": {labels: 1, attributes: words("label of take after before stage")},
	}),
	Recipe: merge(made, common, map[string]shape{
		"recipe": {labels: 1, attributes: words("about units")},
		"input":  asked,
		"group":  group(3),
		"output": {labels: 1, attributes: words("label value")},
	}),
	Shop: {
		"shop": {labels: 1, attributes: words("units region currency resolution denominator temperature " +
			"humidity_now humidity_dry humidity_wet trim_ends trim_edges abrasives")},
		"board": {labels: 1, attributes: words("label species state nominal length width thickness count price sawn moisture"), blocks: map[string]shape{
			"defect": {attributes: words("kind from to near far")},
		}},
		"sheet":   {labels: 1, attributes: words("label kind nominal thickness length width count price grain")},
		"machine": {labels: 1, attributes: words("label kind kerf least_length least_rip least_width least_thickness most_length most_width most_thickness most_height most_fence shank throat accuracy least_speed most_speed base plunges")},
		"cutter":  {labels: 1, attributes: words("label kind diameter radius cutting_length shank teeth rpm_most lowers")},
		"fitting": {labels: 1, attributes: words("label price count kind length width thickness diameter projection depth plate_length plate_width plate screws screw screw_length")},
		"timber":  {labels: 1, attributes: words("label like botanical kind radial tangential shrink_radial shrink_tangential saturation gravity stiffness bending shear hardness")},
		"glue":    {labels: 1, attributes: words("label like open closed clamp cure coldest water")},
		"finish":  {labels: 1, attributes: words("label like recoat light cure coverage coats coldest oil film rags")},
		"rule":    {labels: 1, attributes: words("length number yes choice why")},
	},
	Choices: {
		"choices": {free: true},
	},
}

// group is the shape of a group with up to depth groups within each other.
func group(depth int) shape {
	s := shape{labels: 1, attributes: words("label repeat inside left front bottom if"), blocks: merge(made)}
	if depth > 1 {
		s.blocks["group"] = group(depth - 1)
	}
	return s
}

func merge(tables ...map[string]shape) map[string]shape {
	out := map[string]shape{}
	for _, t := range tables {
		maps.Copy(out, t)
	}
	return out
}

// Words returns the block types of a kind of document, sorted.
func Words(kind Kind) []string { return slices.Sorted(maps.Keys(schema[kind])) }

// WordsOf returns the attribute names of a block type of a kind of document, in
// the order in which they are usually written; nil where any name will do.
func WordsOf(kind Kind, block string) []string { return slices.Clone(schema[kind][block].attributes) }
