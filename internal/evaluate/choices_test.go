package evaluate

import (
	"slices"
	"strings"
	"testing"

	"scantling/internal/document"
	"scantling/internal/unit"
	"scantling/internal/words"
)

// wrong is a word that no attribute takes.
const wrong = "sideways"

// choiceAttributes are the attributes that take one of a few words, by block, each in
// a block that lacks nothing else; $ is the word, told is what may be told as allowed.
var choiceAttributes = []struct {
	document.Kind
	of   string // "block attribute"
	text string
	told string
}{
	{document.Shop, "shop units", "", "mm, in"},
	{document.Shop, "shop region", "", "en-GB, en-US"},
	{document.Shop, "board state", "board \"b\" {\n species = \"black cherry\"\n length = 2000\n width = 100\n thickness = 27\n count = 1\n state = $\n}", "rough, planed, finished"},
	{document.Shop, "board sawn", "board \"b\" {\n species = \"black cherry\"\n length = 2000\n width = 100\n thickness = 27\n count = 1\n sawn = $\n}", "flat, quarter"},
	{document.Shop, "defect kind", "board \"b\" {\n species = \"black cherry\"\n length = 2000\n width = 100\n thickness = 27\n count = 1\n defect {\n kind = $\n from = 100\n to = 150\n }\n}", "knot"},
	{document.Shop, "sheet grain", "sheet \"s\" {\n kind = \"MDF\"\n nominal = 12\n length = 2440\n width = 1220\n grain = $\n}", "length, width, none"},
	{document.Shop, "machine kind", "machine \"m\" {\n kind = $\n}", "table saw"},
	{document.Shop, "cutter kind", "cutter \"c\" {\n kind = $\n diameter = 6\n}", "round-nose"},
	{document.Shop, "fitting kind", "fitting \"f\" {\n kind = $\n}", "knob, pull"},
	{document.Shop, "timber kind", "timber \"t\" {\n like = \"black cherry\"\n kind = $\n}", "hardwood, softwood"},
	{document.Shop, "glue like", "glue \"g\" {\n like = $\n}", "pva"},
	{document.Shop, "glue water", "glue \"g\" {\n like = \"pva\"\n water = $\n}", "D1, D2, D3, D4"},
	{document.Shop, "finish like", "finish \"f\" {\n like = $\n}", "shellac"},
	{document.Recipe, "recipe units", "", "mm, in"},
	{document.Piece, "piece units", "", "mm, in"},
	{document.Piece, "piece edition", "", "mm, in, both"},
	{document.Piece, "part grain", "part \"p\" {\n of = material.case\n grain = $\n wide = 50\n left = 0\n deep = 50\n front = 0\n bottom = 0\n}", "right, left, back, front, up, down"},
	{document.Piece, "part show", "part \"p\" {\n of = material.case\n grain = \"right\"\n wide = 50\n left = 0\n deep = 50\n front = 0\n bottom = 0\n show = $\n}", "left, right, front"},
	{document.Piece, "part form", "part \"p\" {\n of = material.case\n grain = \"right\"\n wide = 50\n left = 0\n deep = 50\n front = 0\n bottom = 0\n form = $\n}", "round"},
	{document.Piece, "material sawn", "material \"m\" {\n asks = \"cherry board\"\n thickness = 14\n sawn = $\n}", "flat, quarter"},
	{document.Piece, "contents kind", "contents \"c\" {\n kind = $\n}", "rod, jar"},
	{document.Piece, "contents across", "contents \"c\" {\n rod = 6\n sides = 6\n length = 180\n across = $\n}", "corners, flats"},
	{document.Piece, "finish when", "finish \"f\" {\n kind = \"shellac\"\n on = [part.side]\n when = $\n}", "before assembly, after assembly"},
	{document.Piece, "measure take", "measure \"m\" {\n of = part.side\n take = [$]\n}", "width front"},
	{document.Piece, "together row", "together \"t\" {\n of = [part.side]\n row = $\n}", "along, across"},
	{document.Piece, "joint kind", "joint \"j\" {\n kind = $\n of = part.shelf\n into = part.side\n meets = 2\n}", "housing"},
	{document.Piece, "joint first", "joint \"j\" {\n kind = \"box\"\n of = part.shelf\n into = part.side\n meets = 2\n first = $\n}", "of, into"},
	{document.Piece, "hardware side", "hardware \"h\" {\n kind = \"knob 20\"\n count = 2\n on = part.shelf\n side = $\n}", "left, right, front, back, top, bottom"},
	{document.Piece, "hardware runs", "hardware \"h\" {\n kind = \"bow pull 96\"\n count = 2\n on = part.shelf\n side = \"front\"\n runs = $\n}", "right, back, up"},
	{document.Piece, "hardware toward", "hardware \"h\" {\n kind = \"table button 45\"\n count = 2\n on = part.shelf\n side = \"bottom\"\n toward = $\n}", "left, right, front, back, top, bottom"},
	{document.Piece, "cut kind", "cut \"c\" {\n kind = $\n on = part.shelf\n side = \"top\"\n}", "groove"},
	{document.Piece, "cut side", "cut \"c\" {\n kind = \"groove\"\n on = part.shelf\n side = $\n near = 20\n width = 6\n depth = 4\n}", "left, right, front, back, top, bottom"},
	{document.Piece, "cut runs", "cut \"c\" {\n kind = \"groove\"\n on = part.shelf\n side = \"top\"\n runs = $\n near = 20\n width = 6\n depth = 4\n}", "right, back, up"},
	{document.Piece, "cut ends", "cut \"c\" {\n kind = \"groove\"\n on = part.shelf\n side = \"top\"\n near = 20\n width = 6\n depth = 4\n from = 20\n to = 100\n ends = $\n}", "round, square"},
	{document.Piece, "cut keeps", "cut \"c\" {\n kind = \"bevel\"\n on = part.shelf\n edge = \"front\"\n keeps = $\n by = 3\n}", "bottom, top"},
	{document.Piece, "cut edge", "cut \"c\" {\n kind = \"bevel\"\n on = part.shelf\n edge = $\n keeps = \"top\"\n by = 3\n}", "front, back"},
	{document.Piece, "cut saw", "group \"g\" {\n part \"p\" {\n of = material.case\n grain = \"right\"\n wide = 50\n left = 0\n front = 0\n bottom = 0\n high = 50\n }\n}\ncut \"c\" {\n kind = \"lid\"\n on = g\n base = 30\n saw = $\n}", "table saw, hand"},
	{document.Piece, "series kind", "series \"s\" {\n kind = $\n on = part.shelf\n side = \"top\"\n count = 3\n}", "channel"},
	{document.Piece, "series row", "series \"s\" {\n kind = \"groove\"\n on = part.shelf\n side = \"top\"\n row = $\n count = 3\n width = 6\n depth = 4\n pitch = 20\n}", "right, back, up"},
	{document.Piece, "series starts", "series \"s\" {\n kind = \"groove\"\n on = part.shelf\n side = \"top\"\n count = 3\n width = 6\n depth = 4\n pitch = 20\n starts = $\n}", "front, back"},
	{document.Piece, "series place", "series \"s\" {\n kind = \"groove\"\n on = part.shelf\n side = \"top\"\n count = 3\n width = 6\n depth = 4\n pitch = 20\n place = $\n}", "centred, even"},
}

