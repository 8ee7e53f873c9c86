package season

import (
	"scantling/internal/address"
	"scantling/internal/analysis/check/verdict"
	"scantling/internal/diag"
	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// pairs judges parts that are joined across the grain, by what holds them: glue
// breaks, nails give; what floats or slides moves. Screws are judged by their slots. The first fault of a
// joint is told.
func (j *judge) pairs(all []plan.GrainPair) {
	limit := j.out.Limit("cross grain", verdict.Practice("check.cross-grain", unit.MM(100)))
	where := map[address.Address]diag.Place{}
	for _, g := range j.Piece.Joints {
		where[g.Address] = g.Where
	}
	told := map[address.Address]bool{}
	for _, p := range all {
		j.out.Judged()
		if told[p.Joint] || p.Verdict != plan.WillBreak && (p.Verdict != plan.Gives || p.Restraint != plan.Nailed) {
			continue
		}
		told[p.Joint] = true
		x := plan.Finding{Status: plan.Fail, Severity: diag.Error, Code: CodeCrossGrain, Address: p.Joint, Where: where[p.Joint], Is: verdict.Figure(p.Size), Limit: &limit.Figure, Source: limit.Source}
		key := "check.season.cross-grain"
		if p.Verdict == plan.Gives {
			x.Severity, x.Code, key = diag.Warning, CodeGives, "check.season.gives"
		}
		args := []message.Arg{message.Text("mark", j.out.Mark(p.Moves)), message.Text("other", j.out.Mark(p.Holds)), message.Length("is", p.Size.Nm), message.Length("limit", limit.Nm),
			message.Word("held", "held."+string(p.Restraint)), message.List("helps", remedies(p)...)}
		grows, _, mostGrows, known := p.Grows.Lengths()
		shrinks, _, mostShrinks, _ := p.Shrinks.Lengths()
		if known && p.Strain.Known() {
			key += "-by"
			x.Figures = []plan.Quantity{verdict.Quantity(plan.RoleIs, p.Strain)}
			x.Source += "; " + verdict.Cite(p.Strain.Source)
			args = append(args, message.LengthRounded("grows", grows, unit.Nearest), message.LengthRounded("shrinks", shrinks, unit.Nearest), message.LengthRounded("most", max(mostGrows, mostShrinks), unit.Up),
				message.Percent("strain", p.Strain.Value.Float()))
		}
		x.Text = message.New(key, args...)
		j.out.Add(x, p.Moves, p.Holds)
	}
}

// remedies are the words for what would help, best first.
func remedies(p plan.GrainPair) []message.Arg {
	var out []message.Arg
	for _, r := range p.Remedies {
		out = append(out, message.Word("", "helps."+r))
	}
	return out
}
