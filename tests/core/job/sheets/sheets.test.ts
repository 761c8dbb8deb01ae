import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { applyEdit, describeEdit, type Edit, reviewEdit } from '../../../../src/core/job/edits/edit.ts'
import type { Job, Sheet } from '../../../../src/core/job/model/types.ts'
import { picksOf, placesOf } from '../../../../src/core/job/picks/picks-of.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { carryOver } from '../../../../src/core/job/sheets/carry-over.ts'
import { whatIsOn } from '../../../../src/core/job/sheets/on-sheet.ts'
import { type CommonPoint, fitPictures } from '../../../../src/core/job/sheets/picture-mapping.ts'
import type { PictureMappingKind } from '../../../../src/core/job/sheets/picture-models.ts'
import { goesWithItsSheet, removeSheet } from '../../../../src/core/job/sheets/remove-sheet.ts'
import { dimensionTable } from '../../../../src/core/ledger/table/dimension-table.ts'
import { winchJob } from '../winch-job.ts'

const [sheet] = readJob(winchJob()).sheets as [Sheet]
const BETTER: Sheet = {
  ...sheet,
  id: 'better',
  title: 'General arrangement, again',
  scan: {
    ...sheet.scan,
    file: 'better.png',
    sha256: 'b'.repeat(64),
    width: 20_000,
    height: 16_000,
    dpi: 2 * (sheet.scan.dpi ?? 300),
  },
}
const job: Job = applyEdit(readJob(winchJob()), { do: 'add-sheet', item: BETTER }).job

/** The job after an edit, whose inverse takes all of it back. */
function edited(edit: Edit, of: Job = job): Job {
  const { job: after, inverse } = applyEdit(of, edit)
  expect(applyEdit(after, inverse).job).toEqual(of)
  return after
}

/** Twice as large, turned by 3-4-5, and moved. */
const similar = ([x, y]: readonly [number, number]) =>
  pixel(4000 + 2 * (0.8 * x - 0.6 * y), 500 + 2 * (0.6 * x + 0.8 * y))

const PLACES = [pixel(100, 100), pixel(3000, 200), pixel(2800, 2500), pixel(300, 2300), pixel(1500, 900)]

const common = (
  to: (at: readonly [number, number]) => ReturnType<typeof pixel>,
  places = PLACES,
): CommonPoint[] => places.map((before) => ({ before, after: to(before), sigmaBefore: 0.3, sigmaAfter: 0.5 }))

describe('a sheet that is removed', () => {
  it('takes all with it that is on it or came from it, as one edit that one undo takes back', () => {
    const { views, marks, evidence } = whatIsOn(job, sheet.id)
    expect([views.length, marks.length, evidence.length].every((count) => count > 0)).toBe(true)
    const edit = removeSheet(job, sheet.id)
    const after = edited(edit)
    expect(after.sheets.map(({ id }) => id)).not.toContain(sheet.id)
    expect(whatIsOn(after, sheet.id)).toEqual({ views: [], marks: [], notes: [], evidence: [] })
    expect(after.dimensions.map(({ name }) => name)).toEqual(job.dimensions.map(({ name }) => name))
    expect(describeEdit(edit, job)).toBe(`remove sheet “${sheet.title}” with all on it`)
    expect(dimensionTable(after).rows).toHaveLength(job.dimensions.length)
  })

  it('lets no other evidence go with it', () => {
    const edit = removeSheet(job, sheet.id)
    const goes = goesWithItsSheet(job, edit)
    expect(goes.size).toBe(whatIsOn(job, sheet.id).evidence.length)
    const stays = job.dimensions.flatMap(({ name, evidence }) =>
      evidence
        .filter(({ basis }) => basis === 'found' || basis === 'derived')
        .map(({ id }) => `${name} ${id}`),
    )
    expect(stays.some((one) => goes.has(one))).toBe(false)
    expect(goesWithItsSheet(job, { do: 'several', name: '', edits: [] }).size).toBe(0)
  })
})

