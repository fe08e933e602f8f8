package turntable

// Words are the texts of the page that do not come from the job.
type Words struct {
	Bag    string // what the picture shows, before the title of a page that is not described
	Turn   string // how to turn the bag
	Views  string // what the links to the views are together
	Slant  string // the view at an angle
	Front  string
	Right  string
	Back   string
	Left   string
	Above  string
	Excuse string // beside the still picture, where the bag cannot be turned

	Colours string // heading of the swatches
	Printer string // before their values
	Open    string // heading of stops and notes
	Must    string // above the stops
	May     string // above the notes

	Approval       string // heading of what is filled in
	HowToApprove   string
	Changes        string // entry
	Yes            string // choices
	YesWithChanges string
	No             string
	Name           string // entries
	Date           string
	Signature      string
	Print          string // button
}

// English returns the words in English.
func English() Words {
	return Words{
		Bag: "The folded bag", Turn: "Drag or press the arrow keys to turn, pinch or scroll to zoom", Views: "Views",
		Slant: "At an angle", Front: "Front", Right: "Right", Back: "Back", Left: "Left", Above: "From above",
		Excuse:  "Turning the bag needs a newer browser. This is a still picture.",
		Colours: "Colours", Printer: "For the printer", Open: "Still open",
		Must: "Must be solved before the bag can be made", May: "To be decided, or accepted as it is",
		Approval: "Approval", HowToApprove: "Fill in, then print or save as PDF. Nothing is sent.",
		Changes: "Changes and remarks", Yes: "Approved", YesWithChanges: "Approved with the changes above",
		No:   "Not approved: please show it again",
		Name: "Name and company", Date: "Date", Signature: "Signature", Print: "Print",
	}
}
