package turntable_test

import (
	"image/color"
	"testing"
)

// On a desk and on a phone, by day and by night, nothing sticks out to the side, the bag
// is seen above the fold, and every text has the contrast of WCAG 2.2 against its ground.
func TestLayout(t *testing.T) {
	b := openBrowser(t, true)
	page := written(t, demo(t).page)
	for _, screen := range []struct {
		name          string
		width, height int
		scheme        string
	}{{"desk", 1280, 800, "light"}, {"phone", 390, 844, "light"}, {"small phone", 320, 568, "dark"}, {"phone on its side", 740, 360, "dark"}} {
		t.Run(screen.name, func(t *testing.T) {
			b.t = t
			b.screen(screen.width, screen.height, 1, screen.scheme)
			b.open(page, "")
			b.shot()
			r := b.room()
			if r.Top+r.Height > float64(screen.height) || r.Width < 0.6*float64(screen.width) || r.Height < 0.3*float64(screen.height) {
				t.Errorf("the bag has %+v of %d × %d", r, screen.width, screen.height)
			}
			var got struct {
				Wide  float64
				Small []string
			}
			b.evaluate(`({
				Wide: document.documentElement.scrollWidth,
				Small: Array.from(document.querySelectorAll("a, button")).filter((e) => {
					const box = e.getBoundingClientRect();
					return box.height < 24 || box.width < 24;
				}).map((e) => e.textContent),
			})`, &got)
			if got.Wide > float64(screen.width) {
				t.Errorf("the page is %g pixels wide", got.Wide)
			}
			if len(got.Small) > 0 { // WCAG 2.2, success criterion 2.5.8: 24 by 24 pixels
				t.Errorf("too small to hit: %q", got.Small)
			}
			var faint []string
			b.evaluate(faintTexts, &faint)
			if len(faint) > 0 {
				t.Errorf("hard to read: %q", faint)
			}
		})
	}
	b.quiet()
}

// faintTexts lists the texts on plain ground with a contrast ratio below 4.5 (WCAG 2.2,
// success criterion 1.4.3, reckoned as in its definition of contrast ratio).
const faintTexts = `(() => {
	const parts = (c) => c.match(/[\d.]+/g).map(Number);
	const light = (c) => {
		const [r, g, b] = parts(c).map((v) => v / 255).map((v) => v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4));
		return 0.2126 * r + 0.7152 * g + 0.0722 * b;
	};
	const groundOf = (e) => {
		for (; e; e = e.parentElement) {
			const c = getComputedStyle(e).backgroundColor, p = parts(c);
			if (p.length < 4 || p[3] > 0.7) {
				return c;
			}
		}
		return "rgb(255, 255, 255)";
	};
	return Array.from(document.querySelectorAll("h1, h2, h3, dt, dd, li span, .notes li, .sheet p, .values span, label span, a, button")).filter((e) => {
		const a = light(getComputedStyle(e).color), b = light(groundOf(e));
		return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05) < 4.5;
	}).map((e) => e.textContent);
})()`

// Any accent can be read by day and by night.
func TestAccentsCanBeRead(t *testing.T) {
	b := openBrowser(t, true)
	for _, accent := range []color.RGBA{{255, 255, 0, 255}, {0, 0, 40, 255}, {255, 255, 255, 255}, {250, 120, 160, 255}} {
		p := plainJob()
		p.Accent = accent
		page := written(t, p)
		for _, scheme := range []string{"light", "dark"} {
			b.screen(640, 480, 1, scheme)
			b.open(page, "")
			var faint []string
			b.evaluate(faintTexts, &faint)
			if len(faint) > 0 {
				t.Errorf("accent %v, %s: hard to read: %q", accent, scheme, faint)
			}
		}
	}
}
