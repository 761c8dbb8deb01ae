/**
 * Circles as large as a sheet, by what lies along them: how far their diameters are from what was drawn, how surely they are
 * told, and what that takes. Run by `node scripts/run-ts.mjs tests/bench/large-circles.ts [cases] [SVG]`; with SVG they are
 * drawn by librsvg, which takes long.
 */
import { type LargeRingOutcome, largeRingTrial } from '../core/imaging/large/large-ring-trial.ts'

const cases = Number(process.argv[2] ?? 20)
const drawnBy = process.argv[3] === 'SVG' ? 'SVG' : 'distance'

const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length)

const rows = []
for (const diameter of [2_000, 8_000, 14_000]) {
  for (const [name, sweep] of [
    ['whole', 2 * Math.PI],
    ['quarter', Math.PI / 2],
  ] as const) {
    const found: LargeRingOutcome[] = []
    for (let k = 0; k < cases; k++) {
      const outcome = await largeRingTrial(diameter, sweep, 1000 + k, drawnBy)
      if (outcome !== null) found.push(outcome)
    }
    const over = found.map(({ error, stated }) => error / stated)
    rows.push({
      diameter,
      of: name,
      'not found': cases - found.length,
      'rms error, px': rms(found.map(({ error }) => error)).toFixed(4),
      'stated, px': rms(found.map(({ stated }) => stated)).toFixed(4),
      'error over stated': rms(over).toFixed(2),
      'within two': `${over.filter((z) => Math.abs(z) <= 2).length} of ${found.length}`,
      'MB looked at': (rms(found.map(({ bytes }) => bytes)) / 1e6).toFixed(1),
      'processor, s': (rms(found.map(({ time }) => time)) / 1000).toFixed(2),
    })
  }
}
console.table(rows)
console.log(
  `At most ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB of memory, the pictures among them.`,
)
