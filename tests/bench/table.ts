/** Time to compute the table of a large job, how it grows, and what one edit costs. Run by `npm run bench`. */
import { applyEdit, readEdit } from '../../src/core/job/edits/edit.ts'
import type { Job } from '../../src/core/job/model/types.ts'
import { readJob } from '../../src/core/job/read-job.ts'
import { dimensionTable } from '../../src/core/ledger/table/dimension-table.ts'
import { jobOfManySheets } from './large-folder.ts'
import { largeJob } from './large-job.ts'

const WARM_UP = 15
const ROUNDS = 31

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN
}

function time(run: () => void): number {
  const start = performance.now()
  run()
  return performance.now() - start
}

const sizeOf = ({ dimensions, views, marks }: Job): string =>
  `${dimensions.length} dimensions, ${views.length} views, ${marks.length} marks`

/** Edits of one dimension each, every table from the one before, in turns with whole ones. */
function afterEdits(job: Job, rounds: number): { whole: number; edited: number } {
  const [whole, edited]: [number[], number[]] = [[], []]
  let [now, table] = [job, dimensionTable(job)]
  for (let i = 0; i < rounds; i++) {
    const dimension = job.dimensions[(37 * i) % job.dimensions.length]?.name
    const item = { id: `n${i}`, basis: 'printed', text: '3 1/2"' }
    const { job: next } = applyEdit(now, readEdit({ do: 'add-evidence', dimension, item }))
    edited.push(
      time(() => {
        table = dimensionTable(next, { before: table })
      }),
    )
    whole.push(time(() => dimensionTable(next)))
    now = next
  }
  return { whole: middle(whole), edited: middle(edited) }
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
console.log(`dimensionTable, ${sizeOf(once)}:`)
console.log(
  `  ${one.toFixed(1)} ms in the middle of ${ROUNDS} runs (first run ${cold.toFixed(1)} ms; to be under 100 ms)`,
)
console.log(
  `twice the job (${sizeOf(twice)}): ${two.toFixed(1)} ms, ${(two / one).toFixed(2)} times (to be at most 2.3)`,
)
console.log(`readJob of the first: ${middle(reading).toFixed(1)} ms`)

const after = afterEdits(readJob(JSON.parse(JSON.stringify(once))), ROUNDS)
console.log(
  `the first after one edit of one dimension: ${after.edited.toFixed(1)} ms, ${(after.edited / after.whole).toFixed(2)} of the whole, ${after.whole.toFixed(1)} ms (to be at most 0.25)`,
)
const largest = jobOfManySheets({ dimensions: 10_000, sheets: 100, views: 40 })
const of = afterEdits(readJob(JSON.parse(JSON.stringify(largest))), 7)
console.log(
  `the largest (${sizeOf(largest)}): ${of.whole.toFixed(0)} ms (to be under 2000 ms), after one edit ${of.edited.toFixed(0)} ms`,
)
