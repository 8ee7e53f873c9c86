// Package ceiling works out what a sheet can be worth at most, and how few
// sheets can do.
//
// In: the pieces that may lie on a sheet, in whole units with one kerf added to
// every piece and to the sheet, so that sizes simply add up; what each kind is
// worth; a meter. Out: tables of proven ceilings, for cutting in stages
// ([Stages]) and for any number of stages ([Raster]), the filling that reaches
// one, and the least number of sheets by dual feasible functions ([Sheets]).
// Ceilings let every kind be cut any number of times, so that a real filling is
// worth no more.
//
// The axes are x, along the strips of the first stage, and y, across them. All
// is exact, in whole numbers. The package knows neither the problem's parts nor
// any search.
package ceiling
