import { activeFormulas } from '../../../../src/core/formula/evaluation-order.ts'
import { standsIn } from '../../../../src/core/formula/rename-in-formula.ts'
import type { Edit } from '../../../../src/core/job/edits/edit.ts'
import { ITEM_KINDS, ITEM_WORDS, nameOf } from '../../../../src/core/job/model/item-kinds.ts'
import type { Dimension, Job, Mark } from '../../../../src/core/job/model/types.ts'
import { anyPixel, type Draw, evidence, length, mark, oneOf, some, sometimes } from '../arbitrary-job.ts'
import { anyEdit } from './arbitrary-edit.ts'

/** Deeper than anything may be nested in a job, but not than in an edit. */
const DEEP: unknown = JSON.parse(`${'['.repeat(70)}${']'.repeat(70)}`)

const NAMES = ['dim_1', 'dim_2', 'dim_3', 'dim_4', 'dim_5', 'dim_new', 'gone']

const names = (draw: Draw, job: Job): string =>
  oneOf(draw, [
    ...job.dimensions.map(({ name }) => name),
    ...job.dimensions.map(({ name }) => name),
    ...NAMES,
  ]) ?? 'gone'

/** A formula over any names, that may run in a circle, mix kinds, use what is gone or mention it in passing. */
function anyFormula(draw: Draw, job: Job): string {
  const [a, b] = [names(draw, job), names(draw, job)]
  return (
    oneOf(draw, [a, a, `${a} + ${b}`, `${a} * ${b}`, `sqrt(${a} * ${a})`, `${a} # not ${b}`, `${a} +`]) ?? a
  )
}

const anyName = (draw: Draw, job: Job, kind: (typeof ITEM_WORDS)[number]): string => {
  const { list, key } = ITEM_KINDS[kind]
  const item: object | undefined = some(draw, 9) === 0 ? undefined : oneOf<object>(draw, job[list])
  return item === undefined ? 'gone' : nameOf(item, key)
}

const anyBy = (draw: Draw, job: Job): string => (some(draw, 2) === 0 ? 'eve' : anyName(draw, job, 'person'))

/** A dimension and a piece of its evidence, which may not be there. */
function anyEvidence(draw: Draw, job: Job): { dimension: string; id: string; held: Dimension | undefined } {
  const held = oneOf(draw, job.dimensions)
  const id = oneOf(draw, held?.evidence ?? [])?.id
  return { dimension: held?.name ?? 'gone', id: id ?? 'gone', held }
}

/** A mark that something is measured by, if there is one, or any. */
function markInUse(draw: Draw, job: Job): Mark | undefined {
  const evidence = job.dimensions.flatMap((dimension) => dimension.evidence)
  const scaled = evidence.flatMap((one) => (one.basis === 'scaled' ? one.marks : []))
  const known = job.views.flatMap(({ references }) => references.flatMap(({ marks }): string[] => marks))
  const id = oneOf(draw, [...scaled, ...known])
  return job.marks.find((mark) => mark.id === id) ?? oneOf(draw, job.marks)
}

/** Other marks, or another measure, for a piece of scaled evidence. */
function measuredOtherwise(draw: Draw, job: Job): object {
  const scaled = job.dimensions.flatMap(({ name, evidence }) =>
    evidence.flatMap((one) =>
      one.basis === 'scaled' ? [{ dimension: name, id: one.id, marks: one.marks }] : [],
    ),
  )
  const { marks = [], ...evidence } = oneOf(draw, scaled) ?? { dimension: 'gone', id: 'gone' }
  const [mark = 'gone'] = marks
  const measure = oneOf(draw, ['distance', 'spacing', 'diameter', 'angle', 'area'])
  const sets = [
    { marks: [mark] },
    { marks: [mark, mark] },
    { marks: [mark, anyName(draw, job, 'mark')] },
    { measure },
  ]
  return { do: 'change-evidence', ...evidence, set: oneOf<object>(draw, sets) }
}

type Maker = (draw: Draw, job: Job, fresh: string) => object

