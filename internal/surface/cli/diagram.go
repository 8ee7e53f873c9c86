package cli

import (
	"fmt"
	"io"
	"strings"

	"scantling/internal/message"
	"scantling/internal/optimise/account"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/written"
	"scantling/internal/output/sums"
	"scantling/internal/unit"
	"scantling/internal/words"
)

// printAnswer prints the diagrams of an answer, then what it costs and how near
// that is to the least possible.
func printAnswer(out io.Writer, q written.Question, a problem.Answer) {
	s := sawyer{out: out, say: plain(), q: q}
	if q.Problem.Name != "" {
		fmt.Fprintln(out, q.Problem.Name)
	}
	for i, d := range a.Diagrams {
		s.diagram(i+1, d)
	}
	s.settings(a)
	s.account(account.Of(q.Problem, a))
	s.verdict(a)
}

// sawyer prints diagrams as a list of saw cuts.
type sawyer struct {
	out io.Writer
	say *words.Words
	q   written.Question
	cut int
}

func (s *sawyer) print(indent int, key string, args ...message.Arg) {
	fmt.Fprintf(s.out, "%s%s\n", strings.Repeat("  ", indent), s.say.Say(message.New(key, args...)))
}

func (s *sawyer) length(l unit.Length) string { return sums.Exact(s.q.Unit, l, false) }

// size writes the size of a piece, without a width for boards.
func (s *sawyer) size(of problem.Size) string {
	if s.q.Problem.Form == problem.Boards {
		return s.length(of.Length)
	}
	return s.length(of.Length) + " × " + s.length(of.Width)
}

func (s *sawyer) diagram(n int, d problem.Diagram) {
	stock := s.q.Problem.Stock[d.Stock]
	s.print(0, "cut.diagram", message.Count("n", n), message.Text("stock", called(stock.ID, "#", d.Stock)),
		message.Text("size", s.size(stock.Size)), message.Text("unit", string(s.q.Unit)), message.Count("copies", d.Copies))
	for _, t := range []struct {
		key  string
		trim unit.Length
	}{
		{"cut.trim-start", stock.Trim.Start}, {"cut.trim-end", stock.Trim.End},
		{"cut.trim-low", stock.Trim.Low}, {"cut.trim-high", stock.Trim.High},
	} {
		if t.trim > 0 {
			s.print(1, t.key, message.Text("by", s.length(t.trim)))
		}
	}
	s.cut = 0
	s.piece(d.Root, 1)
}

// piece prints the sawing of a piece: each cut with what falls off on its near
// side, which is sawn up before the rest, one step further in.
func (s *sawyer) piece(n *problem.Node, indent int) {
	for ; n != nil && n.Kind == problem.Sawn; n = n.Far {
		s.cut++
		key := "cut.crosscut"
		if n.Direction == problem.Rip {
			key = "cut.rip"
		}
		at := message.Text("at", s.length(n.At))
		switch {
		case n.Near == nil:
			s.print(indent, "cut.trim", message.Count("n", s.cut), message.Word("cut", key), message.Text("by", s.length(n.At+s.q.Problem.Kerf)))
		case n.Near.Kind == problem.Sawn:
			s.print(indent, "cut.cut", message.Count("n", s.cut), message.Word("cut", key), at,
				message.Text("off", s.say.Label("cut.strip", message.Text("size", s.size(n.Near.Size)))))
			s.piece(n.Near, indent+1)
		default:
			s.print(indent, "cut.cut", message.Count("n", s.cut), message.Word("cut", key), at, message.Text("off", s.leaf(n.Near)))
		}
	}
	if n != nil {
		s.print(indent, "cut.rest", message.Text("what", s.leaf(n)))
	}
}

// leaf says what a piece that is not sawn further is.
func (s *sawyer) leaf(n *problem.Node) string {
	size := message.Text("size", s.size(n.Size))
	switch n.Kind {
	case problem.Finished:
		key := "cut.part"
		if n.Turned {
			key = "cut.part-turned"
		}
		return s.say.Say(message.New(key, message.Text("id", called(s.q.Problem.Parts[n.Part].ID, "#", n.Part)), size))
	case problem.Remnant:
		return s.say.Label("cut.remnant", size)
	}
	return s.say.Label("cut.waste", size)
}

// called is a name, or the number of what has none.
func called(id, sign string, i int) string {
	if id != "" {
		return id
	}
	return fmt.Sprint(sign, i+1)
}

// settings prints what the saw is set to over all diagrams, each setting once.
func (s *sawyer) settings(a problem.Answer) {
	rips, stops := a.Settings()
	for _, t := range []struct {
		key   string
		sizes []unit.Length
	}{{"cut.rip-settings", rips}, {"cut.stop-settings", stops}} {
		var said []string
		for _, l := range t.sizes {
			said = append(said, s.length(l))
		}
		if len(said) > 0 {
			s.print(0, t.key, message.Count("n", len(said)), texts("sizes", said))
		}
	}
}

// account prints where the stock goes, in percent that add up.
func (s *sawyer) account(a account.Account) {
	percent := func(thousandths int) string { return s.say.Number(float64(thousandths)/10, 1) }
	var terms []string
	for i, n := range a.Shares() {
		if n > 0 {
			terms = append(terms, s.say.Label(accountTerms[i], message.Text("by", percent(n))))
		}
	}
	args := []message.Arg{texts("terms", terms)}
	if n, ok := a.UnavoidableShare(); ok {
		s.print(0, "cut.account-least", append(args, message.Text("least", percent(n)))...)
		return
	}
	s.print(0, "cut.account", args...)
}

// accountTerms are the words for [account.Account.Shares].
var accountTerms = [6]string{"cut.of-parts", "cut.of-kerf", "cut.of-trim", "cut.of-defects", "cut.of-remnant", "cut.of-rest"}

// verdict prints cost, bound, status and work.
func (s *sawyer) verdict(a problem.Answer) {
	amount := func(c problem.Cost) string {
		if s.q.Priced || s.q.Problem.Goal == problem.MostValue {
			return s.say.Money(int64(c))
		}
		return fmt.Sprint(c)
	}
	pieces := 0
	for _, d := range a.Diagrams {
		pieces += d.Copies
	}
	cost, bound := message.Text("cost", amount(a.Cost)), message.Text("bound", amount(a.Bound))
	proof := message.Word("proof", "cut.proof-"+a.Proof.String())
	n := message.Count("n", pieces)
	switch {
	case s.q.Problem.Goal == problem.MostValue && a.Status == problem.Proved:
		s.print(0, "cut.value-proved", cost, proof)
	case s.q.Problem.Goal == problem.MostValue:
		s.print(0, "cut.value", cost, bound, proof)
	case a.Status == problem.Proved && s.q.Priced:
		s.print(0, "cut.cost-proved", n, cost, proof)
	case s.q.Priced:
		s.print(0, "cut.cost", n, cost, bound, proof)
	case a.Status == problem.Proved:
		s.print(0, "cut.count-proved", n, proof)
	default:
		s.print(0, "cut.count", n, bound, proof)
	}
	s.print(0, "cut.status", message.Word("status", "cut.status-"+a.Status.String()), message.Text("work", fmt.Sprint(a.Work)))
}
