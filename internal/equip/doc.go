// Package equip turns a shop document into a shop, and finds in its rack what a
// material asks for.
//
// In: a shop document as read, and the maker of formulas to work it out with.
// Out: a shop.Shop ([Shop]); and, for an author's wording ("cherry board", "birch
// plywood 6"), the stock that answers ([Find]). What is wrong is reported with its
// place, and with what the rack has instead.
//
// A name that means several woods is decided by the rack, if it holds only one of
// them. Lengths are exact; a sheet is as thick as it measures, or as its standard
// says where nobody measured. The package must not know parts or pieces.
package equip
