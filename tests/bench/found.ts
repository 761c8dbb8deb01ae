/** Readings on the original: how often their ± holds the truth, and agreeing ones dispute. Run with `node scripts/run-ts.mjs`. */
import { randomStream } from '../../src/core/uncertainty/random.ts'
import { type Drawn, tally } from '../core/ledger/found/readings-drawn.ts'

const JOBS = Number(process.argv[2] ?? 4000)
const SCATTERS = [0, 0.02, 0.05, 0.2]

const share = (count: number): string => ((100 * count) / JOBS).toFixed(1).padStart(5)

function line(title: string, drawn: Omit<Drawn, 'scatter'>, of: 'held' | 'disputed'): void {
  const random = randomStream(20261130)
  const cells = SCATTERS.map((scatter) => {
    const told = tally({ ...drawn, scatter }, JOBS, random)
    return `${share(told[of])} (± ${told.U.toFixed(3)})`
  })
  console.log(`${title.padEnd(64)} ${cells.join('  ')}`)
}

console.log(`${JOBS} jobs a cell, %, and the mean ± in mm; scatter ${SCATTERS.join(', ')} mm`)
for (const off of ['within', 'normal'] as const) {
  for (const others of [0, 9]) {
    for (const n of [2, 3, 5]) {
      line(`held: ${n} readings, ${others} other sizes, caliper off ${off}`, { n, others, off }, 'held')
    }
  }
  for (const others of [0, 9]) {
    const single = { n: 2, ofFirst: 1, others, off }
    line(`held: one reading, ${others} other sizes of two, caliper off ${off}`, single, 'held')
  }
}
for (const [sets, others] of [2, 3, 5].flatMap((sets) => [0, 9].map((others) => [sets, others] as const))) {
  const singles = { n: 2, ofFirst: 1, sets, others, off: 'within' } as const
  line(`disputed: ${sets} single readings, ${others} other sizes of two`, singles, 'disputed')
}
