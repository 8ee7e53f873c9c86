// Package words puts messages into words: it is the one place where prose is.
//
// In: a [message.Message], a key with typed arguments. Out: text in a language,
// with the region's trade words (rebate or rabbet), lengths in the reader's
// units and denominator ([unit.Show]), money in the shop's currency. The package
// knows neither piece nor plan; other packages know no prose. A pseudo-language
// ([Pseudo]) is made from the English texts, so that a test can find prose that
// bypasses the catalogue ([Bypassed]).
//
// # How to add a text
//
// Texts stand in catalogue/SUBJECT.LANGUAGE.txt, one file per subject
// (findings, steps, diagnostics, labels, ...): add to the file of your subject,
// or begin a new one; nothing else has to be changed. A line is
//
//	key = text
//
// and a line that starts with # is a comment. A key is made of letters, digits,
// spaces, points and hyphens; it is written out in the Go source, where the tests
// look for it:
//
//	message.New("land-too-thin", message.Length("is", l), message.Count("n", n))
//
// In a text
//
//	{is}                   is the argument of that name, shown as its kind asks
//	{^is}                  the same with a capital
//	{n} {n:board|boards}   picks by the plural of the count n: in English the
//	                       first form is for one, the second for all other
//	{word.rebate}          is another entry, here the region's word
//	{n:{word.rebate}|{word.rebates}}   entries may stand in forms
//	\{ \} \| \\ \n         are a brace, a bar, a backslash, a new line
//
// A file SUBJECT.en-US.txt replaces single entries of the English catalogue for
// American readers. A line "@built prefix." says that the keys that start so are
// put together in code, or may stand unused; say in a comment where.
//
// The tests fail when a key in the product's sources has no entry, when a text
// wants an argument that the message does not have, when an entry is used
// nowhere, and when a line cannot be read. In a running program an unknown key
// or a missing argument shows as ⟦key⟧.
package words
