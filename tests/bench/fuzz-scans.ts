/**
 * Tries all 2,000 spoiled copies of scans of every kind, within the usual limits: `node scripts/run-ts.mjs tests/bench/fuzz-scans.ts [FIRST [LAST]]`.
 */
import { LIMITS } from '../../src/contract/limits.ts'
import { fuzzDesk } from '../main/scans/fuzz/fuzz-desk.ts'
import { tryCopies } from '../main/scans/fuzz/try-copies.ts'
import type { Outcome } from '../main/scans/fuzz/try-copy.ts'

const [first = '0', last = '1999'] = process.argv.slice(2)
const numbers = Array.from({ length: Number(last) - Number(first) + 1 }, (_, i) => Number(first) + i)

const seconds = (milliseconds: number): string => `${(milliseconds / 1000).toFixed(1)} s`

function tell({ number, what, faults, longest }: Outcome): void {
  if (faults.length > 0) console.log(`copy ${number} (${what}), ${seconds(longest)}: ${faults.join('; ')}`)
}

const begun = performance.now()
const desk = await fuzzDesk(LIMITS)
const outcomes = await tryCopies(desk, numbers, tell)
await desk.close()
const bySlowness = [...outcomes].sort((a, b) => b.longest - a.longest)
const taken = outcomes.filter((outcome) => outcome.taken).length
console.log(`${outcomes.length} spoiled copies: ${taken} taken, ${outcomes.length - taken} refused`)
const cut = outcomes.filter(({ what }) => what.endsWith('cut short'))
const cutTaken = cut.filter((outcome) => outcome.taken)
console.log(
  `cut short: ${cut.length}, of which taken: ${cutTaken.map(({ what }) => what).join('; ') || 'none'}`,
)
console.log(`with faults: ${outcomes.filter(({ faults }) => faults.length > 0).length}`)
console.log(`in all ${seconds(performance.now() - begun)}; the slowest asks:`)
for (const { number, what, longest } of bySlowness.slice(0, 5)) {
  console.log(`  copy ${number} (${what}): ${seconds(longest)}`)
}
const rss = process.memoryUsage().rss / 1024 ** 2
console.log(`memory of the host at the end: ${rss.toFixed(0)} MB`)
if (outcomes.some(({ faults }) => faults.length > 0)) process.exitCode = 1
