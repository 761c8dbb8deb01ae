/** How long it takes to read a lattice, and to rank what a pattern could be: `node scripts/run-ts.mjs tests/bench/readings.ts` */
import type { Lattice } from '../../src/core/reading/lattice.ts'
import { rankFigures } from '../../src/core/reading/ranking/rank-figures.ts'
import { readings } from '../../src/core/reading/readings.ts'

const OTHERS = '0123456789/-. \'"'

/** A text of which each glyph could be five others as well. */
const lattice = (text: string, seed: number, surely: number): Lattice => ({
  slots: [...text].map((glyph, i) => ({
    alternatives: [
      { text: glyph, probability: surely },
      ...Array.from({ length: 5 }, (_, j) => ({
        text: OTHERS.charAt((seed * 7 + i * 5 + j * 3) % OTHERS.length),
        probability: ((1 - surely) / 5) * 0.98,
      })),
    ],
  })),
})

/** Milliseconds of the processor for one, after so many that nothing is new. */
function each(run: (i: number) => unknown): string {
  for (let i = 0; i < 15; i++) run(i)
  const start = process.cpuUsage()
  for (let i = 0; i < 40; i++) run(i)
  const { user, system } = process.cpuUsage(start)
  return ((user + system) / 1000 / 40).toFixed(1)
}

for (const text of ["12'-10 11/16", '10 HOLES 5/8']) {
  for (const surely of [0.9, 0.6, 0.25]) {
    const ms = each((i) => readings(lattice(text, i, surely), { unit: 'in' }))
    console.log(`${text}, 12 glyphs of 6 each, ${surely} sure: ${ms} ms`)
  }
}
for (const seen of ['1?-3/8', '1? ?/8', '???', "??'-? 3/8"]) {
  const ms = each((i) => rankFigures({ seen, scaled: [{ value: 300 + i, u: 0.5 }], context: { unit: 'in' } }))
  console.log(`${seen}, ranked: ${ms} ms`)
}
