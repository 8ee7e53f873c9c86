package screen

// State is everything that the pages show of one piece.
type State struct {
	// Revision names the documents that the state was made from.
	Revision string `json:"revision"`
	File     string `json:"file"`
	// Words are the pages' own labels by key.
	Words map[string]string `json:"words"`
	// Stale says that the document as it stands cannot be planned; what is shown is
	// the last plan that could be made, and Diagnostics say why.
	Stale       bool         `json:"stale"`
	Diagnostics []Diagnostic `json:"diagnostics"`
	// Undo and Redo say what would be undone or done again; "" for nothing.
	Undo string `json:"undo"`
	Redo string `json:"redo"`

	Piece    Piece     `json:"piece"`
	Inputs   []Input   `json:"inputs"`
	Tally    []Tally   `json:"tally"`
	Findings []Finding `json:"findings"`
	Tables   Tables    `json:"tables"`
	Cost     []Fact    `json:"cost"`
	Rows     []Sum     `json:"rows"`
	Diagrams []Diagram `json:"diagrams"`
	Parts    []Part    `json:"parts"`
	Objects  []Object  `json:"objects"`
	Setups   []Setup   `json:"setups"`
	Steps    []Step    `json:"steps"`
	Measures []Measure `json:"measures"`
	Views    Views     `json:"views"`
	Unplaced []string  `json:"unplaced"`
}

// Piece is what the plan is of.
type Piece struct {
	Name  string `json:"name"`
	About string `json:"about"`
	Shop  string `json:"shop"`
	// Units says in words what sizes are in.
	Units string `json:"units"`
	// Overall are the sizes of the whole: wide, deep, high.
	Overall []Fact `json:"overall"`
}

// Fact is a figure with its name.
type Fact struct {
	Label string `json:"label"`
	Value string `json:"value"`
}

// Kind is how an input is set.
type Kind string

// The kinds of input.
const (
	LengthInput Kind = "length"
	CountInput  Kind = "count"
	ChoiceInput Kind = "choice"
	YesInput    Kind = "yes"
	OtherInput  Kind = "other" // shown only
)

// Input is one thing that the maker may change.
type Input struct {
	Name  string `json:"name"`
	Label string `json:"label"`
	Help  string `json:"help"`
	Kind  Kind   `json:"kind"`
	// Value is the value in force as the field shows it, Shown the same with its
	// unit in the reader's system.
	Value string `json:"value"`
	Shown string `json:"shown"`
	// Unit is what a bare number in the field counts in; "" if it has none.
	Unit string `json:"unit"`
	// Limits says in words between which values it may lie; "" if any will do.
	Limits string `json:"limits"`
	// Stops are the values that steppers go through, At the place of the present
	// value among them (between two where it is none of them).
	Stops   []Stop  `json:"stops"`
	At      float64 `json:"at"`
	Choices []Stop  `json:"choices"`
	// Origin says in words who gave the value.
	Origin string `json:"origin"`
}

// Stop is a value that an input may take: what to send, and how it is shown.
type Stop struct {
	Value string `json:"value"`
	Shown string `json:"shown"`
}

// Sign is how a finding is marked besides its colour.
type Sign string

// The signs.
const (
	StopSign  Sign = "stop"  // ■ must not be built so
	CheckSign Sign = "check" // ▲ look at it
	NoteSign  Sign = "note"  // ● not known, or worth knowing
	RightSign Sign = "right" // ✓
	IdleSign  Sign = "idle"  // – nothing to judge
)

// Tally counts the findings of one sign.
type Tally struct {
	Sign  Sign   `json:"sign"`
	Count int    `json:"count"`
	Word  string `json:"word"`
}

// Finding is what a check says.
type Finding struct {
	ID    string `json:"id"`
	Check string `json:"check"`
	Sign  Sign   `json:"sign"`
	// Word is the sign's word: colour and shape never stand alone.
	Word     string   `json:"word"`
	Status   string   `json:"status"`
	Severity string   `json:"severity"`
	Text     string   `json:"text"`
	Address  string   `json:"address"`
	Marks    []string `json:"marks"`
	// Near are the ids of set-ups and steps that it concerns; Page the page where
	// it is shown first.
	Near []string `json:"near"`
	Page string   `json:"page"`
	// Figures are the quantities that it rests on, in one line; Source says where
	// they come from and who may change the limit.
	Figures  string   `json:"figures"`
	Source   string   `json:"source"`
	Remedies []Remedy `json:"remedies"`
}

// Remedy is one way out. It can be applied if Applies.
type Remedy struct {
	ID      string `json:"id"`
	Text    string `json:"text"`
	Applies bool   `json:"applies"`
}

// Diagnostic is what is wrong in a document.
type Diagnostic struct {
	Sign     Sign     `json:"sign"`
	Word     string   `json:"word"`
	Code     string   `json:"code"`
	Text     string   `json:"text"`
	Where    string   `json:"where"`
	Remedies []Remedy `json:"remedies"`
}

// Table is a list as it is printed.
type Table struct {
	Title   string     `json:"title"`
	Columns []Column   `json:"columns"`
	Rows    [][]string `json:"rows"`
	// Groups are headings, in the order of their rows.
	Groups []Heading `json:"groups"`
}

// Heading stands above the row of that number, counted from 0.
type Heading struct {
	At    int    `json:"at"`
	Title string `json:"title"`
}