/** Edits that are likely to be refused, or to touch more than they say. */
const MAKERS: readonly Maker[] = [
  // Not every standard of sheet gauges has such numbers.
  (draw, _, fresh) => ({
    do: 'add-instrument',
    item: { id: fresh, name: 'gauge', resolution: oneOf(draw, ['No. 38 GA', 'No. 6/0 GA']) },
  }),
  (_, { gauge }) => ({
    do: 'describe',
    set: { gauge: gauge === 'birmingham' ? 'us-standard-1893' : 'birmingham' },
  }),
  (_, { unit }) => ({ do: 'describe', set: { unit: unit === 'in' ? 'mm' : 'in' } }),
  (draw, job, fresh) => ({
    do: 'add-evidence',
    dimension: anyName(draw, job, 'dimension'),
    item: {
      id: oneOf(draw, [fresh, fresh, fresh, 'mean', 'P1']),
      basis: 'derived',
      formula: anyFormula(draw, job),
      ...(some(draw, 3) === 0 ? { withdrawn: 'a slip' } : {}),
    },
  }),
  (draw, job) => {
    const { dimension, id } = anyEvidence(draw, job)
    return { do: 'change-evidence', dimension, id, set: { formula: anyFormula(draw, job) } }
  },
  (draw, job) => {
    const { dimension, id } = anyEvidence(draw, job)
    const set = oneOf<object>(draw, [{ by: anyBy(draw, job) }, { readings: ['twelve'] }])
    return { do: 'change-evidence', dimension, id, set }
  },
  measuredOtherwise,
  (draw, job) => {
    const { dimension, id } = anyEvidence(draw, job)
    return sometimes(draw)
      ? { do: 'withdraw-evidence', dimension, id, why: 'misread' }
      : { do: 'reinstate-evidence', dimension, id }
  },
  (draw, job) => {
    const { dimension, id } = anyEvidence(draw, job)
    return { do: 'remove-evidence', dimension, id, undo: true }
  },
  (draw, job) => ({
    do: 'adopt',
    dimension: anyName(draw, job, 'dimension'),
    adopt: anyEvidence(draw, job).id,
  }),
  (draw, job) => {
    const dimension = anyName(draw, job, 'dimension')
    const kind = oneOf(draw, ['length', 'angle', 'area', 'count'])
    return {
      do: 'change-dimension',
      name: dimension,
      set: oneOf(draw, [{ kind }, { tolerance: 'tight' }, { later: DEEP }]),
    }
  },
  (draw, job) => ({
    do: 'rename-dimension',
    name: anyName(draw, job, 'dimension'),
    to: oneOf(draw, [...NAMES, 'pi', '2x']),
  }),
  (draw, job, fresh) => ({
    do: 'add-relation',
    item: { id: fresh, text: `${anyFormula(draw, job)} = ${anyFormula(draw, job)}` },
  }),
  (draw, job) => ({
    do: 'change-relation',
    id: anyName(draw, job, 'relation'),
    set: oneOf(draw, [{ text: `${names(draw, job)} = ${anyFormula(draw, job)}` }, { u: 'hair' }]),
  }),
  (draw, job, fresh) => {
    const item = mark(draw, job, oneOf(draw, [fresh, fresh, anyName(draw, job, 'mark')]) ?? fresh)
    const slip = oneOf(draw, [
      {},
      { sheet: 'gone' },
      { by: anyBy(draw, job) },
      { pixels: [] },
      { later: DEEP },
    ])
    return { do: 'add-mark', item: { ...item, ...slip }, index: some(draw, job.marks.length + 1) }
  },
  (draw, job) => {
    const held = markInUse(draw, job)
    const set = oneOf<object>(draw, [
      { kind: 'point', pixel: anyPixel(draw) },
      { kind: 'circle', pixels: [anyPixel(draw), anyPixel(draw), anyPixel(draw)] },
      { kind: 'path', pixels: [anyPixel(draw), anyPixel(draw), anyPixel(draw)], closed: sometimes(draw) },
      { sheet: anyName(draw, job, 'sheet') },
      { by: anyBy(draw, job) },
      { repeatedBy: [{}, {}] },
      { label: 'rivet' },
    ])
    return { do: 'change-mark', id: held?.id ?? 'gone', set }
  },
  (draw, job) => {
    const path = oneOf(
      draw,
      job.marks.filter(({ kind }) => kind === 'path'),
    )
    return {
      do: 'change-mark',
      id: path?.id ?? 'gone',
      set: { closed: path?.kind === 'path' && path.closed !== true },
    }
  },
  (draw, job) => ({
    do: 'change-view',
    id: anyName(draw, job, 'view'),
    set: { sheet: anyName(draw, job, 'sheet') },
  }),
  (draw, job) => ({ do: 'change-view', id: anyName(draw, job, 'view'), set: { outline: [anyPixel(draw)] } }),
  (draw, job, fresh) => {
    const { sheet = 'gone', references = [] } = oneOf(draw, job.views) ?? {}
    const twice = some(draw, 2) === 0 ? [...references, ...references] : references
    return { do: 'add-view', item: { id: fresh, sheet, name: '', mapping: 'uniform', references: twice } }
  },
  (draw, job, fresh) => ({
    do: 'add-reference',
    view: anyName(draw, job, 'view'),
    item: {
      id: oneOf(draw, [fresh, 'R1']),
      kind: 'distance',
      marks: [anyName(draw, job, 'mark'), anyName(draw, job, 'mark')],
      size: oneOf(draw, [length(draw), '0 in', 'long']),
    },
  }),
  (draw, job, fresh) => ({
    do: 'add-note',
    item: {
      id: fresh,
      sheet: anyName(draw, job, 'sheet'),
      outline: [],
      text: '',
      by: anyBy(draw, job),
      about: names(draw, job),
    },
  }),
  (draw, _, fresh) => ({
    do: 'add-person',
    item: { id: oneOf(draw, [fresh, 'eve', 'who1']), name: 'Eve' },
  }),
  (draw, job) => {
    const kind = oneOf(draw, ITEM_WORDS) ?? 'mark'
    const { key } = ITEM_KINDS[kind]
    return {
      do: `remove-${kind}`,
      [key]: anyName(draw, job, kind),
      ...(kind === 'dimension' && sometimes(draw) ? { undo: true } : {}),
    }
  },
  (draw) => ({
    do: 'describe',
    ...oneOf<object>(draw, [
      { clear: ['gauge'] },
      { set: { tolerance: oneOf(draw, ['tight', '±1/64', '1/32"']) } },
      { set: { later: DEEP } },
      { set: { title: 'Windlass' } },
    ]),
  }),
  (draw, job, fresh) => {
    const at = some(draw, job.dimensions.length)
    const held = { kind: oneOf(draw, ['length', 'angle'] as const) ?? 'length' }
    const item = evidence(draw, job, held, at, 'X1')
    return {
      do: 'add-dimension',
      item: {
        name: oneOf(draw, [`d_${fresh}`, 'dim_new', 'gone', '2x', 'pi']),
        label: '',
        ...held,
        evidence: item === undefined ? [] : some(draw, 4) === 0 ? [item, item] : [item],
        ...(sometimes(draw) ? { adopt: 'X1' } : {}),
      },
    }
  },
]

