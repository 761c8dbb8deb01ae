import { expect, it, vi } from 'vitest'
import { newJob } from '../../../src/core/job/model/new-job.ts'
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
  const made = new Computer(
    () => undefined,
    (because) => failed.push(because),
  )
  const trial = (title: string) => made.trial(job, { do: 'describe', set: { title } }, 'bore', 'mm')
  return { failed, trial }
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
