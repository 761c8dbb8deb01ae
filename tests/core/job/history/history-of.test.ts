import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { degrees } from '../../../../src/core/geometry/angle-units.ts'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import {
  applyEdit,
  describeEdit,
  type Edit,
  readEdit,
  stampEdit,
} from '../../../../src/core/job/edits/edit.ts'
import { changesOf } from '../../../../src/core/job/history/changes-of.ts'
import type { HistoryLine } from '../../../../src/core/job/history/history-line.ts'
import { entryOf, type HistoryEntry, historyOf } from '../../../../src/core/job/history/history-of.ts'
import { KnownNames } from '../../../../src/core/job/history/known-names.ts'
import { sayEntry } from '../../../../src/core/job/history/say-change.ts'
import { FormerSubject, type Subject, subjectsCalled } from '../../../../src/core/job/history/subject.ts'
import type { Dimension, Evidence, Job } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { JobError } from '../../../../src/core/job/text/job-error.ts'
import { inWords } from '../../../../src/core/words/core-words.ts'
import { anyJob, some } from '../arbitrary-job.ts'
import { anyEdit } from '../edits/arbitrary-edit.ts'
import { winchJob } from '../winch-job.ts'

/** A job that is worked on, with its history. */
class Work {
  readonly began: Job
  job: Job
  readonly lines: HistoryLine[] = []
  /** The job before each line. */
  readonly before: Job[] = []
  readonly #takenBack = new Set<number>()

  constructor(job: Job) {
    this.began = job
    this.job = job
  }

  do(edit: Edit, by = 'ada', more: Partial<HistoryLine> = {}): void {
    const n = this.lines.length + 1
    const at = new Date(Date.UTC(2026, 2, 9, 10, n)).toISOString()
    const stamped = more.undoes === undefined ? stampEdit(this.job, edit, { by, at }) : edit
    const { job, inverse } = applyEdit(this.job, stamped)
    this.before.push(this.job)
    this.lines.push({ n, at, by, edit: stamped, back: inverse, ...more })
    this.job = job
  }

