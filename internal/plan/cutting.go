package plan

import (
	"scantling/internal/message"
)

// Diagram is how one board or sheet is cut up.
type Diagram struct {
	ID    string `json:"id"`    // "cherry 27 #1"
	Stock string `json:"stock"` // the shop's id
	Label string `json:"label"`
	Sheet bool   `json:"sheet,omitempty"`
	// Count is how many boards are cut to this diagram; each gives one workpiece of
	// every place, see Placed.
	Count     int    `json:"count"`
	Length    Figure `json:"length"`
	Width     Figure `json:"width"`
	Thickness Figure `json:"thickness"`
	Kerf      Figure `json:"kerf"`
	// Cuts are in sawing order.
	Cuts   []SawCut `json:"cuts"`
	Pieces []Placed `json:"pieces"`
	Left   []Left   `json:"left,omitempty"`
	// Defects are where no workpiece may lie, as the shop marked them.
	Defects []Defect `json:"defects,omitempty"`
	Waste   Waste    `json:"waste"`
	// Bound explains how good the whole answer for this stock is; the same on all
	// diagrams of one problem.
	Bound message.Message `json:"bound,omitzero"`
}

// SawCut is one cut of a diagram: across (a crosscut) or along (a rip) of the
// piece that is in hand, at a distance from its reference end or edge.
type SawCut struct {
	N    int    `json:"n"`
	Kind string `json:"kind"` // "trim" (an end), "trim edge", "rip", "crosscut"
	// In is the rectangle in hand; At the distance from its low end or edge to the
	// near side of the kerf.
	In Rect   `json:"in"`
	At Figure `json:"at"`
}

// Rect is a rectangle on the stock: along its length and across its width.
type Rect struct {
	Along  Figure `json:"along"`
	Across Figure `json:"across"`
	Length Figure `json:"length"`
	Width  Figure `json:"width"`
}

// Placed is a workpiece on the stock: where several boards are cut alike, one of
// the same mark and size on each.
type Placed struct {
	// Workpiece is cut from the first board, Also from the second and so on.
	Workpiece string   `json:"workpiece"`
	Also      []string `json:"also,omitempty"`
	Mark      string   `json:"mark"`
	Rect      Rect     `json:"rect"`
	// Turned says that the workpiece's length lies across the stock.
	Turned bool `json:"turned,omitempty"`
}

// Workpieces lists all that are cut at this place, board by board.
func (p Placed) Workpieces() []string { return append([]string{p.Workpiece}, p.Also...) }

// Left is what remains: kept if it is worth keeping.
type Left struct {
	Rect Rect `json:"rect"`
	Keep bool `json:"keep"`
}

// Defect is a marked flaw of a board.
type Defect struct {
	Kind string `json:"kind"` // "knot", "check", "sapwood", "wane", "wild grain", "flaw"
	Rect Rect   `json:"rect"`
}

// Waste shares out the area of the stock in square millimetres; the terms add
// up to Whole.
type Waste struct {
	Whole   float64 `json:"whole"`
	Parts   float64 `json:"parts"`
	Kerf    float64 `json:"kerf"`
	Trim    float64 `json:"trim"`
	Defects float64 `json:"defects,omitempty"`
	Remnant float64 `json:"remnant"`
	Rest    float64 `json:"rest"`
}

// Buy is one line of the buying list.
type Buy struct {
	Stock string `json:"stock"`
	Label string `json:"label"`
	// Have is how many the rack holds and Need how many the plan uses; Get the rest.
	Have int `json:"have"`
	Need int `json:"need"`
	Get  int `json:"get"`
	// Measure is the quantity to get in the merchant's own terms.
	Measure message.Message `json:"measure,omitzero"`
	Price   int64           `json:"price,omitempty"` // of one, in hundredths
	Sum     int64           `json:"sum,omitempty"`   // of all to get
	// Kind is "board", "sheet", "hardware" or "sundry".
	Kind string   `json:"kind"`
	For  []string `json:"for,omitempty"` // marks
}

// Cost is what must be spent, in hundredths of the shop's currency.
type Cost struct {
	Timber   int64 `json:"timber"`
	Sheet    int64 `json:"sheet"`
	Hardware int64 `json:"hardware"`
	Total    int64 `json:"total"`
	// FromRack values the boards used that are already there.
	FromRack int64 `json:"fromRack"`
	// Unpriced lists stock without a price.
	Unpriced []string `json:"unpriced,omitempty"`
}
