package vector

import (
	"bytes"
	"encoding/base64"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
	"strings"
)

// drawing is a made-up drawing for the tests. What librsvg 2.54 does not know is not
// compared with it; it is looked for in TestBySpecification.
type drawing struct{ name, svg string }

// unknownToLibrsvg are the drawings whose names are here.
var unknownToLibrsvg = map[string]bool{"clips of clips": true}

const head = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" `

// drawings are compared with what other programs make of them, each of them with one
// matter in it.
func drawings() []drawing {
	list := []drawing{
		{"arcs", head + `width="120mm" height="80mm" viewBox="0 0 120 80">
<path d="M10 40a20 12 0 1 1 30 0z" fill="#c33"/><path d="M50 40A20 12 30 0 0 80 30L70 60Z" fill="#393"/>
<path d="M90 20a5 5 0 0120 0 5 5 0 01-20 0" fill="#339"/><path d="M90 60 a1 1 0 0 1 20 4" fill="none" stroke="#000"/>
<path d="M20 60a8 4-20 01.5.5a8 4-20 101 8" fill="none" stroke="#808" stroke-width="2"/></svg>`},
		{"joins", head + `width="120mm" height="80mm" viewBox="0 0 120 80" fill="none" stroke="#124" stroke-width="6">
<path d="M10 30L25 10L40 30"/><path d="M50 30L65 10L80 30" stroke-linejoin="round" stroke-linecap="round"/>
<path d="M90 30L100 10L110 30" stroke-linejoin="bevel" stroke-linecap="square"/>
<path d="M10 60L40 55L10 50" stroke-width="3" stroke-miterlimit="20"/><path d="M50 60L80 55L50 50" stroke-width="3"/>
<path d="M90 50h20v20h-20z" stroke-width="4"/><path d="M60 72h0" stroke-linecap="round"/><path d="M70 72h0z" stroke-linecap="square"/>
<path d="M20 70C60 90-10 90 30 70" stroke-width="3"/></svg>`},
		{"dashes", head + `width="120mm" height="80mm" viewBox="0 0 120 80" fill="none" stroke="#000" stroke-width="3">
<path d="M5 10H115" stroke-dasharray="8 4"/><path d="M5 20H115" stroke-dasharray="8 4 2" stroke-dashoffset="5"/>
<path d="M5 30H115" stroke-dasharray="0 6" stroke-linecap="round"/><path d="M5 40H115" stroke-dasharray="10,5" stroke-dashoffset="-7" stroke-linecap="square"/>
<circle cx="30" cy="60" r="14" stroke-dasharray="9 5"/><rect x="60" y="48" width="40" height="24" stroke-dasharray="12 6" stroke-dashoffset="-3" stroke="#06a"/></svg>`},
		{"linear gradients", head + `width="120mm" height="80mm" viewBox="0 0 120 80"><defs>
<linearGradient id="a"><stop stop-color="#f00"/><stop offset="50%" stop-color="#ff0"/><stop offset="1" stop-color="#00f"/></linearGradient>
<linearGradient id="b" xlink:href="#a" x1="0" x2="0" y2="1"/>
<linearGradient id="c" gradientUnits="userSpaceOnUse" x1="70" y1="10" x2="90" y2="30" href="#a"/>
<linearGradient id="d" gradientTransform="rotate(45 .5 .5)"><stop offset=".3" stop-color="teal"/><stop offset=".3" stop-color="pink"/><stop offset=".8" stop-color="#fff" stop-opacity="0"/></linearGradient></defs>
<rect x="5" y="5" width="25" height="30" fill="url(#a)"/><circle cx="47" cy="20" r="14" fill="url(#b)"/><rect x="65" y="5" width="40" height="30" fill="url(#c)"/>
<ellipse cx="35" cy="58" rx="30" ry="18" fill="url(#d)" fill-opacity=".6"/><path d="M75 70L90 45L110 70" fill="none" stroke="url(#b)" stroke-width="8" stroke-linejoin="round" opacity=".7"/></svg>`},
		{"radial gradients", head + `width="120mm" height="80mm" viewBox="0 0 120 80"><defs>
<radialGradient id="a"><stop stop-color="#fff"/><stop offset="1" stop-color="#063"/></radialGradient>
<radialGradient id="b" fx=".25" fy=".3" href="#a"/><radialGradient id="c" cx="90" cy="60" r="20" gradientUnits="userSpaceOnUse" gradientTransform="matrix(1 .3 0 .6 0 0)"><stop offset=".2" stop-color="gold" stop-opacity=".9"/><stop offset="1" stop-color="navy" stop-opacity=".3"/></radialGradient></defs>
<rect x="5" y="5" width="50" height="30" fill="url(#a)"/><circle cx="85" cy="20" r="16" fill="url(#b)"/>
<rect x="60" y="40" width="55" height="36" fill="url(#c)"/><circle cx="30" cy="58" r="15" fill="none" stroke-width="6" stroke="url(#a)"/></svg>`},
		{"clips", head + `width="120mm" height="80mm" viewBox="0 0 120 80"><defs>
<clipPath id="a"><circle cx="25" cy="25" r="18"/><rect x="10" y="20" width="45" height="10"/></clipPath>
<clipPath id="b" clipPathUnits="objectBoundingBox"><path d="M.5 0L1 1H0z"/></clipPath>
<clipPath id="e"><path clip-rule="evenodd" d="M70 45h40v30h-40zM80 50v20h20v-20z"/></clipPath></defs>
<g clip-path="url(#a)"><rect width="60" height="60" fill="#e80"/><path d="M0 0L60 60" stroke="#40a" stroke-width="8"/></g>
<g clip-path="url(#b)"><rect x="65" y="5" width="20" height="30" fill="#0a6"/><rect x="85" y="5" width="25" height="30" fill="#a06"/></g>
<rect x="60" y="40" width="60" height="40" fill="#05a" clip-path="url(#e)"/></svg>`},
		{"clips of clips", head + `width="120mm" height="80mm" viewBox="0 0 120 80"><defs><linearGradient id="g"><stop stop-color="#083"/><stop offset="1" stop-color="#fd0" stop-opacity=".4"/></linearGradient>
<clipPath id="a" clip-path="url(#e)"><rect x="5" y="5" width="50" height="30"/></clipPath><clipPath id="e"><ellipse cx="35" cy="20" rx="26" ry="12" transform="rotate(-15 35 20)"/></clipPath>
<clipPath id="b"><rect x="65" y="5" width="50" height="30" clip-path="url(#f)"/><circle cx="70" cy="40" r="10"/></clipPath><clipPath id="f"><circle cx="90" cy="20" r="18"/><rect x="65" y="25" width="50" height="8"/></clipPath></defs>
<rect width="60" height="40" fill="#333" clip-path="url(#a)"/><g clip-path="url(#b)"><rect x="60" width="60" height="80" fill="url(#g)" opacity=".8"/><circle cx="90" cy="20" r="10" fill="#fd0"/></g>
<g clip-path="url(#f)" transform="translate(-60 42)"><g clip-path="url(#b)" opacity=".5"><rect x="60" width="60" height="40" fill="#a00"/><rect x="80" width="10" height="40"/></g></g></svg>`},
		{"groups", head + `width="120mm" height="80mm" viewBox="0 0 120 80"><radialGradient id="a"><stop stop-color="#fff"/><stop offset="1" stop-color="#000"/></radialGradient><rect y="30" width="120" height="14" fill="#555"/>
<g opacity=".5"><circle cx="25" cy="25" r="18" fill="red"/><circle cx="40" cy="40" r="18" fill="blue"/></g>
<rect x="70" y="15" width="35" height="35" fill="lime" stroke="#000" stroke-width="8" opacity=".6"/>
<g opacity=".8"><g opacity=".5"><rect x="20" y="55" width="40" height="20" fill="#f0f"/><rect x="30" y="50" width="10" height="28" fill="url(#a)"/></g><rect x="50" y="60" width="50" height="10" fill="#0aa"/></g>
<rect x="80" y="52" width="30" height="25" fill="#fa0" fill-opacity=".5" stroke="#00f" stroke-opacity=".4" stroke-width="6"/></svg>`},
		{"use", head + `width="120mm" height="80mm" viewBox="0 0 120 80" color="#a0c"><defs><path id="leaf" d="M0 0C10-10 20-10 25 0C20 10 10 10 0 0z"/>
<symbol id="s" viewBox="0 0 10 10"><circle cx="5" cy="5" r="5" fill="currentColor"/><rect x="4" y="4" width="2" height="2" fill="#fff"/></symbol>
<g id="pair"><use href="#leaf"/><use xlink:href="#leaf" y="20" fill="#0a0"/></g></defs>
<use href="#leaf" x="5" y="20" fill="#c00"/><use href="#pair" x="40" y="20" stroke="#000"/><use href="#pair" transform="translate(100 10) rotate(60) scale(.8)"/>
<use href="#s" x="10" y="50" width="20" height="20"/><use href="#s" x="40" y="55" width="30" height="15" color="teal"/></svg>`},
		{"fits", head + `width="120mm" height="80mm" viewBox="-10 -20 300 220" preserveAspectRatio="xMinYMax meet"><rect x="-10" y="-20" width="300" height="220" fill="#eee"/>
<svg x="0" y="0" width="80" height="60" viewBox="0 0 10 20" preserveAspectRatio="xMidYMid slice"><rect width="10" height="20" fill="#fc0"/><circle cx="5" cy="10" r="5" fill="#00c"/></svg>
<svg x="100" y="0" width="80" height="60" viewBox="0 0 10 20"><rect width="10" height="20" fill="#fc0"/><circle cx="5" cy="10" r="7" fill="#0c0"/></svg>
<svg x="0" y="90" width="80" height="60" viewBox="0 0 10 20" preserveAspectRatio="none"><circle cx="5" cy="10" r="5" fill="#c00"/></svg>
<svg x="100" y="90" width="80" height="60" viewBox="0 0 10 20" preserveAspectRatio="xMaxYMin"><rect width="10" height="20" fill="#0cc"/></svg>
<svg x="200" y="20" width="50%" height="50%"><rect width="20%" height="100%" fill="#c0c"/></svg></svg>`},
		{"even-odd", head + `width="120mm" height="80mm" viewBox="0 0 120 80">
<path d="M30 5L45 50L5 22H55L15 50z" fill="#c40" fill-rule="evenodd"/><path d="M90 5L105 50L65 22H115L75 50z" fill="#04c"/>
<path d="M10 60h30v15h-30zM15 62v10h20v-10z" fill="#480"/><path d="M60 60h30v15h-30zM65 62h20v10h-20z" fill="#480"/>
<path d="M95 60h20v15h-20zM98 62h14v10h-14z" fill="#480" fill-rule="evenodd" stroke="#000"/></svg>`},
		{"transforms", head + `width="120mm" height="80mm" viewBox="0 0 120 80" stroke="#000">
<rect width="20" height="12" fill="#f66" transform="translate(10 10) rotate(20) skewX(15)"/><rect width="20" height="12" fill="#6f6" transform="translate(50,10)scale(1.5,.8)skewY(-10)" stroke-width="3"/>
<circle r="8" fill="#66f" transform="matrix(2 .4 -.6 .5 100 20)" stroke-width="3" stroke-dasharray="6 3"/><g transform="rotate(-30 60 60) translate(20)"><path d="M30 60h40" stroke-width="5"/><g transform="scale(-1 1) translate(-90 0)"><path d="M30 50h15l5 8z" fill="#fc0"/></g></g></svg>`},
		{"styles", head + `width="120mm" height="80mm" viewBox="0 0 120 80"><style><![CDATA[
/* made up */ .a, #q { fill: hsl(200, 80%, 40%); stroke: none } rect.b { fill: rgb(100%, 40%, 0%); stroke-width: 2px } path { fill: none !important; stroke: rgba(0,128,0,.5); stroke-width: 4 } * { stroke: #111 }
]]></style><rect class="a" x="5" y="5" width="30" height="20"/><rect class="a b" x="45" y="5" width="30" height="20"/><circle id="q" cx="100" cy="15" r="10" fill="red"/>
<path d="M5 40H60V60" style="fill:red;stroke-linejoin:round"/><g fill="olive" color="maroon"><rect x="70" y="40" width="15" height="15"/><rect x="90" y="40" width="15" height="15" fill="currentColor" style="stroke:none"/><rect x="70" y="60" width="15" height="15" fill="inherit" visibility="hidden"/><rect x="90" y="60" width="15" height="15" fill="#0f08" stroke="none"/></g><rect display="none" width="120" height="80"/></svg>`},
		{"shapes", head + `width="340.157" height="226.772" viewBox="0 0 120 80"><rect x="5" y="5" width="30" height="20" rx="6" fill="#357"/><rect x="40" y="5" width="30" height="20" rx="20" ry="5" fill="#573"/>
<ellipse cx="95" cy="15" rx="20" ry="8" fill="#735"/><line x1="5" y1="35" x2="55" y2="45" stroke="#000" stroke-width="1.5"/><polyline points="60,35 70,50 80,35 90,50 100,35" fill="#fd9" stroke="#840" stroke-width="2"/>
<polygon points="10 60 30 50 50 60 40 75 20 75" fill="#8cf" stroke="#048" stroke-linejoin="round" stroke-width="3"/><circle cx="75" cy="65" r="10%" fill="none" stroke="#111"/><path d="M95 55q10-8 20 5t-5 15s-10 5-15-5z" fill="#c9c"/></svg>`},
		{"fine lines", head + `width="120mm" height="80mm" viewBox="0 0 120 80" fill="none" stroke="#000">` + fan() + `</svg>`},
		{"paint order", head + `width="120mm" height="80mm" viewBox="0 0 120 80"><path d="M20 20h30v30h-30z" paint-order="stroke" fill="#fc6" stroke="#630" stroke-width="10"/><path d="M70 20h30v30h-30z" fill="#fc6" stroke="#630" stroke-width="10"/></svg>`},
		{"images", head + `width="120mm" height="80mm" viewBox="0 0 120 80"><image x="5" y="5" width="50" height="35" href="` + dataPNG() + `"/><image x="60" y="5" width="55" height="35" preserveAspectRatio="none" xlink:href="` + dataJPEG() + `"/>
<g transform="rotate(-12 40 60)" opacity=".7"><image x="20" y="45" width="40" height="28" preserveAspectRatio="xMidYMid slice" href="` + dataJPEG() + `"/></g></svg>`},
	}
	return list
}

