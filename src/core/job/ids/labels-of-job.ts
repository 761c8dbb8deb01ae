import { type IdKind, mintedFor } from './id-form.ts'
import { type Labelled, labelOf, labelOfId } from './label.ts'

/** What is asked of a job to know the labels in it. */
export interface LabelledJob {
  readonly people: readonly Labelled[]
  readonly instruments: readonly Labelled[]
  readonly sheets: readonly Labelled[]
  readonly views: readonly (Labelled & { readonly references: readonly Labelled[] })[]
  readonly marks: readonly Labelled[]
  readonly dimensions: readonly { readonly evidence: readonly Labelled[] }[]
  readonly relations: readonly Labelled[]
  readonly notes: readonly Labelled[]
}

/** The label that goes with an id; one that was not minted is its own. */
export type Labels = (id: string) => string

const LISTS: { readonly [K in IdKind]: (job: LabelledJob) => readonly (readonly Labelled[])[] } = {
  person: ({ people }) => [people],
  instrument: ({ instruments }) => [instruments],
  sheet: ({ sheets }) => [sheets],
  view: ({ views }) => [views],
  mark: ({ marks }) => [marks],
  reference: ({ views }) => views.map(({ references }) => references),
  evidence: ({ dimensions }) => dimensions.map(({ evidence }) => evidence),
  relation: ({ relations }) => [relations],
  note: ({ notes }) => [notes],
}

/** The labels of some things, looked for among them each time. */
export const labelsAmong =
  (items: (kind: IdKind) => Iterable<readonly Labelled[]>): Labels =>
  (id) => {
    const kind = mintedFor(id)
    if (kind === undefined) return id
    for (const list of items(kind)) {
      const item = list.find((one) => one.id === id)
      if (item !== undefined) return labelOf(item)
    }
    return labelOfId(id)
  }

/** The things of a kind that a job holds, list by list. */
export const listsOf = (job: LabelledJob, kind: IdKind): readonly (readonly Labelled[])[] => LISTS[kind](job)

/** The label of one thing of a job. To say those of many, `labelsOfJob` is quicker. */
export const labelIn = (job: LabelledJob, id: string): string => labelsAmong((kind) => listsOf(job, kind))(id)

/** The labels of all that a job holds; what there is of a kind is gone through when the first of it is asked for. */
export function labelsOfJob(job: LabelledJob): Labels {
  const byKind = new Map<IdKind, ReadonlyMap<string, Labelled>>()
  return (id) => {
    const kind = mintedFor(id)
    if (kind === undefined) return id
    let items = byKind.get(kind)
    if (items === undefined) {
      items = new Map(listsOf(job, kind).flatMap((list) => list.map((item) => [item.id, item] as const)))
      byKind.set(kind, items)
    }
    const item = items.get(id)
    return item === undefined ? labelOfId(id) : labelOf(item)
  }
}
