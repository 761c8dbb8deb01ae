import { beforeEach, expect, test } from 'vitest'
import { useBench } from '../../../src/renderer/bench/bench-store.ts'
import { makeEdit, undo } from '../../../src/renderer/bench/edits.ts'
import { isAllKept } from '../../../src/renderer/bench/in-turn.ts'
import { tell, tellWritable } from '../../../src/renderer/bench/notices.ts'
import { isSaidAbove } from '../../../src/renderer/bench/said-above.ts'
import { setHost } from '../../../src/renderer/bench/the-host.ts'
import { openedJob } from './opened-job.ts'

const opened = openedJob({
  undoName: 'add mark M5',
  undoBy: { by: 'Eve', at: '2026-03-01T08:00:00Z' },
})

/** What the host was asked, and how it answers, once it is let. */
const asked: { name: string; args: unknown; answer: (reply: object) => void }[] = []

const refusal = (code: string, parts = {}) => ({
  ok: false,
  reason: { code, parts },
  sentence: `no: ${code}`,
})

beforeEach(() => {
  asked.length = 0
  setHost({
    ask: (name, args) => new Promise((answer) => asked.push({ name, args, answer: answer as never })),
    listen: () => () => undefined,
    pictureUrl: (address) => address,
    sendScan: () => Promise.reject(new Error('no scans here')),
  })
  useBench.setState({ opened, person: 'Eve', theirs: null, notices: [], keeping: 0 })
})

const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve))

test('edits go to the host one after the other, and count as on their way until the last is answered', async () => {
  const first = makeEdit({ do: 'describe', set: { title: 'One' } })
  const second = makeEdit({ do: 'describe', set: { title: 'Two' } })
  const all = isAllKept()
  await settle()
  expect(asked).toHaveLength(1)
  expect(useBench.getState().keeping).toBe(2)
  asked[0]?.answer(refusal('somehow'))
  expect(await first).toBe(false)
  await settle()
  expect(asked).toHaveLength(2)
  expect(useBench.getState().keeping).toBe(1)
  asked[1]?.answer({ ok: true, answer: { edits: [], name: '', savedAt: '', scans: [] } })
  expect(await second).toBe(true)
  expect(await all).toBe(false)
  expect(useBench.getState().keeping).toBe(0)
})

test("a step that the host refuses as somebody else's is asked about once, in the window's own words", async () => {
  const steps = Array.from({ length: 20 }, undo)
  await settle()
  const parts = { kind: 'undo', name: 'A. Rivet', at: '2026-03-01T08:00:00Z', edit: 'add view V2' }
  asked[0]?.answer(refusal('session.of-another', parts))
  expect(await Promise.all(steps)).toEqual(steps.map(() => false))
  expect(asked.map(({ name }) => name)).toEqual(['undo'])
  expect(useBench.getState().theirs).toMatchObject({ kind: 'undo', name: 'add view V2' })
  expect(useBench.getState().notices).toEqual([])
})

test('what was not kept because the job could only be looked at can be kept once it is written again', () => {
  tell('failed', 'Not kept.', 'Can be kept.')
  tell('failed', 'Something else.')
  tellWritable()
  expect(useBench.getState().notices.map(({ sentence }) => sentence)).toEqual([
    'Something else.',
    'Can be kept.',
  ])
})

test('what stands above the bench is not said again', () => {
  const held = { ...opened, readOnlyBecause: 'The job is open read-only: Eve has it open.' }
  expect(isSaidAbove(held, 'Eve has it open.')).toBe(true)
  expect(isSaidAbove(held, 'A line of the history was set aside.')).toBe(false)
  expect(isSaidAbove(opened, 'Eve has it open.')).toBe(false)
})