// otherAttributes take sizes, counts, references, lists, names of things and free text.
const otherAttributes = "about above abrasives accuracy after among angle angles around asks at back base before behind bending botanical bottom by cap caution centre chamfer " +
	"choice choices chord clamp clean clear closed coats coldest columns corner count counterbore countersink coverage cure currency cutter cutting_length deep " +
	"denominator depth diameter divider divider_high dowels each edges end far film finger fingers flat flip from front glue gravity growth hardness head " +
	"help high holds holes humidity_dry humidity_now humidity_wet if in inside into kerf keys label land lap leans least_length least_rip least_speed " +
	"least_thickness least_width leaves left leg length lid light line lining loose lowers margin mass material meets message middle mirror moisture " +
	"most_fence most_height most_length most_speed most_thickness most_width moves nails near nominal note number of oil on open outline over pins pitch " +
	"pitches plate plate_length plate_width play plunges price profile projection purpose radial radius rags recoat repeat resolution right rod rows " +
	"rpm_most saturation screw screw_length screws shank sharp shear shop shoulder shrink_radial shrink_tangential sides size slide slides slots spare " +
	"species spline stack stage step stiffness stock stopped symmetrical tails tall tangential teeth temperature tenon text that thick thickness things " +
	"throat through to tongue top trim_edges trim_ends value warn why wide width with yes"

