// Solves cutting stock problems of rows with a general-purpose solver from the npm
// registry, for the tests of package gang. Run once, with
//
//   npm install highs@1.15.3
//   NODE_PATH=node_modules node programs.cjs > programs.json
//
// Each case is a room, lengths that are cut from it, how many of each are wanted, all
// patterns that cannot take one more, the least sum of runs of them, and the least sum
// of whole runs.
let state = 11

// A linear congruential generator, so that the cases are the same everywhere.
function upTo(least, most) {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0
  return least + Math.floor(state / 2 ** 32 * (most - least + 1))
}

function patterns(room, lengths, at = 0, counts = []) {
  if (at === lengths.length) {
    return lengths.some(l => l <= room) ? [] : [counts]
  }
  const list = []
  for (let n = Math.floor(room / lengths[at]); n >= 0; n--) {
    list.push(...patterns(room - n * lengths[at], lengths, at + 1, [...counts, n]))
  }
  return list
}

function program(all, wanted, whole) {
  const names = all.map((_, j) => 'x' + j)
  const rows = wanted.map((d, i) => ` c${i}: ` + all.map((p, j) => `${p[i]} x${j}`).filter(t => !t.startsWith('0 ')).join(' + ') + ` >= ${d}`)
  return `Minimize\n obj: ${names.join(' + ')}\nSubject To\n${rows.join('\n')}\n${whole ? `General\n ${names.join(' ')}\n` : ''}End\n`
}

async function main() {
  const highs = await require('highs')()
  const cases = []
  while (cases.length < 60) {
    const room = upTo(500, 1400)
    const lengths = [...new Set(Array.from({ length: upTo(2, 6) }, () => upTo(90, Math.min(700, room))))]
    const wanted = lengths.map(() => upTo(1, 90))
    const all = patterns(room, lengths)
    if (all.length > 60) continue
    const [relaxed, whole] = [false, true].map(w => highs.solve(program(all, wanted, w)).ObjectiveValue)
    cases.push({ room, lengths, wanted, patterns: all, relaxed, whole: Math.round(whole) })
  }
  console.log(`{\n"solver": "highs 1.15.3",\n"cases": [\n${cases.map(c => JSON.stringify(c)).join(',\n')}\n]\n}`)
}

main()
