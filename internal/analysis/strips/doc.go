// Package strips chooses of which strips panels are glued up, together with the
// boards that all is cut from.
//
// In: the panels with the ways in which each may be shared out (package blanks), and
// a function that says what boards it takes if they are shared out so: the cutting
// analysis asks its engine. Out: a layout by mark, none where equal strips stay, and
// what was gained over equal strips.
//
// First all panels are tried alike (all as wide as the boards give, all as wide as
// leaves room beside them or two abreast): where two rests share a board, neither alone
// saves it. Then each panel is tried in turn, the largest first, until nothing is gained
// or the questions that may be asked are used up. A change is taken only if it is
// better ([Score.Better]) and at last only if boards or money come of it: equal strips
// are the rule, since they cup alike, are ripped at one setting and look like one plank.
//
// The search is exact in what it counts and makes no promise that nothing better is
// to be had. It knows no boards, no saw and no engine.
package strips
