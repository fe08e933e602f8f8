package proof

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"

	"gussetwright/app/document"
)

// sumLength is how many digits of the sum a version shows: enough that two states of
// one bag hardly share it, few enough to be read out.
const sumLength = 6

// versionOf names a state of a bag by a sum over all that is entered and all artwork.
// The day is not in the sum, as saving the bag sets it without changing anything else.
func versionOf(snapshot *document.Snapshot) string {
	spec := snapshot.Spec
	spec.Date = ""
	sum := sha256.New()
	if err := json.NewEncoder(sum).Encode(spec); err != nil {
		fmt.Fprintf(sum, "%+v", spec) // no number in a bag that was validated keeps JSON from holding it
	}
	for _, hanging := range snapshot.Hung {
		if hanging.Art != nil && len(hanging.Art.Levels) > 0 {
			finest := hanging.Art.Levels[0]
			fmt.Fprintln(sum, hanging.Art.Name, finest.Rect)
			sum.Write(finest.Pix)
		}
	}
	sum.Write(snapshot.Profile)
	return hex.EncodeToString(sum.Sum(nil))[:sumLength]
}