// fan returns lines from half a pixel on in width, in all directions.
func fan() string {
	var b strings.Builder
	for i := range 24 {
		x, y := 60+55*math.Cos(float64(i)*math.Pi/12), 40+36*math.Sin(float64(i)*math.Pi/12)
		b.WriteString(`<path d="M60 40L` + num(x) + " " + num(y) + `" stroke-width="` + num(0.1+float64(i)/40) + `"/>`)
	}
	return b.String()
}

// photo returns a smooth picture, so that programs that mix pixels in another way
// agree about it.
func photo(width, height int) *image.NRGBA {
	m := image.NewNRGBA(image.Rect(0, 0, width, height))
	for y := range height {
		for x := range width {
			u, v := float64(x)/float64(width), float64(y)/float64(height)
			m.SetNRGBA(x, y, color.NRGBA{uint8(255 * u), uint8(127 + 127*math.Sin(9*v)), uint8(255 * (1 - v)), 255})
		}
	}
	return m
}

func dataPNG() string {
	m := photo(240, 170)
	for y := range 170 {
		for x := range 240 {
			m.Pix[m.PixOffset(x, y)+3] = uint8(255 - y)
		}
	}
	var out bytes.Buffer
	if err := png.Encode(&out, m); err != nil {
		panic(err)
	}
	return "data:image/png;base64," + base64.StdEncoding.EncodeToString(out.Bytes())
}

func jpegPhoto() []byte {
	var out bytes.Buffer
	if err := jpeg.Encode(&out, photo(900, 600), &jpeg.Options{Quality: 95}); err != nil {
		panic(err)
	}
	return out.Bytes()
}

func dataJPEG() string {
	return "data:image/jpeg;base64," + base64.StdEncoding.EncodeToString(jpegPhoto())
}