describe('a sheet that is moved', () => {
  it('stands at its new place, and is told by that', () => {
    const edit: Edit = { do: 'move-sheet', id: 'better', index: 0 }
    expect(edited(edit).sheets[0]?.id).toBe('better')
    expect(describeEdit(edit, job)).toBe('move sheet “General arrangement, again”')
  })
})

describe('the mapping between two pictures', () => {
  it.each<[PictureMappingKind, number]>([
    ['uniform', 2],
    ['affine', 3],
  ])(
    '%s is found exactly where the points are exact, and is as sure as its leverages say',
    (kind, parameters) => {
      const points = common(similar)
      const mapping = fitPictures(points, kind)
      const at = pixel(1234, 987)
      const [x, y] = similar(at)
      expect(mapping.apply(at)[0]).toBeCloseTo(x, 6)
      expect(mapping.apply(at)[1]).toBeCloseTo(y, 6)
      expect(mapping.scaleAt(at)).toBeCloseTo(2, 7)
      expect(mapping.residuals.every(([dx, dy]) => Math.hypot(dx, dy) < 1e-6)).toBe(true)
      // The picks say more than the residuals here.
      expect(mapping.s).toBeCloseTo(Math.hypot(0.6, 0.5), 9)
      // The leverages of all readings sum to the parameters: Hoaglin & Welsch, The American Statistician 32 (1978), p. 17.
      const leverages = points.map(({ before }) => (mapping.uAt(before) / mapping.s) ** 2)
      expect(leverages.reduce((sum, one) => sum + one, 0)).toBeCloseTo(parameters, 6)
    },
  )

  it('takes an uneven stretch for scatter where it is taken for even, and not where it is out of square', () => {
    const points = common(([x, y]) => pixel(2 * x + 0.01 * y, 2.02 * y))
    expect(fitPictures(points, 'uniform').s).toBeGreaterThan(5)
    expect(fitPictures(points, 'affine').s).toBeLessThan(1)
    expect(fitPictures(points, 'affine').dof).toBe(4)
  })

  it('of a photograph is found exactly where the points are exact, also between them', () => {
    const aslant = ([x, y]: readonly [number, number]) => {
      const w = 1 + 4e-5 * x - 2e-5 * y
      return pixel((1.9 * x + 0.2 * y + 300) / w, (-0.1 * x + 2.1 * y + 150) / w)
    }
    const mapping = fitPictures(common(aslant), 'projective')
    expect(mapping.dof).toBe(2)
    for (const at of [pixel(1234, 987), pixel(2200, 400), ...PLACES]) {
      expect(mapping.apply(at)[0]).toBeCloseTo(aslant(at)[0], 6)
      expect(mapping.apply(at)[1]).toBeCloseTo(aslant(at)[1], 6)
    }
    expect(fitPictures(common(aslant), 'affine').s).toBeGreaterThan(5)
    expect(() => fitPictures(common(aslant, PLACES.slice(0, 3)), 'projective')).toThrow('pick 4 at least')
    // Three of four on a line do not tell how it was seen.
    const three = [pixel(0, 0), pixel(1000, 1000), pixel(2000, 2000), pixel(2000, 0)]
    expect(() => fitPictures(common(aslant, three), 'projective')).toThrow('on one line, or nearly so')
  })

  it('is refused by too few points, and by points on a line', () => {
    expect(() => fitPictures(common(similar, PLACES.slice(0, 2)), 'uniform')).toThrow('pick 3 at least')
    const line = [0, 1, 2, 3].map((k) => pixel(100 + 900 * k, 200 + 500 * k))
    for (const kind of ['uniform', 'affine'] as const)
      expect(() => fitPictures(common(similar, line), kind)).toThrow('on one line')
  })
})

