// Package sag judges whether shelves, tops and bottoms bend under what they carry.
//
// An eye sees a sag of 1/32 in to the foot of span (common practice, no source; the rule
// of the house "sag to the foot" changes it): one that sags as far at once, under its contents or under the load that the house reckons with,
// is told. Where nothing says what a shelf carries, it is held against books at 50 lb to
// the square foot (Architectural Woodwork Standards, 2009): if it stands that it stands
// anything usual, and if not, what it carries must be said (unless a like one is told to sag
// under its contents: what helps that helps both). An upright holds up what is over it only
// where it stands firmly; on a board that bridges the same gap it goes down with that. Sag
// after years is told beside it. All are estimates, with the range that the wood has.
package sag
