package press

// LabelBox is the box that surely holds a label.
var LabelBox = labelBox