  undo(n: number, by = 'ada'): void {
    const line = this.lines[n - 1]
    if (line === undefined) throw new RangeError(`There is no line ${n}.`)
    // Nothing is taken back twice, unless it was made again meanwhile.
    if (this.#takenBack.has(n)) return
    this.do(line.back, by, { undoes: { n, name: describeEdit(line.edit) } })
    this.#takenBack.add(n)
    if (line.undoes !== undefined) this.#takenBack.delete(line.undoes.n)
  }

  of(subject: Subject, names = new KnownNames(this.job)): HistoryEntry[] {
    return historyOf(this.lines.toReversed(), subject, this.job, this.began, names)
  }

  said(subject: Subject): string[] {
    const names = new KnownNames(this.job)
    return this.of(subject, names).flatMap((entry) =>
      sayEntry(entry, names).map((one) => `${entry.n ?? '-'} ${entry.by}: ${inWords(one)}`),
    )
  }

  former(called: string): Subject | null {
    const names = new KnownNames(this.job)
    const former = new FormerSubject(this.job, called, names)
    for (const line of this.lines.toReversed()) {
      names.learn(changesOf(line))
      const found = former.take(line)
      if (found !== null) return found
    }
    return null
  }
}

const point = (id: string, x: number) =>
  ({ id, sheet: 's1', how: 'hand', sigma: 1, kind: 'point', pixel: pixel(x, 4) }) as const

describe('the history of a dimension', () => {
  const add = (name: string, label: string): Edit => ({
    do: 'add-dimension',
    item: { name, label, kind: 'length', evidence: [] },
  })
  const bare = (): Work => {
    const { marks, views, sheets, people, ...job } = readJob(winchJob())
    return new Work({ ...job, people, sheets, views, marks, dimensions: [], relations: [], notes: [] })
  }

  it('tells its evidence with its marks, its adoption, withdrawals and names, newest first', () => {
    const work = bare()
    work.do({ do: 'add-mark', item: point('X', 100) })
    const evidence = {
      id: 'S1',
      basis: 'scaled',
      view: 'v1',
      measure: 'distance',
      marks: ['X', 'Y'],
    } as const
    const item: Dimension = {
      name: 'rim',
      label: 'Rim',
      kind: 'length',
      evidence: [{ ...evidence, marks: ['X', 'Y'] }],
    }
    work.do({
      do: 'several',
      name: 'add rim, scaled',
      edits: [
        { do: 'add-mark', item: point('Y', 200) },
        { do: 'add-dimension', item },
      ],
    })
    work.do({ do: 'change-mark', id: 'A', set: { sigma: 2 } })
    work.do({ do: 'change-mark', id: 'X', set: { pixel: pixel(103, 8) } }, 'ben')
    const printed = { id: 'P1', basis: 'printed', text: `1'-2 3/8"` } as const
    work.do({ do: 'add-evidence', dimension: 'rim', item: printed }, 'ben')
    work.do({ do: 'adopt', dimension: 'rim', adopt: 'P1' }, 'ben')
    work.do({ do: 'adopt', dimension: 'rim', adopt: 'mean' })
    work.do({ do: 'rename-dimension', name: 'rim', to: 'drum_rim' })
    work.do({ do: 'withdraw-evidence', dimension: 'drum_rim', id: 'P1', why: 'of another part' }, 'ben')
    work.undo(9)
    work.do({ do: 'change-dimension', name: 'drum_rim', set: { tolerance: '1/64"', count: 2 } })
    work.do({ do: 'adopt', dimension: 'drum_rim' })
    expect(work.said({ kind: 'dimension', id: 'drum_rim' })).toEqual([
      '12 ada: left drum_rim to the rules (before: mean, by Ada Quill)',
      '11 ada: changed drum_rim: tolerance none of its own → 1/64"; how many off 1 → 2',
      '10 ada: took back 9: reinstated evidence P1 of drum_rim (withdrawn before: of another part)',
      '9 ben: withdrew evidence P1 of drum_rim: of another part',
      '8 ada: renamed rim to drum_rim',
      '7 ada: adopted mean for rim (before: evidence P1, by Ben Adze)',
      `6 ben: adopted evidence P1 for rim: 1'-2 3/8" (before: left to the rules, which take evidence P1 (1'-2 3/8") first)`,
      `5 ben: added evidence P1 of rim: 1'-2 3/8"`,
      '4 ben: moved mark X by 5.0 px, from 100.0, 4.0 to 103.0, 8.0 px',
      '2 ada: picked mark Y',
      '2 ada: added rim: Rim',
      '2 ada: added evidence S1 of rim: distance between mark X, mark Y in view “Elevation”',
      '1 ada: picked mark X',
    ])
  })

  it('goes on before its history began with what the job says itself, and makes nothing up', () => {
    const work = new Work(readJob(winchJob()))
    work.do({ do: 'adopt', dimension: 'drum_length', adopt: 'mean' }, 'ben')
    expect(work.said({ kind: 'dimension', id: 'drum_length' })).toEqual([
      '1 ben: adopted mean for drum_length (before: evidence P1)',
      '- ben: added evidence P1 of drum_length: 1?-3/8',
      '- ada: picked mark A',
    ])
  })

  it('is not that of another one that had its name before', () => {
    const work = bare()
    work.do(add('rim', 'the first'))
    work.do({ do: 'rename-dimension', name: 'rim', to: 'rim_old' })
    work.do(add('rim', 'the second'))
    expect(work.said({ kind: 'dimension', id: 'rim' })).toEqual(['3 ada: added rim: the second'])
    expect(work.said({ kind: 'dimension', id: 'rim_old' })).toEqual([
      '2 ada: renamed rim to rim_old',
      '1 ada: added rim: the first',
    ])
  })

  it('is not that of another that had its name while it was gone', () => {
    const work = bare()
    work.do(add('rim', 'the first'))
    work.do({ do: 'rename-dimension', name: 'rim', to: 'edge' })
    work.do({ do: 'remove-dimension', name: 'edge' })
    work.do(add('lip', 'the second'))
    work.do({ do: 'rename-dimension', name: 'lip', to: 'edge' })
    work.do({ do: 'rename-dimension', name: 'edge', to: 'lip' })
    work.undo(3)
    expect(work.said({ kind: 'dimension', id: 'edge' })).toEqual([
      '7 ada: took back 3: added edge: the first',
      '3 ada: removed edge: the first',
      '2 ada: renamed rim to edge',
      '1 ada: added rim: the first',
    ])
  })

  it('is found by a former name and by that of one that is gone', () => {
    const work = bare()
    work.do(add('rim', 'Rim'))
    work.do({ do: 'rename-dimension', name: 'rim', to: 'edge' })
    work.do({ do: 'rename-dimension', name: 'edge', to: 'border' })
    expect(work.former('rim')).toEqual({ kind: 'dimension', id: 'border' })
    expect(work.former('edge')).toEqual({ kind: 'dimension', id: 'border' })
    expect(work.former('collar')).toBeNull()
    work.do({ do: 'remove-dimension', name: 'border' })
    expect(work.former('rim')).toEqual({ kind: 'dimension', id: 'border', until: 4 })
    work.do(add('border', 'another'))
    const gone = work.former('rim') ?? { kind: 'dimension', id: '' }
    expect(gone).toEqual({ kind: 'dimension', id: 'border', until: 4 })
    expect(work.said(gone)).toEqual([
      '4 ada: removed border: Rim',
      '3 ada: renamed edge to border',
      '2 ada: renamed rim to edge',
      '1 ada: added rim: Rim',
    ])
    expect(work.said({ kind: 'dimension', id: 'border' })).toEqual(['5 ada: added border: another'])
    work.do({ do: 'add-mark', item: point('Z', 9) })
    work.do({ do: 'remove-mark', id: 'Z' })
    expect(work.former('mark z')).toEqual({ kind: 'mark', id: 'Z', until: 7 })
  })

  it('has every line that changed it, and no other, whatever it was called then', () => {
    let followed = 0
    fc.assert(
      fc.property(fc.gen(), (draw) => {
        const work = new Work(marked(readJob(anyJob(draw))))
        for (let i = 1; i <= 15; i++) {
          const edit = anyEdit(draw, work.job, `x${i}`)
          if (edit === undefined) continue
          try {
            if (work.lines.length > 0 && some(draw, 4) === 0) work.undo(1 + some(draw, work.lines.length - 1))
            else work.do(withUid(readEdit(edit), `new${i}`))
          } catch (error) {
            if (!(error instanceof JobError)) throw error
          }
        }
        for (const { name, uid } of work.job.dimensions as (Dimension & { uid: string })[]) {
          const told = work.of({ kind: 'dimension', id: name }).filter(({ n }) => n !== null)
          for (const { n, changes } of told) checkNames(work, uid, n ?? 0, changes)
          expect(told.map(({ n }) => n)).toEqual(expect.arrayContaining(linesThatChanged(work, uid)))
          followed++
        }
      }),
      { numRuns: 150 },
    )
    expect(followed).toBeGreaterThan(100)
  })
})

const UID = 'uid'
type Marked = Dimension & { [UID]?: string }

const marked = (job: Job): Job => ({
  ...job,
  dimensions: job.dimensions.map((dimension, i) => ({ ...dimension, [UID]: `old${i}` })),
})

/** What tells a dimension from all others, whatever it is called, rides along as a field that no program knows. */
const withUid = (edit: Edit, uid: string): Edit =>
  edit.do === 'add-dimension'
    ? { ...edit, item: { ...edit.item, [UID]: uid } as Dimension }
    : edit.do === 'several'
      ? { ...edit, edits: edit.edits.map((one, i) => withUid(one, `${uid}.${i}`)) }
      : edit

const byUid = (job: Job | undefined, uid: string): Marked | undefined =>
  job?.dimensions.find((dimension: Marked) => dimension[UID] === uid)

/** A dimension's or its evidence's changes name it as it was called about then. */
function checkNames(work: Work, uid: string, n: number, changes: HistoryEntry['changes']): void {
  const around = [work.before[n - 1], work.before[n] ?? work.job].map((job) => byUid(job, uid)?.name)
  for (const { thing, fields } of changes) {
    if (thing.kind === 'mark') continue
    const name = thing.kind === 'dimension' ? thing.id : thing.of
    const renames = fields
      .filter(({ field }) => field === 'name')
      .flatMap(({ before, after }) => [before, after])
    expect([...around, ...renames]).toContain(name)
  }
}

const renamesIn = (edit: Edit): boolean =>
  edit.do === 'several' ? edit.edits.some(renamesIn) : edit.do === 'rename-dimension'

/** The numbers of the lines after which a dimension is not as it was; formulas go along with the names in them. */
function linesThatChanged(work: Work, uid: string): number[] {
  return work.lines.flatMap(({ n, edit }) => {
    const [was, is] = [byUid(work.before[n - 1], uid), byUid(work.before[n] ?? work.job, uid)]
    if (renamesIn(edit) && was?.name === is?.name) return []
    return JSON.stringify(was) === JSON.stringify(is) ? [] : [n]
  })
}

describe('the history of other things', () => {
  it('of a view tells the sizes known in it', () => {
    const work = new Work(readJob(winchJob()))
    const size = { id: 'R9', kind: 'diameter', marks: ['drum'], size: '9 1/2"' } as const
    work.do({ do: 'add-reference', view: 'v1', item: { ...size, marks: ['drum'] } }, 'ben')
    work.do({ do: 'change-reference', view: 'v1', id: 'R9', set: { size: '9 1/4"' } })
    work.do({ do: 'change-view', id: 'v1', set: { drawnScale: 0.5, name: 'Front' } })
    work.do({ do: 'remove-reference', view: 'v1', id: 'R9' })
    expect(work.said({ kind: 'view', id: 'v1' })).toEqual([
      '4 ada: removed figured size R9 of view “Front”: 9 1/4"',
      `3 ada: changed view “Front”: scale as the sheet states it 3" = 1'-0" → 6" = 1'-0"; name “Elevation” → “Front”`,
      '2 ada: changed figured size R9 of view “Elevation”: size as printed 9 1/2" → 9 1/4"',
      '1 ben: added figured size R9 of view “Elevation”: 9 1/2"',
    ])
  })

  it('of a person tells all that they did, by whichever name', () => {
    const work = new Work(readJob(winchJob()))
    work.do({ do: 'describe', set: { title: 'Winch of the quay' } }, 'Ben Adze')
    work.do({ do: 'change-person', id: 'ben', set: { role: 'restorer' } })
    work.do(
      {
        do: 'change-sheet',
        id: 's1',
        set: { record: { identifier: 'QW-17', date: '1912', creator: 'J. Tarn' } },
      },
      'ben',
    )
    work.do({ do: 'move-dimension', name: 'rake', index: 0 })
    const told = work.said({ kind: 'person', id: 'ben' }).filter((line) => !line.startsWith('-'))
    expect(told).toEqual([
      '3 ben: changed sheet “General arrangement”: date “1911” → “1912”; drawn by none → “J. Tarn”',
      '2 ada: changed the person Ben Adze: role none → “restorer”',
      '1 Ben Adze: changed the job: title “Quay winch, general arrangement” → “Winch of the quay”',
    ])
  })
})

describe('what something was called before', () => {
  const renamed = (): Work => {
    const work = new Work(readJob(winchJob()))
    const size = { id: 'R9', kind: 'diameter', marks: ['drum'], size: '9"' } as const
    work.do({ do: 'add-reference', view: 'v1', item: { ...size, marks: ['drum'] } })
    work.do({ do: 'change-mark', id: 'A', set: { label: 'Throat, right' } })
    work.do({ do: 'change-view', id: 'v1', set: { name: 'Side view' } })
    work.do({ do: 'change-sheet', id: 's1', set: { title: 'Hood' } })
    work.do({ do: 'change-person', id: 'ben', set: { name: 'Ben Rasp' } })
    work.do({ do: 'change-instrument', id: 'cal', set: { name: 'caliper' } })
    work.do({ do: 'change-view', id: 'v1', set: { name: 'Side view, looking east' } })
    work.do({ do: 'change-mark', id: 'A', set: { label: 'Rim', sigma: 3 } })
    return work
  }

  it('is what a history tells it by from then', () => {
    const work = renamed()
    expect(work.said({ kind: 'view', id: 'v1' }).filter((line) => !line.startsWith('-'))).toEqual([
      '7 ada: changed view “Side view, looking east”: name “Side view” → “Side view, looking east”',
      '3 ada: changed view “Side view”: name “Elevation” → “Side view”',
      '1 ada: added figured size R9 of view “Elevation”: 9"',
    ])
    const said = (kind: Subject['kind'], id: string): string =>
      work.said({ kind, id }).find((line) => /^[45]/.test(line)) ?? ''
    expect(said('sheet', 's1')).toMatch(/^4 ada: changed sheet “Hood”: /)
    expect(said('person', 'ben')).toMatch(/^5 ada: changed the person Ben Rasp: /)
    expect(work.said({ kind: 'mark', id: 'A' }).slice(0, 2)).toEqual([
      '8 ada: changed mark A (Rim): what it marks “Throat, right” → “Rim”; standard uncertainty of a pick 1 px → 3 px',
      '2 ada: changed mark A (Throat, right): what it marks none → “Throat, right”',
    ])
    const names = new KnownNames(work.job)
    const told = work.of({ kind: 'view', id: 'v1' }, names)
    expect(told.map(({ name }) => name).slice(0, 3)).toEqual([
      'change view “Side view, looking east”: name',
      'change view “Side view”: name',
      'add figured size R9 to view “Elevation”',
    ])
    expect([
      names.nameOf({ kind: 'view', id: 'v1' }),
      names.asOf(6).nameOf({ kind: 'view', id: 'v1' }),
    ]).toEqual(['Side view, looking east', 'Side view'])
    expect(names.asOf(null).nameOf({ kind: 'view', id: 'v1' })).toBe('Elevation')
  })

  it.each<[string, Subject]>([
    ['Elevation', { kind: 'view', id: 'v1' }],
    ['view "side view"', { kind: 'view', id: 'v1' }],
    ['view “Side view”', { kind: 'view', id: 'v1' }],
    ['General arrangement', { kind: 'sheet', id: 's1' }],
    ['Ben Adze', { kind: 'person', id: 'ben' }],
    ['6 in dial caliper', { kind: 'instrument', id: 'cal' }],
    ['throat, right', { kind: 'mark', id: 'A' }],
    ['elevation figured size R9', { kind: 'view', id: 'v1', part: 'R9' }],
    ['figured size R9 of view “Elevation”', { kind: 'view', id: 'v1', part: 'R9' }],
  ])('%s: finds it, as the history writes it or not', (called, subject) => {
    expect(renamed().former(called)).toEqual(subject)
  })

  it('finds a part of a dimension, and of what is gone', () => {
    const work = renamed()
    work.do({ do: 'rename-dimension', name: 'drum_length', to: 'cone' })
    expect(work.former('drum_length P1')).toEqual({ kind: 'dimension', id: 'cone', part: 'P1' })
    expect(work.former('P1 of dimension drum_length')).toEqual({
      kind: 'dimension',
      id: 'cone',
      part: 'P1',
    })
    expect(work.former('drum_length P77')).toBeNull()
    const item = { id: 'v9', sheet: 's1', name: 'Foot', mapping: 'uniform', references: [] } as const
    work.do({ do: 'add-view', item: { ...item, references: [] } })
    work.do({ do: 'change-view', id: 'v9', set: { name: 'Sole' } })
    work.do({ do: 'remove-view', id: 'v9' })
    const gone = work.former('foot')
    expect(gone).toEqual({ kind: 'view', id: 'v9', until: 12 })
    expect(work.former('view "Sole"')).toEqual(gone)
    expect(work.said(gone ?? { kind: 'view', id: '' })).toEqual([
      '12 ada: removed view “Sole”',
      '11 ada: changed view “Sole”: name “Foot” → “Sole”',
      '10 ada: added view “Foot”',
    ])
  })
})

describe('what was there before', () => {
  it('is what a field counted as, in the words of the window, with what people wrote in quotes', () => {
    const work = new Work(readJob(winchJob()))
    work.do({ do: 'change-sheet', id: 's1', clear: ['draughting'] })
    work.do({ do: 'change-sheet', id: 's1', set: { draughting: '0.2 mm' } })
    work.do({ do: 'change-view', id: 'v1', set: { mapping: 'uniform' } })
    const long = `Throat, width; ${'seen from the crank side '.repeat(8)}end`
    work.do({ do: 'change-dimension', name: 'drum_length', set: { label: long, note: 'a "7" or a 1' } })
    work.do({ do: 'change-mark', id: 'A', set: { label: 'throat, right', sigma: 2 } })
    expect(work.said({ kind: 'sheet', id: 's1' })[0]).toBe(
      '2 ada: changed sheet “General arrangement”: draughting uncertainty 0.13 mm, by default → 0.2 mm',
    )
    expect(work.said({ kind: 'view', id: 'v1' })[0]).toMatch(
      /: how the sheet has kept its shape (Two ways|Out of square|Photograph) → Same both ways$/,
    )
    expect(work.said({ kind: 'dimension', id: 'drum_length' })[1]).toMatch(
      new RegExp(`changed drum_length: what it is “.*” → “${long}”; note none → “a "7" or a 1”$`),
    )
    expect(work.said({ kind: 'mark', id: 'A' })[0]).toMatch(
      /^5 ada: changed mark A \(throat, right\): standard uncertainty of a pick 1 px → 2 px; what it marks none → “throat, right”$/,
    )
  })

  it('is told of what was written again as it was, of picks taken back, and of a point from where to where', () => {
    const work = new Work(readJob(winchJob()))
    work.do({ do: 'change-view', id: 'v1', set: { drawnScale: 0.25 } })
    work.do({ do: 'change-view', id: 'v1', set: { grain: degrees(-0.8) } })
    work.do({ do: 'change-view', id: 'v1', set: { grain: degrees(-0.8) } })
    work.do({ do: 'change-view', id: 'v1', clear: ['remark'] })
    expect(work.said({ kind: 'view', id: 'v1' }).slice(0, 4)).toEqual([
      '4 ada: changed nothing of view “Elevation”',
      '3 ada: wrote again for view “Elevation”: level edge of the sheet −0.8°',
      '2 ada: changed view “Elevation”: level edge of the sheet 0.3° → −0.8°',
      `1 ada: wrote again for view “Elevation”: scale as the sheet states it 3" = 1'-0"`,
    ])
    work.do({ do: 'add-mark', item: { ...point('m-2222222222222', 100), number: 7, label: 'Rim, left' } })
    const mark = 'm-2222222222222'
    work.do({ do: 'repeat-pick', mark, pixel: pixel(103, 8) }, 'ben')
    work.do({ do: 'repeat-pick', mark, pixel: pixel(103, 9) }, 'ben')
    work.undo(7)
    work.undo(6)
    work.do(work.lines[8]?.back ?? { do: 'remove-mark', id: mark })
    work.do({ do: 'change-mark', id: mark, clear: ['repeats', 'repeatedBy'] })
    work.do({ do: 'change-mark', id: mark, set: { pixel: pixel(103, 8) } })
    expect(work.said({ kind: 'mark', id: mark })).toEqual([
      '12 ada: moved point 7 (Rim, left) by 5.0 px, from 100.0, 4.0 to 103.0, 8.0 px',
      '11 ada: took back the second pick of point 7 (Rim, left)',
      '10 ada: picked point 7 (Rim, left) again at 103.0, 8.0 px',
      '9 ada: took back 6: the second pick of point 7 (Rim, left)',
      '8 ada: took back 7: the third pick of point 7 (Rim, left)',
      '7 ben: picked point 7 (Rim, left) again at 103.0, 9.0 px, 1.0 px from the pick before',
      '6 ben: picked point 7 (Rim, left) again at 103.0, 8.0 px, 5.0 px from the pick before',
      '5 ada: picked point 7 (Rim, left)',
    ])
  })

  it('is told of a note with what it is about and where, of a view with its stated scale', () => {
    const work = new Work(readJob(winchJob()))
    const note = { sheet: 's1', outline: [], text: 'Worn.' } as const
    work.do({ do: 'add-note', item: { id: 'N8', ...note, outline: [], about: 'drum_length' } })
    work.do({ do: 'add-note', item: { id: 'N9', ...note, outline: [] } })
    const view = { id: 'v9', sheet: 's1', name: 'Foot, left', mapping: 'uniform', drawnScale: 0.25 } as const
    work.do({ do: 'add-view', item: { ...view, references: [] } })
    expect(work.said({ kind: 'note', id: 'N8' })).toEqual([
      '1 ada: added note N8: “Worn.”, about drum_length, on sheet “General arrangement”',
    ])
    expect(work.said({ kind: 'note', id: 'N9' })).toEqual([
      '2 ada: added note N9: “Worn.”, on sheet “General arrangement”',
    ])
    expect(work.said({ kind: 'view', id: 'v9' })).toEqual([
      `3 ada: added view “Foot, left”: scale as the sheet states it 3" = 1'-0"`,
    ])
  })

  it('of a pick that was made again is how far it is from the one before', () => {
    const work = new Work(readJob(winchJob()))
    work.do({ do: 'add-mark', item: point('X', 100) })
    work.do({ do: 'repeat-pick', mark: 'X', pixel: pixel(103, 8) }, 'ben')
    work.do({ do: 'repeat-pick', mark: 'X', pixel: pixel(103, 8) }, 'ben')
    const circle = (r: number, ...angles: number[]) => ({
      pixels: angles.map((a) => pixel(50 + r * Math.cos(a), 60 + r * Math.sin(a))),
    })
    const rim = { id: 'C9', sheet: 's1', how: 'hand', sigma: 1, kind: 'circle' } as const
    work.do({ do: 'add-mark', item: { ...rim, ...circle(20, 0, 2, 4) } })
    work.do({ do: 'repeat-pick', mark: 'C9', ...circle(21, 1, 3, 5) })
    expect(work.said({ kind: 'mark', id: 'X' })).toEqual([
      '3 ben: picked mark X again at 103.0, 8.0 px, 0.0 px from the pick before',
      '2 ben: picked mark X again at 103.0, 8.0 px, 5.0 px from the pick before',
      '1 ada: picked mark X',
    ])
    expect(work.said({ kind: 'mark', id: 'C9' })[0]).toBe(
      '5 ada: picked mark C9 again, its centre 0.0 px and its radius 1.0 px from the pick before',
    )
  })

  it('of an adoption is what the rules came to, of the evidence that there was then', () => {
    const work = new Work(readJob(winchJob()))
    const add = (item: Evidence): void => work.do({ do: 'add-evidence', dimension: 'drum_length', item })
    add({ id: 'F9', basis: 'found', readings: ['9 1/4"'] })
    work.do({ do: 'adopt', dimension: 'drum_length', adopt: 'F9' })
    work.do({ do: 'adopt', dimension: 'drum_length' })
    add({ id: 'P9', basis: 'printed', text: '9 1/2"' })
    work.do({ do: 'adopt', dimension: 'drum_length', adopt: 'F9' })
    const adoptions = work
      .said({ kind: 'dimension', id: 'drum_length' })
      .filter((one) => one.includes('adopted') || one.includes('left'))
    expect(adoptions.slice(0, 2)).toEqual([
      '5 ada: adopted evidence F9 for drum_length: 9 1/4" (before: left to the rules, which take evidence P9 (9 1/2") first)',
      '3 ada: left drum_length to the rules (before: evidence F9, by Ada Quill)',
    ])
  })
})

describe('what undo calls an edit', () => {
  const job = readJob(winchJob())
  const called = (edit: Edit): string => {
    const { job: after, inverse } = applyEdit(job, edit)
    return describeEdit(edit, after, inverse)
  }

  it.each<[Edit, string]>([
    [{ do: 'change-view', id: 'v1', set: { name: 'Front' } }, 'change view “Front”: name'],
    [
      {
        do: 'change-mark',
        id: 'A',
        set: { sigma: 2, pixel: pixel(9, 9), by: 'ben', at: '2026-03-09T10:00:00Z' },
      },
      'move mark A and change its standard uncertainty of a pick',
    ],
    [{ do: 'change-mark', id: 'A', set: { pixel: pixel(9, 9) } }, 'move mark A'],
    [{ do: 'change-mark', id: 'A', set: { by: 'ben' } }, 'change mark A: who'],
    [
      { do: 'change-sheet', id: 's1', set: { record: { identifier: 'QW-17', date: '1912' } } },
      'change sheet “General arrangement”: date',
    ],
    [
      {
        do: 'add-note',
        item: {
          id: 'N9',
          sheet: 's1',
          outline: [],
          text: 'The rivets here are\nof another kind than those above.',
        },
      },
      'add note N9, “The rivets here are of another kind than…”',
    ],
    [
      {
        do: 'add-view',
        item: { id: 'v9', sheet: 's1', name: 'Foot plan', mapping: 'uniform', references: [] },
      },
      'add view “Foot plan”',
    ],
    [
      {
        do: 'add-reference',
        view: 'v1',
        item: { id: 'r-wt39d5bn66dd8', number: 9, kind: 'diameter', marks: ['drum'], size: '9"' },
      },
      'add figured size 9 to view “Elevation”',
    ],
  ])('%j', (edit, name) => {
    expect(called(edit)).toBe(name)
    const work = new Work(job)
    work.do(edit, 'ada', { undoes: { n: 0, name: 'x' } })
    const line = { ...work.lines[0], undoes: undefined } as unknown as HistoryLine
    const entry = entryOf(line, { take: changesOf }, new KnownNames(work.job))
    expect(entry?.name).toBe(name)
  })
})

describe('what something goes by', () => {
  const job = readJob(winchJob())
  const called = (text: string): Subject[] => subjectsCalled(job, text, new KnownNames(job))

  it.each<[string, Subject[]]>([
    ['drum_length', [{ kind: 'dimension', id: 'drum_length' }]],
    ['v1', [{ kind: 'view', id: 'v1' }]],
    ['elevation', [{ kind: 'view', id: 'v1' }]],
    ['view "Elevation"', [{ kind: 'view', id: 'v1' }]],
    ['view “Elevation”', [{ kind: 'view', id: 'v1' }]],
    ['the person', []],
    ['figured size R2 of view “Elevation”', [{ kind: 'view', id: 'v1', part: 'R2' }]],
    ['mark M12', []],
    ['Mark A', [{ kind: 'mark', id: 'A' }]],
    ['ben adze', [{ kind: 'person', id: 'ben' }]],
    ['drum_length P1', [{ kind: 'dimension', id: 'drum_length', part: 'P1' }]],
    ['P1 of drum_length', [{ kind: 'dimension', id: 'drum_length', part: 'P1' }]],
    ['elevation figured size R2', [{ kind: 'view', id: 'v1', part: 'R2' }]],
    ['figured size R2', [{ kind: 'view', id: 'v1', part: 'R2' }]],
    ['nothing', []],
  ])('%s is found', (text, subjects) => {
    expect(called(text)).toEqual(subjects)
  })
})
