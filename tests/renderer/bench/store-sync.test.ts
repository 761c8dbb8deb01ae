import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { BenchState, Committed, OpenedJob } from '../../../src/contract/bench-state.ts'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { Edit } from '../../../src/core/job/edits/edit.ts'
import { newJob } from '../../../src/core/job/model/new-job.ts'
import type { View } from '../../../src/core/job/model/types.ts'
import type { Table } from '../../../src/core/ledger/table/table.ts'
import { useBench } from '../../../src/renderer/bench/bench-store.ts'
import { choose, goTo, nextAfter, setPicks, showSheet, takeUp } from '../../../src/renderer/bench/choose.ts'
import { tell } from '../../../src/renderer/bench/notices.ts'
import { takeBench, takeCommitted, takeEvent } from '../../../src/renderer/bench/store-sync.ts'
import { setHost } from '../../../src/renderer/bench/the-host.ts'
import type { FromWorker, ToWorker } from '../../../src/renderer/findings/messages.ts'
import { noPicks, withPick } from '../../../src/renderer/picking/picks.ts'
import { openedJob } from './opened-job.ts'

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
      if (message.kind !== 'forget') sent.push(message)
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

const ELEVATION: View = { id: 'V1', sheet: 'S1', name: 'Elevation', mapping: 'uniform', references: [] }

const TABLE: Table = {
  job: '',
  unit: 'in',
  figuresAs: 'fractions',
  coverage: 0.95,
  rows: [],
  views: [],
  relations: [],
  sources: [],
  cautions: [],
  cautionReasons: [],
}

const opened = (n: number, place = '~/a'): OpenedJob =>
  openedJob({
    id: `job in ${place}`,
    job: { ...newJob('Boiler', 'in'), sheets: [SHEET], edition: n },
    n,
    place,
    notices: ['A line of the history was set aside.'],
  })

const bench = (job: OpenedJob | null): BenchState => ({
  version: '0',
  host: 'local',
  person: 'A. Rivet',
  choosesFolders: false,
  recent: [],
  opened: job,
})

const kept = (edits: [number, Edit][], more: Partial<Committed> = {}): Committed => ({
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
      const progress = { sheet: 'S2', state: 'overview', done: 0, sentence: '' }
      return Promise.resolve({ ok: true, answer: name === 'show-sheet' ? { progress } : state } as never)
    },
    listen: () => () => undefined,
    pictureUrl: (address) => address,
    sendScan: () => Promise.reject(new Error('no scans here')),
  })
  takeBench(bench(null))
  answer({ kind: 'failed', n: 0, because: { code: 'findings.stopped', parts: {} } })
  takeBench(bench(opened(3)))
})

describe('a window that is told of edits', () => {
  it('makes them in order, and shows when they came to disk and what can be undone', () => {
    takeCommitted(kept([[4, describeAs('Boiler front')]], { undoName: 'describe the job' }))
    const { opened: now } = useBench.getState()
    expect(now).toMatchObject({ n: 4, savedAt: '2026-11-25T14:02:00Z', undoName: 'describe the job' })
    expect(now?.job).toMatchObject({ title: 'Boiler front', edition: 4 })
    expect(now?.redoName).toBeUndefined()
  })

  it('drops those it has already, as when an answer and the news of it both arrive', () => {
    const twice = kept([[4, describeAs('Once')]])
    takeCommitted(twice)
    const before = useBench.getState().opened
    takeEvent({ kind: 'committed', committed: twice })
    expect(useBench.getState().opened).toBe(before)
  })

  it('asks how things stand when some in between are missing', async () => {
    state = bench({ ...opened(6), job: { ...opened(6).job, title: 'All of it' } })
    takeCommitted(kept([[6, describeAs('The sixth')]]))
    expect(asked).toEqual(['look'])
    await vi.waitFor(() => expect(useBench.getState().opened?.n).toBe(6))
    expect(useBench.getState().opened?.job.title).toBe('All of it')
  })

  it('lets go of a view that an undo took away, and of the tool that was for it', () => {
    const add: Edit = { do: 'add-view', item: ELEVATION }
    takeCommitted(kept([[4, add]]))
    choose({ kind: 'view', id: 'V1' })
    takeUp({ kind: 'measure', view: 'V1', measure: 'distance' })
    takeCommitted(kept([[5, { do: 'remove-view', id: 'V1' }]]))
    expect(useBench.getState().selection).toBeNull()
    expect(useBench.getState().picks.tool).toEqual({ kind: 'look' })
  })
})

