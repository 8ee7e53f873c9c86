package web

import (
	"bytes"
	"context"
	"errors"
	"slices"
	"strings"

	"scantling"
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/record"
	"scantling/internal/unit"
)

// trial is a world whose writes are kept back.
type trial struct{ *noted }

// Write implements world.World.
func (t trial) Write(name string, data []byte) error {
	t.instead[name] = bytes.Clone(data)
	return nil
}

// Record adds a reading that the plan asks for to the as-built record and plans
// anew. A reading that the plan cannot be made with is not written.
func (d *Desk) Record(ctx context.Context, of, what, value string) error {
	d.planning.Lock()
	defer d.planning.Unlock()
	if err := d.look(ctx); err != nil {
		return err
	}
	asked := slices.ContainsFunc(d.now.Load().good.Plan.Measures, func(m plan.Measure) bool {
		return slices.ContainsFunc(m.Readings, func(r plan.Reading) bool { return string(r.Of) == of && r.What == what })
	})
	value = strings.TrimSpace(value)
	switch {
	case !asked:
		return refuse("server.no-reading")
	case value == "":
		return refuse("server.empty")
	case len(value) > mostValue:
		return refuse("server.no-value", message.Text("value", strings.ToValidUTF8(value[:mostValue], "\uFFFD")))
	}
	src := note(d.world, map[string][]byte{})
	var bad *unit.ParseError
	switch _, err := scantling.Record(ctx, trial{src}, d.file, scantling.Note{Of: of, What: what, Value: strings.Replace(value, ",", ".", 1)}); {
	case errors.As(err, &bad):
		return refuse("server.bad-reading", message.Text("value", value), message.Word("why", "length-fault."+string(bad.Fault)))
	case err != nil:
		return err
	}
	r, err := scantling.Plan(ctx, src, d.file, scantling.Options{})
	if err != nil {
		return err
	}
	if r.Plan.Diagnostics.HasErrors() {
		return &refusal{text: message.New("server.not-taken"), diags: onlyErrors(r.Plan.Diagnostics)}
	}
	if err := d.write(src); err != nil {
		return err
	}
	return d.lay(r, src)
}

// found returns the readings of the record, the last of each thing, without
// those that the plan calls unplaced.
func (d *Desk) found(on *shown) map[[2]string]unit.Length {
	entries, _, err := record.Read(on.sources.read[scantling.RecordName(d.file)])
	if err != nil {
		return nil // the plan could not be made with it either
	}
	out := map[[2]string]unit.Length{}
	for _, e := range entries {
		of := string(e.Address)
		if l, ok := e.Value.Length(); ok && e.Kind == record.Reading && !slices.Contains(on.good.Plan.Unplaced, of) {
			out[[2]string{of, e.What}] = l
		}
	}
	return out
}
