import { ITEM_KINDS, nameOf } from '../../job/model/item-kinds.ts'
import type { Job } from '../../job/model/types.ts'
import { element } from '../../linear-algebra/element.ts'
import { setPlacesAside } from '../../uncertainty/source.ts'

/** What sources of error are made for, in the order in which they stand. */
const KINDS = ['sheet', 'view', 'instrument', 'mark', 'dimension'] as const
type Kind = (typeof KINDS)[number]

/** The places of the things of one kind by id or name, in the order of their list, within what was set aside for them. */
interface Area {
  readonly list: readonly object[]
  /** All stand after this place, */
  readonly from: number
  /** and before this. */
  readonly to: number
  readonly places: ReadonlyMap<string, number>
}

/**
 * Where the sources of each thing of a job stand among all sources: in the order of the job. So sums are taken in one
 * order, and a table comes out the same to the last bit whether it was worked out whole or edit by edit.
 */
export type SourcePlaces = { readonly [K in Kind]: Area }

/** @param id of a thing that has a place; of a dimension its name */
export function placeOf({ places }: Area, id: string): number {
  const place = places.get(id)
  if (place === undefined) throw new RangeError(`No place was set aside for the sources of ${id}.`)
  return place
}

/** Between neighbours, so that others fit in. */
const APART = 8

/** Places for all that a job holds, and for some more that may come. */
export const newPlaces = (job: Job): SourcePlaces => eachKind((kind) => newArea(...namedIn(job, kind)))

/**
 * The places of a job after some edits: what was there keeps its own.
 * @returns null where things changed order, or where more came than there is room for
 */
export function placesAfter(job: Job, before: SourcePlaces): SourcePlaces | null {
  const areas = KINDS.map((kind) => areaAfter(...namedIn(job, kind), before[kind]))
  return areas.includes(null) ? null : eachKind((_, i) => element(areas, i) as Area)
}

function eachKind(area: (kind: Kind, i: number) => Area): SourcePlaces {
  const [sheet, view, instrument, mark, dimension] = KINDS.map(area) as [Area, Area, Area, Area, Area]
  return { sheet, view, instrument, mark, dimension }
}

/** The list of a kind, and what its items go by. */
function namedIn(job: Job, kind: Kind): [list: readonly object[], name: (item: object) => string] {
  const { list, key } = ITEM_KINDS[kind]
  return [job[list], (item) => nameOf(item, key)]
}

function newArea(list: readonly object[], name: (item: object) => string): Area {
  const room = (Math.ceil(1.25 * list.length) + 16) * APART
  const from = setPlacesAside(room)
  const places = new Map<string, number>()
  for (const item of list) places.set(name(item), from + (places.size + 1) * APART)
  return { list, from, to: from + room, places }
}

function areaAfter(list: readonly object[], name: (item: object) => string, area: Area): Area | null {
  if (list === area.list) return area
  const names = list.map(name)
  const places = new Map<string, number>()
  let last = area.from
  for (let i = 0; i < names.length; ) {
    let next = i
    while (next < names.length && !area.places.has(element(names, next))) next++
    const known = next < names.length ? area.places.get(element(names, next)) : undefined
    const came = next - i
    const end = known ?? Math.min(last + (came + 1) * APART, area.to)
    const step = Math.floor((end - last) / (came + 1))
    if (step < 1) return null
    for (; i < next; i++) {
      last += step
      places.set(element(names, i), last)
    }
    if (known === undefined) continue
    places.set(element(names, i++), known)
    last = known
  }
  return { ...area, list, places }
}