describe('a window whose job changes', () => {
  it('is not set back by an answer that an edit has overtaken', () => {
    takeCommitted(kept([[4, describeAs('Newer')]]))
    takeBench(bench(opened(3)))
    expect(useBench.getState().opened).toMatchObject({ n: 4, job: { title: 'Newer' } })
  })

  it('begins anew with another job and says what there is to know of its opening', () => {
    choose({ kind: 'view', id: 'V9' })
    takeBench(bench(opened(1, '~/b')))
    const now = useBench.getState()
    expect(now.selection).toBeNull()
    expect(now.sheet).toBe('S1')
    expect(now.notices.map(({ sentence }) => sentence)).toEqual(['A line of the history was set aside.'])
  })

  it('keeps what is chosen when the same job is looked at again, as long as it is there', () => {
    const job = { ...opened(3).job, views: [ELEVATION] }
    takeBench(bench({ ...opened(3), job }))
    choose({ kind: 'view', id: 'V1' })
    takeBench(bench({ ...opened(3), job }))
    expect(useBench.getState().selection).toEqual({ kind: 'view', id: 'V1' })
    takeBench(bench(opened(4)))
    expect(useBench.getState().selection).toBeNull()
  })

  it('keeps what it told on the start page when nothing is open still', () => {
    takeBench(bench(null))
    tell('failed', 'That folder holds no job.')
    takeBench(bench(null))
    expect(useBench.getState().notices.map(({ sentence }) => sentence)).toEqual(['That folder holds no job.'])
  })

  it('never shows the table of the job before, however late that is worked out', () => {
    takeBench(bench(opened(3, '~/b')))
    answer({ kind: 'table', n: 3, table: { whole: TABLE } })
    expect(useBench.getState().table).toBeNull()
    answer({ kind: 'table', n: 3, table: { whole: { ...TABLE, job: 'B' } } })
    expect(useBench.getState().table?.job).toBe('B')
  })
})

describe('picks in hand', () => {
  const TOOL = { kind: 'measure', view: 'V1', measure: 'distance' } as const

  beforeEach(() => {
    const sheets = [SHEET, { ...SHEET, id: 'S2' }]
    const job = { ...opened(3).job, sheets, views: [ELEVATION, { ...ELEVATION, id: 'V2', sheet: 'S2' }] }
    takeBench(bench({ ...opened(3), job }))
    takeUp(TOOL)
  })

  it('never come to another sheet: with that the tool of a view is put down', async () => {
    setPicks(withPick(noPicks(TOOL), pixel(2, 3)))
    await showSheet('S2')
    expect(useBench.getState()).toMatchObject({
      sheet: 'S2',
      picks: { tool: { kind: 'look' }, features: [] },
    })
  })

  it('stay, and their sheet with them, when something on another sheet is chosen', () => {
    const picks = withPick(noPicks(TOOL), pixel(2, 3))
    setPicks(picks)
    choose({ kind: 'view', id: 'V2' })
    expect(useBench.getState()).toMatchObject({ sheet: 'S1', picks })
  })

  it('are not taken from somebody who picked otherwise while an edit came to disk', () => {
    const kept = withPick(noPicks(TOOL), pixel(2, 3))
    const newer = withPick(noPicks(TOOL), pixel(4, 5))
    setPicks(newer)
    nextAfter(kept, { kind: 'look' })
    expect(useBench.getState().picks).toBe(newer)
    nextAfter(newer, { kind: 'look' })
    expect(useBench.getState().picks.tool).toEqual({ kind: 'look' })
  })
})

describe('a station', () => {
  it('shows its own desk, whatever card lay there', () => {
    useBench.setState({ selection: { kind: 'dimension', name: 'bore' } })
    goTo('scale')
    expect(useBench.getState().selection).toBeNull()
  })
})

describe('a notice', () => {
  it('that is told again becomes the newest, and is there once', () => {
    for (const sentence of ['It is full.', 'It is gone.', 'It is full.']) tell('failed', sentence)
    const said = useBench.getState().notices.map(({ sentence }) => sentence)
    expect(said.slice(-2)).toEqual(['It is gone.', 'It is full.'])
    expect(said.filter((sentence) => sentence === 'It is full.')).toHaveLength(1)
  })
})

describe('the table', () => {
  it('is worked out once for a rush of edits, of the newest job', () => {
    expect(sent.map((message) => message.kind === 'table' && message.n)).toEqual([3])
    for (const n of [4, 5, 6]) takeCommitted(kept([[n, describeAs(`${n}`)]]))
    expect(sent).toHaveLength(1)
    answer({ kind: 'table', n: 3, table: { whole: TABLE } })
    expect(useBench.getState().tableOf).toBe(3)
    expect(sent.map((message) => message.kind === 'table' && message.n)).toEqual([3, 6])
  })
})