// TestEveryAttributeIsDecided holds the attributes of all blocks against the two lists
// above, so that a new one that takes one of a few words is tried as well.
func TestEveryAttributeIsDecided(t *testing.T) {
	known := strings.Fields(otherAttributes)
	for _, c := range choiceAttributes {
		_, attribute, _ := strings.Cut(c.of, " ")
		known = append(known, attribute)
	}
	for _, kind := range []document.Kind{document.Piece, document.Recipe, document.Shop} {
		for _, block := range document.Words(kind) {
			for _, a := range document.WordsOf(kind, block) {
				if !slices.Contains(known, a) {
					t.Errorf("%s: the attribute %s takes either one of a few words or something else: say which", block, a)
				}
			}
		}
	}
}

// TestChoices writes a word that no attribute takes into every attribute that takes
// one of a few: it is an error at that line, never read as something else, and it
// tells the words that are allowed.
func TestChoices(t *testing.T) {
	box := (coded{how: "added to evaluate/testdata/box.piece.hcl"}).sourcesOf(t).Document
	said := words.New(words.English, words.British, unit.Show{}, "EUR")
	for _, c := range choiceAttributes {
		text := "\n" + strings.ReplaceAll(c.text, "$", `"`+wrong+`"`) + "\n"
		src := Sources{Document: document.Source{Name: box.Name, Text: slices.Clone(box.Text)}}
		_, attribute, _ := strings.Cut(c.of, " ")
		head := ""
		if attribute != "units" {
			head = "units = \"mm\"\n"
		}
		if c.text == "" {
			head += attribute + " = \"" + wrong + "\"\n"
		}
		switch c.Kind {
		case document.Piece:
			src.Document.Text = append([]byte(strings.Replace(string(box.Text), "  units = \"mm\"\n", head, 1)), text...)
		case document.Shop:
			src.Shop = document.Source{Name: "c.shop.hcl", Text: []byte("scantling = 1\n\nshop \"S\" {\n" + head + "}\n" + text)}
			src.Document.Text = []byte("scantling = 1\n\npiece \"Empty\" {\n}\n")
		case document.Recipe:
			src.Recipes = []document.Source{{Name: "c.recipe.hcl", Text: []byte("scantling = 1\n\nrecipe \"thing\" {\n" + head + "}\n" + text)}}
			src.Document.Text = append(src.Document.Text, "\nuse \"thing\" {\n}\n"...)
		}
		told := false
		ds := Piece(src).Diagnostics
		for _, d := range ds {
			told = told || strings.Contains(said.Say(d.Text), wrong) && strings.Contains(said.Say(d.Text), c.told)
		}
		if !told {
			t.Errorf("%s = %q is not told with %q", c.of, wrong, c.told)
		}
		for _, d := range ds {
			t.Logf("%s: %s: %s", c.of, d.Code, said.Say(d.Text))
		}
	}
}
