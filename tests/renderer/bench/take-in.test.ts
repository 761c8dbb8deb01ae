import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { BenchState, Kept, OpenedJob } from '../../../src/contract/bench-state.ts'
import type { Edit } from '../../../src/core/job/edit-types.ts'
import { newJob } from '../../../src/core/job/new-job.ts'
import { useBench } from '../../../src/renderer/bench/bench-store.ts'
import { choose, takeUp } from '../../../src/renderer/bench/choose.ts'
import { takeBench, takeEvent, takeKept } from '../../../src/renderer/bench/take-in.ts'
import { setHost } from '../../../src/renderer/bench/the-host.ts'
import type { FromWorker, ToWorker } from '../../../src/renderer/findings/messages.ts'

/** The worker, on the spot: it keeps what it was asked. */
const sent: ToWorker[] = []
let answer: (message: FromWorker) => void = () => undefined
vi.stubGlobal(
  'Worker',
  class {
    addEventListener(kind: string, heard: (event: { data: FromWorker }) => void): void {
      if (kind === 'message') answer = (data) => heard({ data })
    }
    postMessage(message: ToWorker): void {
      sent.push(message)
    }
  },
)

const describeAs = (title: string): Edit => ({ do: 'describe', set: { title } })

const SHEET = {
  id: 'S1',
  title: 'One',
  record: {},
  scan: { file: 'a.png', sha256: '0', page: 1, width: 9, height: 9 },
}

const opened = (n: number, place = '~/a'): OpenedJob => ({
  job: { ...newJob('Boiler', 'in'), sheets: [SHEET], edition: n },
  n,
  place,
  sample: false,
  writable: true,
  notices: ['The journal was recovered.'],
  scans: [],
  savedAt: null,
})

const bench = (job: OpenedJob | null): BenchState => ({
  version: '0',
  host: 'local',
  person: 'A. Rivet',
  choosesFolders: false,
  recent: [],
  opened: job,
})

const kept = (edits: [number, Edit][], more: Partial<Kept> = {}): Kept => ({
  edits: edits.map(([n, edit]) => ({ n, edit })),
  name: 'something',
  savedAt: '2026-11-25T14:02:00Z',
  scans: [],
  ...more,
})

const asked: string[] = []
let state = bench(opened(4))

beforeEach(() => {
  asked.length = 0
  sent.length = 0
  setHost({
    ask: (name) => {
      asked.push(name)
      return Promise.resolve({ ok: true, answer: state } as never)
    },
    listen: () => () => undefined,
    pictureUrl: (address) => address,
    sendScan: () => Promise.reject(new Error('no scans here')),
  })
  takeBench(bench(null))
  answer({ kind: 'failed', n: 0, sentence: 'reset' })
  takeBench(bench(opened(3)))
})

describe('a window that is told of edits', () => {
  it('makes them in order, and shows when they came to disk and what can be undone', () => {
    takeKept(kept([[4, describeAs('Boiler front')]], { undoName: 'describe the job' }))
    const { opened: now } = useBench.getState()
    expect(now).toMatchObject({ n: 4, savedAt: '2026-11-25T14:02:00Z', undoName: 'describe the job' })
    expect(now?.job).toMatchObject({ title: 'Boiler front', edition: 4 })
    expect(now?.redoName).toBeUndefined()
  })

  it('drops those it has already, as when an answer and the news of it both arrive', () => {
    const twice = kept([[4, describeAs('Once')]])
    takeKept(twice)
    const before = useBench.getState().opened
    takeEvent({ kind: 'kept', kept: twice })
    expect(useBench.getState().opened).toBe(before)
  })

  it('asks how things stand when some in between are missing', async () => {
    state = bench({ ...opened(6), job: { ...opened(6).job, title: 'All of it' } })
    takeKept(kept([[6, describeAs('The sixth')]]))
    expect(asked).toEqual(['look'])
    await vi.waitFor(() => expect(useBench.getState().opened?.n).toBe(6))
    expect(useBench.getState().opened?.job.title).toBe('All of it')
  })

  it('lets go of a view that an undo took away, and of the tool that was for it', () => {
    const add: Edit = {
      do: 'add-view',
      item: { id: 'V1', sheet: 'S1', name: 'Elevation', mapping: 'uniform', references: [] },
    }
    takeKept(kept([[4, add]]))
    choose({ kind: 'view', id: 'V1' })
    takeUp({ kind: 'measure', view: 'V1', measure: 'distance' })
    takeKept(kept([[5, { do: 'remove-view', id: 'V1' }]]))
    expect(useBench.getState().selection).toBeNull()
    expect(useBench.getState().picks.tool).toEqual({ kind: 'look' })
  })
})

describe('a window whose job changes', () => {
  it('begins anew with another job and says what there is to know of its opening', () => {
    choose({ kind: 'view', id: 'V9' })
    takeBench(bench(opened(1, '~/b')))
    const now = useBench.getState()
    expect(now.selection).toBeNull()
    expect(now.sheet).toBe('S1')
    expect(now.notices.map(({ sentence }) => sentence)).toEqual(['The journal was recovered.'])
  })

  it('keeps what is chosen when the same job is looked at again', () => {
    choose({ kind: 'view', id: 'V9' })
    takeBench(bench(opened(3)))
    expect(useBench.getState().selection).toEqual({ kind: 'view', id: 'V9' })
  })
})

describe('the table', () => {
  it('is worked out once for a rush of edits, of the newest job', () => {
    expect(sent.map((message) => message.kind === 'table' && message.n)).toEqual([3])
    for (const n of [4, 5, 6]) takeKept(kept([[n, describeAs(`${n}`)]]))
    expect(sent).toHaveLength(1)
    const table = {
      job: '',
      unit: 'in',
      coverage: 0.95,
      rows: [],
      views: [],
      relations: [],
      cautions: [],
    } as const
    answer({ kind: 'table', n: 3, table: structuredClone(table) as never })
    expect(useBench.getState().tableOf).toBe(3)
    expect(sent.map((message) => message.kind === 'table' && message.n)).toEqual([3, 6])
  })
})
