import { expect, it } from 'vitest'
import { applyEdit, type Edit, readEdit } from '../../../src/core/job/edits/edit.ts'
import type { Job } from '../../../src/core/job/model/types.ts'
import { readJob } from '../../../src/core/job/read-job.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import type { Table } from '../../../src/core/ledger/table/table.ts'
import type { FromWorker, ToWorker } from '../../../src/renderer/findings/messages.ts'
import { Receiver, Sender } from '../../../src/renderer/findings/sent.ts'
import { TableWorker } from '../../../src/renderer/findings/table-worker.ts'
import { largeJob } from '../../bench/large-job.ts'

const START = readJob(JSON.parse(JSON.stringify(largeJob(60))))

const figure = (dimension: string, id: string, text: string): Edit =>
  readEdit({ do: 'add-evidence', dimension, item: { id, basis: 'printed', text } })

/** A worker with its line; messages are copied both ways, as they are. */
function worker() {
  const [tableWorker, jobs, tables] = [new TableWorker(), new Sender<Job>(), new Receiver<Table>()]
  const ask = (message: Exclude<ToWorker, { kind: 'forget' }>): FromWorker =>
    structuredClone(tableWorker.answer(structuredClone(message)))
  let n = 0
  return {
    jobs,
    forget: () => tableWorker.forget(),
    table(job: Job, unit: 'in' | 'mm' = 'in') {
      const answer = ask({ kind: 'table', n: n++, job: jobs.send(job), look: { unit } })
      if (answer.kind !== 'table') throw new Error(`The worker answered ${answer.kind}.`)
      return { sent: answer.table, table: tables.receive(answer.table) }
    },
    trial: (job: Job, edit: Edit, dimension: string) =>
      ask({ kind: 'trial', ask: n++, job: jobs.send(job), look: { unit: 'in' }, edit, dimension }),
  }
}

it('Tables and trials are what they are for the job as it stands, edit after edit, in one unit and another', () => {
  const line = worker()
  let job = START
  expect(line.table(job).table).toEqual(dimensionTable(job))
  for (let i = 0; i < 12; i++) {
    const edit = figure(`d${3 * i}`, `n${i}`, '3 1/2"')
    const tried = line.trial(job, edit, `d${3 * i}`)
    job = applyEdit(job, edit).job
    const unit = i % 4 === 3 ? 'mm' : 'in'
    const whole = dimensionTable(job, { unit })
    expect(line.table(job, unit).table).toEqual(whole)
    const row = dimensionTable(job).rows.find(({ name }) => name === `d${3 * i}`)
    expect(tried).toMatchObject({ kind: 'trial', row, because: null })
  }
})

it('Only the rows that an edit changes are sent, and the others stay the same ones', () => {
  const line = worker()
  const before = line.table(START).table
  const { sent, table } = line.table(applyEdit(START, figure('d10', 'n', '3 1/2"')).job)
  if (!('change' in sent)) throw new Error('The table was sent whole.')
  const { rows = [] } = sent.change.lists
  const put = rows.flatMap((run) => ('put' in run ? run.put : []))
  expect(put).toHaveLength(1)
  expect(table.rows.filter((row) => !before.rows.includes(row)).map(({ name }) => name)).toEqual(['d10'])
})

it('Another job is begun anew', () => {
  const line = worker()
  line.table(START)
  line.jobs.anew()
  const other = readJob(JSON.parse(JSON.stringify(largeJob(20))))
  const { sent, table } = line.table(other)
  expect('whole' in sent).toBe(true)
  expect(table).toEqual(dimensionTable(other))
})

it('What was held of a job that is closed is let go of, and a change of it is no longer understood', () => {
  const line = worker()
  line.table(START)
  line.forget()
  expect(() => line.table(START)).toThrow(RangeError)
  line.jobs.anew()
  expect('whole' in line.table(START).sent).toBe(true)
})

it('A trial that comes before any table, and one that is refused, are answered', () => {
  const line = worker()
  expect(line.trial(START, figure('d1', 'n', '3 1/2"'), 'd1')).toMatchObject({ row: { name: 'd1' } })
  const refused = line.trial(START, figure('gone', 'n', '3 1/2"'), 'gone')
  expect(refused).toMatchObject({ row: null, because: { code: 'edit.no-such-item' } })
  expect(line.table(START).table).toEqual(dimensionTable(START))
})
