import { expect, it, vi } from 'vitest'
import { newJob } from '../../../src/core/job/model/new-job.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import { reason } from '../../../src/core/words/core-words.ts'
import type { AnyReason } from '../../../src/core/words/reason.ts'
import { Computer } from '../../../src/renderer/findings/computer.ts'
import type { FromWorker, ToWorker } from '../../../src/renderer/findings/messages.ts'

const sent: ToWorker[] = []
let answer: (data: FromWorker) => void = () => undefined
let stop: () => void = () => undefined
vi.stubGlobal(
  'Worker',
  class {
    addEventListener(kind: string, heard: (event?: { data: FromWorker }) => void): void {
      if (kind === 'message') answer = (data) => heard({ data })
      else stop = () => heard()
    }
    postMessage(message: ToWorker): void {
      sent.push(message)
    }
  },
)

const job = newJob('Boiler', 'in')

/** What the computer was asked to work out, by the title that the edit gives. */
const titles = (): unknown[] =>
  sent.map((one) => (one.kind === 'trial' && one.edit.do === 'describe' ? one.edit.set?.title : one.kind))

function computer() {
  sent.length = 0
  const failed: AnyReason[] = []
  const found: number[] = []
  const made = new Computer(
    (n) => found.push(n),
    (because) => failed.push(because),
  )
  const trial = (title: string) => made.trial(job, { do: 'describe', set: { title } }, 'bore', { unit: 'mm' })
  return { failed, found, made, trial }
}

it('Of a rush of trials only the first and the newest are worked out', async () => {
  const { trial } = computer()
  const [one, three] = [
    reason('edit.no-such-dimension', { name: '1' }),
    reason('edit.no-such-dimension', { name: '3' }),
  ]
  const first = trial('1')
  const second = trial('2')
  const third = trial('3')
  answer({ kind: 'trial', ask: 1, row: null, because: one })
  answer({ kind: 'trial', ask: 3, row: null, because: three })
  expect(titles()).toEqual(['1', '3'])
  expect(await Promise.all([first, second, third])).toMatchObject([
    { because: one, unit: 'mm' },
    { row: null, because: null },
    { because: three },
  ])
})

it('A trial whose worker has stopped is answered with what happened, and does not wait for ever', async () => {
  const { failed, trial } = computer()
  const asked = [trial('1'), trial('2')]
  stop()
  for (const { because } of await Promise.all(asked)) expect(because?.code).toBe('findings.stopped')
  expect(failed).toHaveLength(1)
})

const EMPTY = { ...dimensionTable(job), job: 'Boiler' }

/** How the job of each ask was sent. */
const howSent = (): string[] =>
  sent.map((one) => ('job' in one ? ('whole' in one.job ? 'whole' : 'change') : one.kind))

it('A job is sent whole the first time, after it was closed, and after the worker has failed; else what changed of it', () => {
  const { made } = computer()
  made.table(1, job)
  answer({ kind: 'table', n: 1, table: { whole: EMPTY } })
  made.table(2, { ...job, title: 'Hopper' })
  stop()
  made.table(3, job)
  answer({ kind: 'table', n: 3, table: { whole: EMPTY } })
  made.forget()
  made.table(4, job)
  expect(howSent()).toEqual(['whole', 'change', 'whole', 'forget', 'whole'])
})

it('The table of a closed job is not told, also where a trial had failed before', async () => {
  const { made, trial, found } = computer()
  const tried = trial('1')
  stop()
  expect((await tried).because?.code).toBe('findings.stopped')
  made.table(1, job)
  made.forget()
  answer({ kind: 'table', n: 1, table: { whole: EMPTY } })
  expect(found).toEqual([])
  made.table(2, job)
  answer({ kind: 'table', n: 2, table: { whole: EMPTY } })
  expect(found).toEqual([2])
})