/** A thing taken away and put back, as it was or as something else. */
function removedAndAdded(draw: Draw, job: Job): Edit[] {
  const kind = oneOf(draw, ITEM_WORDS) ?? 'mark'
  const { list, key } = ITEM_KINDS[kind]
  const item = oneOf<object>(draw, job[list])
  if (item === undefined) return []
  const other = kind === 'mark' ? (mark(draw, job, nameOf(item, 'id')) ?? item) : item
  const remove = {
    do: `remove-${kind}`,
    [key]: nameOf(item, key),
    ...(kind === 'dimension' ? { undo: true } : {}),
  }
  return [remove, { do: `add-${kind}`, item: sometimes(draw) ? item : other }] as unknown as Edit[]
}

/** Everybody taken off the list of people, or all marks. */
const allRemoved = (draw: Draw, job: Job): Edit[] =>
  sometimes(draw)
    ? job.people.map(({ id }): Edit => ({ do: 'remove-person', id }))
    : job.marks.map(({ id }): Edit => ({ do: 'remove-mark', id }))

/** Two dimensions that are to be worked out from each other, or one from itself. */
function inCircle(draw: Draw, job: Job, fresh: string): Edit[] {
  const a = oneOf(draw, job.dimensions)
  const b = oneOf(
    draw,
    job.dimensions.filter(({ kind }) => kind === a?.kind),
  )
  if (a === undefined || b === undefined) return []
  const from = (id: string, dimension: string, formula: string): Edit => ({
    do: 'add-evidence',
    dimension,
    item: { id, basis: 'derived', formula },
  })
  return [from(`${fresh}a`, a.name, b.name), from(`${fresh}b`, b.name, a.name)]
}

