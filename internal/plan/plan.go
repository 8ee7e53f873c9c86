package plan

import (
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// Schema names the form of the stored plan; docs/PLAN.md describes it.
const Schema = "scantling-plan/1"

// Figure is a length with its ledger entry.
type Figure = piece.Figure

// Plan is everything that is known about how to build the piece.
type Plan struct {
	Schema string       `json:"schema"`
	Piece  *piece.Piece `json:"piece"`
	Shop   Shop         `json:"shop"`

	Parts      []PartRow   `json:"parts"`
	Workpieces []Workpiece `json:"workpieces"`
	Stages     []Stage     `json:"stages"`
	Measures   []Measure   `json:"measures,omitempty"`
	Diagrams   []Diagram   `json:"diagrams"`
	Buying     []Buy       `json:"buying"`
	Operations []Operation `json:"operations"`
	Setups     []Setup     `json:"setups"`
	Steps      []Step      `json:"steps"`
	Rows       []Row       `json:"rows"`
	Clearances []Clearance `json:"clearances,omitempty"`
	// Removals are how the piece comes apart; backwards, how it goes together.
	Removals []Removal `json:"removals,omitempty"`
	// Seasons and Strength are what damp, dry air and load do to the piece: estimates.
	Seasons  Seasons   `json:"seasons,omitzero"`
	Strength Strength  `json:"strength,omitzero"`
	Held     []Held    `json:"held,omitempty"`
	Stowed   []Stowed  `json:"stowed,omitempty"`
	Supplies []Supply  `json:"supplies,omitempty"`
	Findings []Finding `json:"findings"`
	Cost     Cost      `json:"cost"`
	// Diagnostics are what the documents themselves gave rise to.
	Diagnostics diag.List `json:"diagnostics,omitempty"`
	// Unplaced are entries of the as-built record that fit nothing any more.
	Unplaced []string `json:"unplaced,omitempty"`

	Ledger *ledger.Ledger `json:"ledger"`
}

// Shop is what a reader of the plan must know of the shop it was made for.
type Shop struct {
	Name     string `json:"name"`
	Currency string `json:"currency,omitempty"`
	// Region chooses the trade's words: "en-GB" or "en-US".
	Region string `json:"region"`
	// Units is what the shop works to: "mm" or "in".
	Units string `json:"units,omitempty"`
	// Denominator is the finest fraction of an inch in use: 8, 16, 32 or 64.
	Denominator int `json:"denominator"`
	// Resolution is what metric figures are shown to.
	Resolution Figure `json:"resolution"`
	// Moisture now, and the driest and dampest that the piece will meet, in percent.
	MoistureNow float64 `json:"moistureNow,omitempty"`
	MoistureDry float64 `json:"moistureDry,omitempty"`
	MoistureWet float64 `json:"moistureWet,omitempty"`
}

// Basis says what a printed figure rests on.
type Basis string

// The bases.
const (
	Planned      Basis = "planned"
	AsMeasured   Basis = "measured"
	FromMeasured Basis = "from-measured"
	AsCut        Basis = "cut" // frozen at the record
)

// PartRow is one row of the part list: equal parts together.
type PartRow struct {
	// Mark is what is written on the wood: a letter for the group, a number for
	// the part, and ".n" where the members of a repeat are not all equal.
	Mark     string            `json:"mark"`
	Name     string            `json:"name"`
	Label    string            `json:"label,omitempty"`
	Members  []address.Address `json:"members"`
	Material string            `json:"material"`
	Species  string            `json:"species"`
	Sheet    bool              `json:"sheet,omitempty"`
	// Finished sizes.
	Length    Figure `json:"length"`
	Width     Figure `json:"width"`
	Thickness Figure `json:"thickness"`
	// Goes is what length, width and thickness do at their ends, which says to which
	// side they are rounded in fractions of an inch.
	Goes  [3]Going `json:"goes,omitzero"`
	Hand  string   `json:"hand,omitempty"`
	Basis Basis    `json:"basis"`
	// Stage is the id of the stage in which it is cut.
	Stage string `json:"stage"`
	// Order numbers rows as they are listed.
	Order int `json:"order"`
}

// Quantity is how many parts the row stands for.
func (r PartRow) Quantity() int { return len(r.Members) }

// WorkpieceKind is a state of wood on its way.
type WorkpieceKind string

// The kinds.
const (
	BoardPiece WorkpieceKind = "board" // as bought
	SheetPiece WorkpieceKind = "sheet" // as bought
	BlankPiece WorkpieceKind = "blank" // rough, with allowances
	StripPiece WorkpieceKind = "strip" // to be glued into a panel
	// NarrowPanel is glued up from strips and planed before it is glued, with others
	// and with strips, into a panel that is wider than the thicknesser.
	NarrowPanel   WorkpieceKind = "narrow panel"
	PanelPiece    WorkpieceKind = "panel"    // glued up from strips and narrow panels
	PartPiece     WorkpieceKind = "part"     // finished size
	AssemblyPiece WorkpieceKind = "assembly" // parts joined
	TestPiece     WorkpieceKind = "test piece"
)

// Workpiece is a node of the graph board → blank → strips → panel → part →
// assembly. Sizes are as the workpiece leaves its making.
type Workpiece struct {
	ID   string        `json:"id"` // "blank.B1.1", "panel.C1", "case"
	Kind WorkpieceKind `json:"kind"`
	// From are the workpieces that it is made from.
	From []string `json:"from,omitempty"`
	// Mark is the part row that it becomes (empty for boards); Parts the parts
	// that come out of one such workpiece (several for a ganged blank).
	Mark  string            `json:"mark,omitempty"`
	Parts []address.Address `json:"parts,omitempty"`
	// Group is the group that an assembly puts together.
	Group address.Address `json:"group,omitempty"`
	// Count is how many equal workpieces are needed.
	Count     int    `json:"count"`
	Material  string `json:"material,omitempty"`
	Stock     string `json:"stock,omitempty"`
	Length    Figure `json:"length,omitzero"`
	Width     Figure `json:"width,omitzero"`
	Thickness Figure `json:"thickness,omitzero"`
	// Why says what is unusual: kept long for the planer, ganged, glued up.
	Why []message.Message `json:"why,omitempty"`
	// Joints are where strips of a panel meet, from its low edge, finished.
	Joints []Figure `json:"joints,omitempty"`
	// InWidths says that a panel is wider than the thicknesser: what it is made from is
	// planed before it is glued, and only its last joints are levelled by hand.
	InWidths bool `json:"inWidths,omitempty"`
}

// Stage is one part of the staged list: what may be cut, and after which readings.
type Stage struct {
	ID    string          `json:"id"` // "1", "2"
	Title message.Message `json:"title"`
	// Needs are the measures that must be taken first.
	Needs []address.Address `json:"needs,omitempty"`
	Marks []string          `json:"marks"`
}

// Measure is one thing to take from the work, reading by reading.
type Measure struct {
	Address  address.Address `json:"address"` // of the measure block
	Label    string          `json:"label"`
	Readings []Reading       `json:"readings"`
	// Marks are the rows that wait for it.
	Marks []string `json:"marks,omitempty"`
}

// Reading is one figure to take: where, what is expected, what was found.
type Reading struct {
	Of      address.Address `json:"of"`   // space or part
	What    string          `json:"what"` // "width front", "thickness"
	Planned Figure          `json:"planned"`
	Found   *Figure         `json:"found,omitempty"`
}

// Row is a sum that closes: the stretches of wood and air along one straight
// line through the finished piece.
type Row struct {
	Address address.Address `json:"address"`
	Title   message.Message `json:"title"`
	Axis    piece.Axis      `json:"axis"`
	// Band limits the two other axes (in the order right, back, up without Axis):
	// the row holds for every line inside it.
	Band  [2]piece.Extent `json:"band"`
	Start Figure          `json:"start"`
	Terms []piece.Term    `json:"terms"`
	Total Figure          `json:"total"`
}

// Held is how one thing of the contents is held.
type Held struct {
	Thing string          `json:"thing"` // key of the thing
	Of    address.Address `json:"of"`    // the contents
	In    address.Address `json:"in"`    // the part
	Cut   address.Address `json:"cut"`
	// Cutter is what cuts the channel; Sinks how deep the thing lies below the
	// surface; Proud how far it stands above; Land the least wood beside the channel.
	Cutter string `json:"cutter,omitempty"`
	Depth  Figure `json:"depth"`
	Sinks  Figure `json:"sinks"`
	Proud  Figure `json:"proud"`
	Land   Figure `json:"land,omitzero"`
	// Lining is the thickness of what the channel is lined with. Bare is how deep the
	// thing would sink without it.
	Lining Figure `json:"lining,omitzero"`
	Bare   Figure `json:"bare,omitzero"`
	// OnFlat is how far a thing with flats stands above the surface on a flat; Proud
	// is then with a corner down.
	OnFlat Figure `json:"onFlat,omitzero"`
	// HeadLow tells that the head lies at the low end, in the trough there, and
	// HeadFree how far it hangs clear of the trough's bottom: below nought it holds
	// its thing up. Without a head or a trough there is no figure.
	HeadLow  bool   `json:"headLow,omitempty"`
	HeadFree Figure `json:"headFree,omitzero"`
}

// Clearance is what one fit needs over the seasons, in one direction.
type Clearance struct {
	Fit     address.Address `json:"fit"`
	Moves   address.Address `json:"moves"`
	Across  string          `json:"across"` // "sides", "above", "behind"
	Size    Figure          `json:"size"`   // of the moving wood across the grain
	Species string          `json:"species"`
	Cut     string          `json:"cut"` // flat, quarter, unknown
	// GrowsWet and ShrinksDry are from today to the dampest and the driest.
	GrowsWet   Figure `json:"growsWet"`
	ShrinksDry Figure `json:"shrinksDry"`
	// Leave is what to leave today, AtWet and AtDry what then remains.
	Leave Figure `json:"leave"`
	AtWet Figure `json:"atWet"`
	AtDry Figure `json:"atDry"`
}

// Status is the outcome of a check; unknown is the zero value.
type Status string

// Outcomes. Unknown says what is missing.
const (
	Unknown Status = "unknown"
	Pass    Status = "pass"
	Fail    Status = "fail"
	Errored Status = "error" // the check itself could not be done
)
