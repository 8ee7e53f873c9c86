// Package account explains the waste of an answer: where the stock that was taken
// has gone.
//
// In: a problem and an answer to it. Out: an [Account] whose terms add up to the
// whole exactly: nanometres for boards, square nanometres for sheets. The package
// solves nothing and trusts the diagrams that it is given.
package account