/** A dimension taken away, and a relation that does not use it but mentions it in passing. */
function goneInPassing(draw: Draw, job: Job, fresh: string): Edit[] {
  const gone = oneOf(draw, job.dimensions)
  const other = job.dimensions.find(({ name }) => name !== gone?.name)
  if (gone === undefined || other === undefined) return []
  return [
    { do: 'remove-dimension', name: gone.name, undo: true },
    { do: 'add-relation', item: { id: fresh, text: `${other.name} = 2 * ${other.name} # not ${gone.name}` } },
  ]
}

/** A view put on another sheet, without the references that would hold it where it is. */
function viewElsewhere(draw: Draw, job: Job): Edit[] {
  const used = job.dimensions.flatMap(({ evidence }) =>
    evidence.flatMap((one) => (one.basis === 'scaled' ? [one.view] : [])),
  )
  const id = sometimes(draw) ? oneOf(draw, used) : oneOf(draw, job.views)?.id
  const references = job.views.find((view) => view.id === id)?.references ?? []
  if (id === undefined) return []
  return [
    ...references.map((one): Edit => ({ do: 'remove-reference', view: id, id: one.id })),
    { do: 'change-view', id, set: { sheet: anyName(draw, job, 'sheet') } },
  ]
}

/** A dimension made one of another kind, without the evidence that would hold it to its own. */
function otherKind(draw: Draw, job: Job): Edit[] {
  const formulas = job.dimensions.flatMap(activeFormulas).join(' ')
  const used = job.dimensions.filter(({ name }) => formulas.includes(name))
  const dimension = oneOf(draw, used) ?? oneOf(draw, job.dimensions)
  const kind = oneOf(draw, ['length', 'angle', 'area', 'count'] as const) ?? 'length'
  if (dimension === undefined) return []
  const { name, evidence } = dimension
  return [
    { do: 'adopt', dimension: name },
    ...evidence.map(({ id }): Edit => ({ do: 'remove-evidence', dimension: name, id, undo: true })),
    { do: 'change-dimension', name, set: { kind }, clear: ['tolerance'] },
  ]
}

/** A dimension that is renamed twice, and a formula that used it made another in between. */
function renamedTwice(draw: Draw, job: Job, fresh: string): Edit[] {
  const derived = job.dimensions.flatMap(({ name, evidence }) =>
    evidence.flatMap((one) =>
      one.basis === 'derived' ? [{ dimension: name, id: one.id, formula: one.formula }] : [],
    ),
  )
  const one = oneOf(draw, derived)
  const used = job.dimensions.filter(({ name }) => one !== undefined && standsIn(one.formula, name))
  const name = oneOf(draw, used)?.name
  if (one === undefined || name === undefined) return []
  const { dimension, id } = one
  const holder = dimension === name ? `${fresh}_a` : dimension
  return [
    { do: 'rename-dimension', name, to: `${fresh}_a` },
    { do: 'change-evidence', dimension: holder, id, set: { formula: names(draw, job) } },
    { do: 'rename-dimension', name: `${fresh}_a`, to: `${fresh}_b` },
  ]
}

function roughList(draw: Draw, job: Job, fresh: string): Edit[] {
  const pieces = Array.from({ length: 1 + some(draw, 3) }, (_, i): Edit[] => {
    const which = some(draw, 10)
    if (which === 0) return removedAndAdded(draw, job)
    if (which === 1) return allRemoved(draw, job)
    if (which === 2) return inCircle(draw, job, `${fresh}${i}`)
    if (which === 3) return goneInPassing(draw, job, `${fresh}${i}`)
    if (which === 4) return viewElsewhere(draw, job)
    if (which === 5) return otherKind(draw, job)
    if (which === 6) return renamedTwice(draw, job, `${fresh}${i}`)
    return [roughEdit(draw, job, `${fresh}${i}`)]
  })
  return pieces.flat()
}

/** An edit that may be made or refused for any reason there is. Of several, each is meant for the job as it is before them. */
export function roughEdit(draw: Draw, job: Job, fresh: string): Edit {
  const which = some(draw, 9)
  if (which < 2) {
    const edits = roughList(draw, job, fresh)
    if (edits.length > 0) return { do: 'several', name: 'a batch', edits }
  }
  if (which < 5) {
    const sound = anyEdit(draw, job, fresh)
    if (sound !== undefined) return sound
  }
  const maker = oneOf(draw, MAKERS) as Maker
  return maker(draw, job, fresh) as Edit
}