// Column is a heading; figures stand at the right.
type Column struct {
	Heading string `json:"heading"`
	Number  bool   `json:"number"`
}

// Tables are the plan's lists.
type Tables struct {
	Stages []Stage `json:"stages"`
	// Signs says what the signs of the staged list mean.
	Signs   string `json:"signs"`
	Buying  Table  `json:"buying"`
	Tools   Table  `json:"tools"`
	Joints  Table  `json:"joints"`
	Held    Table  `json:"held"`
	Stowed  Table  `json:"stowed"`
	Seasons Table  `json:"seasons"`
	// Second are the parts in the other system of an edition in both; else empty.
	Second Table `json:"second"`
}

// Stage is what may be cut at one time.
type Stage struct {
	ID     string `json:"id"`
	Title  string `json:"title"`
	Parts  Table  `json:"parts"`
	Blanks Table  `json:"blanks"`
}

// Sum is a sum that closes.
type Sum struct {
	Title string `json:"title"`
	Terms []Term `json:"terms"`
	Total string `json:"total"`
	// Alike are the titles of further sums with the same terms.
	Alike []string `json:"alike"`
}

// Term is one term of a sum. Count is how often it stands there in a row.
type Term struct {
	Word   string `json:"word"`
	Figure string `json:"figure"`
	Minus  bool   `json:"minus"`
	Count  int    `json:"count"`
}

// Diagram is how one board or sheet is cut up.
type Diagram struct {
	ID      string `json:"id"`
	Label   string `json:"label"`
	Count   int    `json:"count"`
	SVG     string `json:"svg"`
	Caption string `json:"caption"`
	// Bound says how good the answer is; on the first diagram of its stock only.
	Bound string   `json:"bound"`
	Marks []string `json:"marks"`
}

// Part is one row of the part list with its drawing.
type Part struct {
	Mark      string   `json:"mark"`
	Name      string   `json:"name"`
	Quantity  int      `json:"quantity"`
	Members   []string `json:"members"`
	Material  string   `json:"material"`
	Stage     string   `json:"stage"`
	Length    string   `json:"length"`
	Width     string   `json:"width"`
	Thickness string   `json:"thickness"`
	Basis     string   `json:"basis"`
	SVG       string   `json:"svg"`
	Caption   string   `json:"caption"`
	Cuts      Table    `json:"cuts"`
}

// Object is one part as it stands in the 3-D view.
type Object struct {
	Address string `json:"address"`
	Mark    string `json:"mark"`
	Name    string `json:"name"`
	// Pull is how many steps it moves to the front when the piece is drawn apart.
	Pull int `json:"pull"`
}

// Setup is one set-up card.
type Setup struct {
	N          int         `json:"n"`
	ID         string      `json:"id"`
	Title      string      `json:"title"`
	Machine    string      `json:"machine"`
	Speed      string      `json:"speed"`
	Settings   []Setting   `json:"settings"`
	Placements []Placement `json:"placements"`
	TestPiece  string      `json:"testPiece"`
	Device     string      `json:"device"`
	// Shared says that passes are made place by place of the fence; "" where rows share none.
	Shared   string   `json:"shared"`
	Cautions []string `json:"cautions"`
	Sums     []Sum    `json:"sums"`
	// SVG shows the work along the feed, Above from above; "" where there is none.
	SVG     string `json:"svg"`
	Above   string `json:"above"`
	Caption string `json:"caption"`
}

// Setting is one figure to set.
type Setting struct {
	Word   string   `json:"word"`
	Figure string   `json:"figure"`
	Passes []string `json:"passes"`
}

// Placement is one way of offering the work, for all parts that are offered alike.
type Placement struct {
	N        int       `json:"n"`
	Marks    []string  `json:"marks"`
	Pieces   int       `json:"pieces"`
	Settings []Setting `json:"settings"`
	Offer    string    `json:"offer"`
	Notes    []string  `json:"notes"`
	Sums     []Sum     `json:"sums"`
}

// Step is one line of the sequence.
type Step struct {
	N        int      `json:"n"`
	ID       string   `json:"id"`
	Chapter  string   `json:"chapter"`
	Text     string   `json:"text"`
	More     []string `json:"more"`
	Cautions []string `json:"cautions"`
	Setups   []string `json:"setups"`
	Measures []string `json:"measures"`
	Wait     string   `json:"wait"`
	Hands    string   `json:"hands"`
	Marks    []string `json:"marks"`
}

// Measure is one thing to take from the work.
type Measure struct {
	Address  string    `json:"address"`
	Label    string    `json:"label"`
	Marks    []string  `json:"marks"`
	Readings []Reading `json:"readings"`
}

// Reading is one figure to take: of what, which, what is expected, what was found.
type Reading struct {
	Of      string `json:"of"`
	What    string `json:"what"`
	Word    string `json:"word"`
	Planned string `json:"planned"`
	Found   string `json:"found"`
}

// Views are drawings of the whole, for browsers without three dimensions.
type Views struct {
	Isometric string `json:"isometric"`
}

// Fault is the server's answer to what it did not do.
type Fault struct {
	// Text says what was wrong and what to do; Diagnostics say where.
	Text        string       `json:"text"`
	Diagnostics []Diagnostic `json:"diagnostics"`
	// State is the present state, where the request was made for another one.
	State *State `json:"state"`
}
