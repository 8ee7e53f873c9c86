package plan

import (
	"scantling/internal/address"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// OperationKind is what a pass does.
type OperationKind string

// The kinds of operation, roughly in the order of work.
const (
	RoughCrosscut OperationKind = "rough crosscut"
	RoughRip      OperationKind = "rough rip"
	SheetCut      OperationKind = "sheet cut"
	FaceJoint     OperationKind = "joint a face"
	EdgeJoint     OperationKind = "joint an edge"
	PlaneToThick  OperationKind = "plane to thickness"
	GlueUp        OperationKind = "glue up"
	LevelJoints   OperationKind = "level the joints" // of a panel that was planed in narrow ones
	RipToWidth    OperationKind = "rip to width"
	CutToLength   OperationKind = "cut to length"
	MakeCut       OperationKind = "make a cut" // a cut of the design
	Assemble      OperationKind = "assemble"
	FitPart       OperationKind = "fit"
	SandPart      OperationKind = "sand"
	FinishPart    OperationKind = "finish"
)

// Operation is one pass (or hand job) on one kind of workpiece.
type Operation struct {
	ID        string        `json:"id"`
	Kind      OperationKind `json:"kind"`
	Workpiece string        `json:"workpiece"` // what goes in
	Makes     string        `json:"makes,omitempty"`
	// Mark is the part row and Members the parts that it is done to.
	Mark    string            `json:"mark,omitempty"`
	Members []address.Address `json:"members,omitempty"`
	// Cuts are the cuts of the first member that it makes; the others' are equal.
	Cuts []address.Address `json:"cuts,omitempty"`
	// Machine and Cutter are the shop's ids; "hand" for hand work.
	Machine string `json:"machine"`
	Cutter  string `json:"cutter,omitempty"`
	Setup   string `json:"setup,omitempty"`
	// Before and After are the sizes along length, width and thickness.
	Before [3]Figure `json:"before,omitzero"`
	After  [3]Figure `json:"after,omitzero"`
	// Needs are operations that come first.
	Needs []string `json:"needs,omitempty"`
}

// Setup is a machine as adjusted for several operations: one card.
type Setup struct {
	ID      string          `json:"id"`
	Title   message.Message `json:"title"`
	Machine string          `json:"machine"`
	// MachineLabel and CutterLabel are the shop's own names.
	MachineLabel string `json:"machineLabel"`
	Cutter       string `json:"cutter,omitempty"`
	CutterLabel  string `json:"cutterLabel,omitempty"`
	CutterSize   Figure `json:"cutterSize,omitzero"`
	// CutterShape is what the cutter leaves: "straight", "round-nose", "saw blade".
	CutterShape string `json:"cutterShape,omitempty"`
	// Settings are the figures to set, in the order of setting.
	Settings []Setting `json:"settings"`
	// Placements are the ways that work goes through at this height and cutter:
	// one for each fence setting, in working order.
	Placements []Placement `json:"placements"`
	Speed      int         `json:"speed,omitempty"` // rpm; 0 leaves it
	// Shared says that the passes are made place by place of the fence, not row by row.
	Shared message.Message `json:"shared,omitzero"`
	// TestPiece is what is cut first.
	TestPiece  message.Message   `json:"testPiece,omitzero"`
	Device     message.Message   `json:"device,omitzero"` // push block, sled, backer
	Cautions   []message.Message `json:"cautions"`
	Operations []string          `json:"operations"`
	// Sums are closed sums that a reader may check: stops, fences, passes.
	Sums []Sum `json:"sums,omitempty"`
}

// Setting is one figure to set on the machine.
type Setting struct {
	// Word is the catalogue's word: "fence to cutter edge", "fence to cutter
	// centre", "height", "stop left", "stop right", "blade to fence", "thickness".
	Word   string `json:"word"`
	Figure Figure `json:"figure"`
	// Passes are the heights (or settings) of the passes, last one final.
	Passes []Figure `json:"passes,omitempty"`
	// Goes says to which side the figure goes where it is shown in fractions: what it
	// makes goes into something, or something goes into what it makes. Of the paths
	// of one cut the first goes the other way.
	Goes Goes `json:"goes,omitempty"`
}

// Placement is one way of offering the work: which side down, which against the
// fence, what to set, which cuts come out.
type Placement struct {
	N        int               `json:"n"`
	Mark     string            `json:"mark"`
	Pieces   int               `json:"pieces"` // how many workpieces go through
	Cuts     []address.Address `json:"cuts"`
	Settings []Setting         `json:"settings,omitempty"`
	Down     piece.Side        `json:"down,omitempty"`
	Fence    piece.Side        `json:"fence,omitempty"`
	Leads    piece.Side        `json:"leads,omitempty"` // the end that goes in first
	// Turn says that a second pass is made turned end for end.
	Turn bool            `json:"turn,omitempty"`
	Feed message.Message `json:"feed,omitzero"`
	Note message.Message `json:"note,omitzero"`
	// Reach is how much wood stands between fence and work's far side when the
	// cut is made: never a trapped cut.
	Sums []Sum `json:"sums,omitempty"`
}

// Sum is a closed sum: the terms add up to the total.
type Sum struct {
	Title message.Message `json:"title"`
	Terms []SumTerm       `json:"terms"`
	Total Figure          `json:"total"`
}

// SumTerm is one term of a sum, with its sign in the figure.
type SumTerm struct {
	Word   string `json:"word"`
	Figure Figure `json:"figure"`
}

// Step is one line of the sequence.
type Step struct {
	ID string `json:"id"`
	N  int    `json:"n"`
	// Part of the booklet that it belongs to: a heading.
	Chapter message.Message `json:"chapter"`
	Text    message.Message `json:"text"`
	// More are further sentences.
	More       []message.Message `json:"more,omitempty"`
	Cautions   []message.Message `json:"cautions,omitempty"`
	Marks      []string          `json:"marks,omitempty"`
	Setups     []string          `json:"setups,omitempty"`
	Operations []string          `json:"operations,omitempty"`
	Measures   []address.Address `json:"measures,omitempty"`
	// After are the steps that must be done first; Wait the minutes that must pass
	// after this one before what follows from it.
	After []string `json:"after,omitempty"`
	Wait  int      `json:"wait,omitempty"`
	// Hands is the estimated time in minutes with hands on; 0 if unknown.
	Hands int `json:"hands,omitempty"`
	// Author is set for the author's own words.
	Author string `json:"author,omitempty"`
}