describe('a sheet that is given a better picture', () => {
  const mapping = fitPictures(common(similar), 'uniform')
  const edit = carryOver(job, sheet.id, 'better', mapping)
  const after = edited(edit)

  it('has the new scan under its own name, and the other sheet is gone', () => {
    expect(after.sheets.map(({ id }) => id)).toEqual(
      job.sheets.map(({ id }) => id).filter((id) => id !== 'better'),
    )
    expect(after.sheets[0]).toMatchObject({ id: sheet.id, title: sheet.title, scan: BETTER.scan })
  })

  it('has every pick where it is on the new picture, as sure as it was together with the mapping', () => {
    for (const before of whatIsOn(job, sheet.id).marks) {
      const now = after.marks.find(({ id }) => id === before.id)
      expect(now).toBeDefined()
      if (now === undefined) continue
      expect(now.stroke).toBeUndefined()
      const [old, moved] = [picksOf(before), picksOf(now)]
      expect(moved).toHaveLength(old.length)
      for (const [i, pick] of old.entries()) {
        const places = placesOf(pick)
        for (const [j, place] of places.entries()) {
          const [x, y] = similar(place)
          expect(placesOf(moved[i] ?? pick)[j]?.[0]).toBeCloseTo(x, 5)
          expect(placesOf(moved[i] ?? pick)[j]?.[1]).toBeCloseTo(y, 5)
        }
        const u = Math.max(...places.map(mapping.uAt))
        expect(moved[i]?.sigma ?? now.sigma).toBeCloseTo(Math.hypot(2 * (pick.sigma ?? before.sigma), u), 9)
      }
    }
  })

  it('gives the same values, none of them surer than before', () => {
    const [before, now] = [dimensionTable(job).rows, dimensionTable(after).rows]
    for (const [i, row] of before.entries()) {
      const other = now[i]
      if (row.value === null || row.basis !== 'scaled') continue
      expect(Math.abs((other?.value ?? 0) - row.value)).toBeLessThan(row.u)
      expect(other?.u).toBeGreaterThan(row.u * 0.999)
    }
  })

  it('is refused where something is on the other sheet already', () => {
    const item = { id: 'n', sheet: 'better', outline: [pixel(1, 1), pixel(9, 1), pixel(9, 9)], text: 'Rust' }
    const noted = applyEdit(job, { do: 'add-note', item }).job
    expect(() => carryOver(noted, sheet.id, 'better', mapping)).toThrow('Something is on the sheet')
  })
})

describe('a view', () => {
  it('can’t have the name of another one on its sheet, whatever the case; another sheet may have it too', () => {
    const [view] = job.views
    if (view === undefined) throw new Error('The winch has a view.')
    const twin = { ...view, id: 'twin', name: view.name.toUpperCase(), references: [] }
    expect(() => reviewEdit(job, { do: 'add-view', item: twin })).toThrow('give this one another name')
    expect(() => reviewEdit(job, { do: 'add-view', item: { ...twin, sheet: 'better' } })).not.toThrow()
    expect(() => reviewEdit(job, { do: 'change-view', id: view.id, set: { name: view.name } })).not.toThrow()
    const other = applyEdit(job, { do: 'add-view', item: { ...twin, name: 'Plan of the hood' } }).job
    expect(() => reviewEdit(other, { do: 'change-view', id: 'twin', set: { name: view.name } })).toThrow(
      'give this one another name',
    )
  })
})

describe('The table after what is done to a sheet', () => {
  it.each<[string, (of: Job) => Edit]>([
    ['moved', () => ({ do: 'move-sheet', id: 'better', index: 0 })],
    ['removed', (of) => removeSheet(of, sheet.id)],
    [
      'given a better picture',
      (of) => carryOver(of, sheet.id, 'better', fitPictures(common(similar), 'uniform')),
    ],
  ])(
    'that is %s is to the last bit what it is when all is worked out anew, and again once that is undone',
    (_, editOf) => {
      const before = dimensionTable(job)
      const { job: after, inverse } = applyEdit(job, editOf(job))
      const goneOn = dimensionTable(after, { before })
      expect(goneOn).toEqual(dimensionTable(after))
      const { job: back } = applyEdit(after, inverse)
      expect(dimensionTable(back, { before: goneOn })).toEqual(before)
    },
  )
})
