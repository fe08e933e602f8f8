// Lays equal rectangles with two general-purpose packers from the npm registry and
// writes what they find, for the test of package sheet. Run once, with
//
//   npm install maxrects-packer@2.7.4 guillotine-packer@1.0.2
//   NODE_PATH=node_modules node packers.cjs > packers.json
//
// Each case is [room width, room height, piece width, piece height, pieces that
// maxrects-packer puts into one bin, pieces that guillotine-packer does].
const { packer } = require('guillotine-packer')
let MaxRectsPacker // its package can only be imported, not required

// A linear congruential generator, so that the cases are the same everywhere.
let state = 6
function upTo(least, most) {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0
  return least + Math.floor(state / 2 ** 32 * (most - least + 1))
}

function maxrects(width, height, w, h, enough) {
  let best = 0
  for (const logic of [0, 1]) { // by area, by edge
    const bins = new MaxRectsPacker(width, height, 0, { smart: false, pot: false, square: false, allowRotation: true, logic })
    for (let i = 0; i < enough; i++) bins.add(w, h, i)
    for (const bin of bins.bins) best = Math.max(best, bin.rects.length)
  }
  return best
}

function guillotine(width, height, w, h, enough) {
  const items = Array.from({ length: enough }, (_, i) => ({ name: String(i), width: w, height: h }))
  const bins = packer({ binWidth: width, binHeight: height, items }, { allowRotation: true })
  return Math.max(0, ...bins.map(bin => bin.length))
}

async function main() {
  MaxRectsPacker = (await import(require.resolve('maxrects-packer/dist/maxrects-packer.mjs'))).MaxRectsPacker
  const cases = []
  while (cases.length < 2000) {
    const width = upTo(280, 1280), height = upTo(280, 1000)
    const w = upTo(60, 700), h = upTo(60, 500)
    const enough = Math.floor(width * height / (w * h))
    if (enough < 1 || enough > 60 || !(w <= width && h <= height || h <= width && w <= height)) continue
    cases.push([width, height, w, h, maxrects(width, height, w, h, enough), guillotine(width, height, w, h, enough)])
  }
  console.log('{\n"packers": ["maxrects-packer 2.7.4", "guillotine-packer 1.0.2"],\n"cases": [')
  console.log(cases.map(c => JSON.stringify(c)).join(',\n'))
  console.log(']\n}')
}
main()
