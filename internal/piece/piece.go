package piece

import (
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/unit"
)

// Figure is a length with its ledger entry.
type Figure = ledger.Figure

// Piece is everything that the documents say, evaluated.
type Piece struct {
	Name  string `json:"name"`
	About string `json:"about,omitempty"`
	// Purpose is what the piece is for, in the document's words: "bunk bed".
	Purpose string `json:"purpose,omitempty"`
	// File names the design document that the places refer to.
	File string `json:"file"`
	// Units is the document's own unit of length: "mm" or "in".
	Units string `json:"units"`
	// Edition is what the plan is printed in: "mm", "in" or "both".
	Edition string `json:"edition"`

	Inputs    []Input    `json:"inputs,omitempty"`
	Sizes     []Named    `json:"sizes,omitempty"`
	Materials []Material `json:"materials,omitempty"`
	Contents  []Contents `json:"contents,omitempty"`
	Groups    []Group    `json:"groups,omitempty"`
	Parts     []Part     `json:"parts,omitempty"`
	Spaces    []Space    `json:"spaces,omitempty"`
	Joints    []Joint    `json:"joints,omitempty"`
	Cuts      []Cut      `json:"cuts,omitempty"`
	Series    []Series   `json:"series,omitempty"`
	Sawn      []Sawn     `json:"sawn,omitempty"`
	Fits      []Fit      `json:"fits,omitempty"`
	Measures  []Measure  `json:"measures,omitempty"`
	InPlace   []InPlace  `json:"inPlace,omitempty"`
	Hardware  []Hardware `json:"hardware,omitempty"`
	Finishes  []Finish   `json:"finishes,omitempty"`
	Steps     []Step     `json:"steps,omitempty"`
	Together  []Together `json:"together,omitempty"`
	Requires  []Require  `json:"requires,omitempty"`
}

// Input is one thing that the maker may change, with its present value.
type Input struct {
	Name  string `json:"name"`
	Label string `json:"label"`
	Help  string `json:"help,omitempty"`
	// Value is the value in force; Entry its line in the ledger.
	Value unit.Value `json:"value"`
	Entry ledger.ID  `json:"entry"`
	// From and To bound numbers; Choices bound texts. Step is what a control moves by.
	From    unit.Value   `json:"from,omitzero"`
	To      unit.Value   `json:"to,omitzero"`
	Step    unit.Value   `json:"step,omitzero"`
	Choices []unit.Value `json:"choices,omitempty"`
	// Origin is where the value in force was given.
	Origin ledger.Origin `json:"origin"`
	// Place is where a form may splice a new value: the value's own bytes.
	Place diag.Place `json:"place"`
}

// Named is a value of the sizes block, for reading.
type Named struct {
	Name  string     `json:"name"`
	Value unit.Value `json:"value"`
	Entry ledger.ID  `json:"entry"`
}

// Material is a role ("case", "ply") with what it asks for and what the shop
// answers.
type Material struct {
	Name string `json:"name"`
	// Asks is the author's wording: "cherry board", "birch plywood 6".
	Asks string `json:"asks"`
	// Sheet tells sheet goods from boards.
	Sheet bool `json:"sheet"`
	// Species is the catalogue's name of the timber, or of the sheet's kind.
	Species string `json:"species"`
	// Stock is the shop's id of the stock that answers, empty if none does.
	Stock string `json:"stock,omitempty"`
	// Thickness is what parts are dressed to, or what the sheet measures.
	Thickness Figure `json:"thickness"`
	// Nominal is the sheet's trade name, where it differs ("6 mm").
	Nominal string `json:"nominal,omitempty"`
	// Cut is how boards are sawn: "flat", "quarter" or "" for unknown.
	Cut   string     `json:"cut,omitempty"`
	Where diag.Place `json:"where"`
}

// Group is built and moved as one and has its own axes, parallel to the
// piece's; Origin is its left front bottom corner in the piece.
type Group struct {
	Address address.Address `json:"address"`
	Name    string          `json:"name"`
	Label   string          `json:"label,omitempty"`
	Parent  address.Address `json:"parent,omitempty"`
	Origin  [3]Figure       `json:"origin"`
	// Inside is the space that the group moves in, if any.
	Inside address.Address `json:"inside,omitempty"`
	// Nth and Of place a repeated group: number Nth of Of; 0 if it stands alone.
	Nth   int        `json:"nth,omitempty"`
	Of    int        `json:"of,omitempty"`
	Where diag.Place `json:"where"`
}

