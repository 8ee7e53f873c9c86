package sequence

import (
	"scantling/internal/address"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/shop"
)

// Input is what the order is decided from.
type Input struct {
	Piece *piece.Piece
	// Cuts are all cuts, the document's own and those of joints.
	Cuts       []piece.Cut
	Rows       []plan.PartRow
	Workpieces []plan.Workpiece
	Diagrams   []plan.Diagram
	Stages     []plan.Stage
	Measures   []plan.Measure
	// Operations have their cards filled in; Setups are in working order.
	Operations []plan.Operation
	Setups     []plan.Setup
	Estimates  Estimates
	// Shop has the glues, finishes and abrasives; nil is a shop without any of its own.
	Shop *shop.Shop
}

// Estimates are minutes with hands on: house rules, common practice, no source.
// The zero value is replaced by [Usual].
type Estimates struct {
	SawCut, SetUp, Pass, Reading, Joint, Clean, Coat, Fitting, PlaneBoard, HandCut int
}

// Usual returns a careful person's minutes.
func Usual() Estimates {
	return Estimates{SawCut: 3, SetUp: 12, Pass: 1, Reading: 1, Joint: 4, Clean: 15, Coat: 20, Fitting: 5, PlaneBoard: 4, HandCut: 6}
}

// CodeNotPlaced says that an author's step waits for things that no step makes;
// it then stands at the end of the building.
//
// Example: step "label" { text = "..." after = [part.lid] } where no part lid is.
const CodeNotPlaced diag.Code = "step-not-placed"

// step is a plan step with what it concerns.
type step struct {
	plan.Step
	about []address.Address
	// after are ids of steps that come before it besides those that its operations
	// need.
	after []string
}

type sequencer struct {
	Input
	steps []step
	// of finds the step of an operation, a card or a measure.
	ofOperation map[string]string
	card        map[string]plan.Setup
	row         map[string]plan.PartRow
	rowOf       map[address.Address]string
	group       map[address.Address]piece.Group
	part        map[address.Address]piece.Part
	operation   map[string]plan.Operation
	on          map[string][]plan.Operation // by workpiece
	placed      map[string]bool             // cards
	cutAt       map[address.Address]int
	cameOf      map[string][]string // marks by blank or strip
	strips      map[string]bool
	joined      map[address.Address]bool
	taken       []address.Address        // measures
	stands      map[address.Address]bool // groups
	diags       diag.List
}

func list(name string, words []string) message.Arg {
	args := make([]message.Arg, len(words))
	for i, w := range words {
		args[i] = message.Text("", w)
	}
	return message.List(name, args...)
}

func wordList(name, prefix string, keys []string) message.Arg {
	args := make([]message.Arg, len(keys))
	for i, k := range keys {
		args[i] = message.Word("", prefix+k)
	}
	return message.List(name, args...)
}
