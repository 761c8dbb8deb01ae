/** Time to compute the table of a large job, and how it grows. Run by `npm run bench`. */
import { readJob } from '../../src/core/job/read-job.ts'
import { dimensionTable } from '../../src/core/ledger/table/dimension-table.ts'
import { largeJob } from './large-job.ts'

const WARM_UP = 15
const ROUNDS = 31

function middle(values: number[]): number {
  return values.sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN
}

function time(run: () => void): number {
  const start = performance.now()
  run()
  return performance.now() - start
}

const once = largeJob(1000)
const twice = largeJob(2000)
const cold = time(() => dimensionTable(once))
for (let i = 0; i < WARM_UP; i++) {
  dimensionTable(once)
  dimensionTable(twice)
}
const [a, b, reading]: [number[], number[], number[]] = [[], [], []]
for (let i = 0; i < ROUNDS; i++) {
  a.push(time(() => dimensionTable(once)))
  b.push(time(() => dimensionTable(twice)))
  reading.push(time(() => readJob(JSON.parse(JSON.stringify(once)))))
}
const [one, two] = [middle(a), middle(b)]
console.log(
  `dimensionTable, ${once.dimensions.length} dimensions, ${once.views.length} views, ${once.marks.length} marks:`,
)
console.log(
  `  ${one.toFixed(1)} ms in the middle of ${ROUNDS} runs (first run ${cold.toFixed(1)} ms; to be under 100 ms)`,
)
console.log(
  `twice the job (${twice.dimensions.length}, ${twice.views.length}, ${twice.marks.length}): ${two.toFixed(1)} ms, ${(two / one).toFixed(2)} times (to be at most 2.3)`,
)
console.log(`readJob of the first: ${middle(reading).toFixed(1)} ms`)