// Extent is a stretch along an axis of the piece.
type Extent struct {
	Low  Figure `json:"low"`
	High Figure `json:"high"`
}

// Size returns the stretch's length, without a ledger entry of its own.
func (e Extent) Size() unit.Length { return e.High.Nm - e.Low.Nm }

// Space is a clear space bounded by faces.
type Space struct {
	Address address.Address `json:"address"`
	Label   string          `json:"label,omitempty"`
	Group   address.Address `json:"group,omitempty"`
	// Extent is the stretch along right, back and up.
	Extent [3]Extent `json:"extent"`
	// Clear is the clear size along right, back and up.
	Clear [3]Figure `json:"clear"`
	// Bounds names the face (part address and side) at left, right, front, back,
	// bottom, top; "" is open.
	Bounds [6]string  `json:"bounds"`
	Where  diag.Place `json:"where"`
}

// Fit is a moving group in its space.
type Fit struct {
	Address address.Address `json:"address"`
	Moves   address.Address `json:"moves"`
	Inside  address.Address `json:"inside"`
	// Sides is the clearance wanted in all from side to side, Above over it,
	// Behind at the back; as planned for today.
	Sides  Figure `json:"sides"`
	Above  Figure `json:"above"`
	Behind Figure `json:"behind"`
	// Season tells which of these were computed for the seasons ("sides",
	// "above", "behind").
	Season []string   `json:"season,omitempty"`
	Where  diag.Place `json:"where"`
}

// Whole reports whether a fit moves all that the piece is: then it goes into an
// opening that is there already, and is no drawer of a case of its own.
func (p *Piece) Whole(f *Fit) bool {
	for i := range p.Parts {
		if !f.Moves.Has(p.Parts[i].Address) {
			return false
		}
	}
	return len(p.Parts) > 0
}

// Measure is what must be taken from the work before the next cut.
type Measure struct {
	Address address.Address `json:"address"`
	Label   string          `json:"label"`
	// Of is the space or part that is measured.
	Of []address.Address `json:"of"`
	// Take lists readings by name: "width front", "height left", "diagonals", "thickness".
	Take []string `json:"take"`
	// Last is where the last of them is written, so that a remedy can add one.
	Last diag.Place `json:"last,omitzero"`
	// After is the author's word for when; Stage the group that must be together.
	After string          `json:"after,omitempty"`
	Stage address.Address `json:"stage,omitempty"`
	// Before lists the parts (or groups) that must not be cut before.
	Before []address.Address `json:"before,omitempty"`
	Where  diag.Place        `json:"where"`
}

// Hardware is bought and fitted.
type Hardware struct {
	Address address.Address `json:"address"`
	Kind    string          `json:"kind"` // catalogue id: "turn button", "knob", "panel pin 25"
	Label   string          `json:"label,omitempty"`
	Count   int             `json:"count"`
	On      address.Address `json:"on,omitempty"`
	// With is the other part that it is fixed to or works on: a hinge's door.
	With address.Address `json:"with,omitempty"`
	// Side is the way that the side of On which it is fixed to looks; "" for hardware
	// without a place. Bodies is then what it takes up, closed.
	Side   Direction  `json:"side,omitempty"`
	Bodies []Body     `json:"bodies,omitempty"`
	Note   string     `json:"note,omitempty"`
	Where  diag.Place `json:"where"`
}

// Finish is what a set of parts is finished with.
type Finish struct {
	Address address.Address   `json:"address"`
	Kind    string            `json:"kind"` // catalogue id: "shellac", "wax"
	Coats   int               `json:"coats"`
	On      []address.Address `json:"on"`
	When    string            `json:"when,omitempty"` // "before assembly" or "after assembly"
	Where   diag.Place        `json:"where"`
}

// Step is the author's own instruction.
type Step struct {
	Address address.Address   `json:"address"`
	Text    string            `json:"text"`
	After   []address.Address `json:"after,omitempty"`
	Before  []address.Address `json:"before,omitempty"`
	Caution string            `json:"caution,omitempty"`
	Where   diag.Place        `json:"where"`
}

// Require is the designer's own rule, already judged.
type Require struct {
	Address address.Address `json:"address"`
	Holds   bool            `json:"holds"`
	Text    string          `json:"text"`
	Warn    bool            `json:"warn,omitempty"` // a warning, not an error
	Where   diag.Place      `json:"where"`
}
