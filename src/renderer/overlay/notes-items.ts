import { type Pixel, type Screen, screen } from '../../core/geometry/frames.ts'
import { afterNoun } from '../../core/job/ids/label.ts'
import type { Job, Note } from '../../core/job/model/types.ts'
import { plainText } from '../../core/words/plain-text.ts'
import type { Selection } from '../bench/selection.ts'
import type { Station } from '../bench/stations.ts'

import type { Item } from './items.ts'
import type { Laid, Stroke } from './laid.ts'
import type { Lettering, OnScreen } from './lay-out-size.ts'

export type NoteItem = Extract<Item, { kind: 'note' }>

/** Chord of one scallop of a revision cloud, CSS pixels. */
const SCALLOP = 15
/** How far a scallop bulges, as a share of its chord. */
const BULGE = 0.34
/** Points that one scallop is drawn through. */
const FINE = 6
/** A side seen close to is many screens long: beyond so many scallops they become larger. */
const MOST = 240
/** Height of the triangle that has the number of a note, and half of its base, CSS pixels. */
const TALL = 26
const HALF = 15
/** The number stands at this share of the height from the base. */
const LINE = 0.34

/** A note's number as it is drawn, which N3 has in its id; a longer id stays beside its triangle's point. */
const numberOf = (note: Note): string =>
  plainText(/^N(\d{1,4})$/.exec(note.id)?.[1] ?? afterNoun(note).slice(0, 4))

/**
 * The notes of a sheet: as revision clouds at the station where the sheet is looked over, and of a note that is chosen;
 * elsewhere by their triangles alone, so that they don't hide what is measured.
 */
export function noteItems(shown: {
  job: Job
  sheet: string
  station: Station
  selection: Selection | null
}): NoteItem[] {
  const { job, sheet, station, selection } = shown
  return job.notes
    .filter((note) => note.sheet === sheet && note.outline.length > 0)
    .map((note) => {
      const { id, outline } = note
      const chosen = selection?.kind === 'note' && selection.id === id
      return {
        kind: 'note',
        about: { kind: 'note', id },
        chosen,
        outline,
        number: numberOf(note),
        cloud: chosen || station === 'sheet',
      }
    })
}

/** Twice the area that points go round, more than nothing when they go clockwise as seen. */
function turning(points: readonly Screen[]): number {
  return points.reduce((sum, [ax, ay], k) => {
    const [bx, by] = points[(k + 1) % points.length] ?? [ax, ay]
    return sum + (ax * by - bx * ay)
  }, 0)
}

/** One side of a cloud, bulging to the left as one goes along it, its last point left out. */
function scallops([ax, ay]: Screen, [bx, by]: Screen, out: number): Screen[] {
  const long = Math.hypot(bx - ax, by - ay)
  const count = Math.min(MOST, Math.max(1, Math.round(long / SCALLOP)))
  const bulge = out * BULGE * (long / count)
  const [nx, ny] = long === 0 ? [0, 0] : [(by - ay) / long, -(bx - ax) / long]
  return Array.from({ length: count * FINE }, (_, k): Screen => {
    const t = k / (count * FINE)
    const off = bulge * Math.sin((Math.PI * (k % FINE)) / FINE)
    return screen(ax + t * (bx - ax) + off * nx, ay + t * (by - ay) + off * ny)
  })
}

/** A revision cloud along an outline, its scallops outwards. */
export function cloudAlong(points: readonly Screen[]): Screen[] {
  const out = turning(points) >= 0 ? 1 : -1
  return points.flatMap((point, k) => scallops(point, points[(k + 1) % points.length] ?? point, out))
}

/** The corner of an outline that is uppermost, of several the rightmost, as the sheet is seen. */
const flagPlace = (points: readonly Screen[]): Screen =>
  points.reduce((best, one) =>
    one[1] < best[1] - 1 || (one[1] <= best[1] + 1 && one[0] > best[0]) ? one : best,
  )

/** Where a note falls on the screen: its cloud, and the triangle with its number. */
export function layOutNote(item: NoteItem, at: OnScreen, lettering: Lettering): Laid {
  const points = item.outline.map((pixel: Pixel): Screen => at(pixel))
  const [x, y] = flagPlace(points)
  const base = y - 4
  const triangle: Stroke = {
    points: [screen(x - HALF, base), screen(x, base - TALL), screen(x + HALF, base)],
    line: 'full',
    closed: true,
  }
  const cloud: Stroke[] = item.cloud
    ? [{ points: cloudAlong(points), line: 'full', closed: true, fine: true }]
    : []
  const { width, height } = lettering(item.number)
  return {
    item,
    strokes: [...cloud, triangle],
    arrows: [],
    figure: {
      centre: screen(x, base - LINE * TALL),
      angle: 0,
      width: Math.min(width, HALF),
      height: Math.min(height, TALL / 2),
      text: item.number,
    },
    title: null,
    word: null,
  }
}
