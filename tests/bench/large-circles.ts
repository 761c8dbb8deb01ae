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
    const mean = (of: (one: LargeRingOutcome) => number): number => rms(found.map(of))
    console.log(
      [
        `${diameter} px, the ${name}: error ${mean(({ error }) => error).toFixed(4)} px`,
        `stated ${mean(({ stated }) => stated).toFixed(4)} px`,
        `error over stated ${rms(over).toFixed(2)}`,
        `within twice that ${over.filter((z) => Math.abs(z) <= 2).length} of ${found.length}`,
        `not found ${cases - found.length}`,
        `${(mean(({ bytes }) => bytes) / 1e6).toFixed(1)} MB of the scan`,
        `${(mean(({ time }) => time) / 1000).toFixed(2)} s of the processor`,
      ].join(', '),
    )
  }
}
console.log(
  `At most ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB of memory, the pictures among them.`,
)
