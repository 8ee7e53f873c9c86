// Package record holds the as-built record: what was measured, cut and spoiled.
//
// In: a journal of entries, one a line, as the maker or the app appended them,
// and the fingerprints of what is there now. Out: the readings and cuts that
// still fit what they were taken from ([Place]), and those that no longer do,
// which are kept and told, never applied.
//
// An [Entry] is of one address and one thing: a reading ("width front" of a
// space is 381.4 mm), a cut (the part is cut, with the sizes as cut, which are
// from then on frozen) or a spoiled part, which takes back what was recorded of
// it before. A fingerprint is a short text that whoever records computes from
// what was measured, as planned then; where it is another now, the thing is
// another thing of the same name. Lengths are exact. The package knows neither
// piece nor plan.
package record
