package window

import (
	"runtime"
	"testing"
	"time"

	"fyne.io/fyne/v2"
)

// BenchmarkMeetingDrag is one step of a slider in the meeting view, on a whole screen:
// spec to the picture of the bag, alone and beside three variants.
func BenchmarkMeetingDrag(b *testing.B) {
	for name, compared := range map[string]bool{"alone": false, "beside-variants": true} {
		b.Run(name, func(b *testing.B) {
			w, _ := benchWindow(b)
			w.window.Resize(fyne.NewSize(1920, 1080))
			spec := w.doc.State().Spec
			w.toggleMeeting()
			if compared {
				for i := range 3 {
					w.doc.Set(another(spec, 20*(i+1)))
					w.meeting.TypedRune('k')
				}
				w.meeting.TypedRune('c')
			}
			drawn := func() {
				for ordered, shown := w.meeting.Pictures(); shown < ordered; ordered, shown = w.meeting.Pictures() {
					runtime.Gosched()
				}
			}
			w.doc.Drag(another(spec, 1)) // the other variants come to rest
			drawn()
			time.Sleep(time.Second)
			var took times
			b.ReportAllocs()
			for i := 1; b.Loop(); i++ {
				start := time.Now()
				w.doc.Drag(another(spec, i))
				drawn()
				took = append(took, time.Since(start))
			}
			took.report(b, "")
		})
	}
}
