import { type Degrees, degrees } from '../../geometry/angle-units.ts'
import { type Pixel, pixel } from '../../geometry/frames.ts'
import { reason } from '../../words/core-words.ts'
import { calledAround, type Edit } from '../edits/edit.ts'
import type { Evidence, Job, Mark, MarkPick, Sheet } from '../model/types.ts'
import { picksOf, placesOf } from '../picks/picks-of.ts'
import { withPicks } from '../picks/with-picks.ts'
import { JobError } from '../text/job-error.ts'
import { whatIsOn } from './on-sheet.ts'
import type { PictureMapping } from './picture-mapping.ts'

/**
 * Gives a sheet the picture of another one, as one edit: all that is on it goes to where that is on the new picture, and
 * the other sheet, which nothing is on, goes. No stroke is claimed to have been found on the new picture: each pick is as
 * sure as it was on the old one together with the mapping there.
 * @param from id of the sheet that has the marks; it keeps its id, title and record
 * @param to id of the sheet that has the better picture
 * @throws JobError when something is on that already
 */
export function carryOver(job: Job, from: string, to: string, mapping: PictureMapping): Edit {
  const sheet = sheetOf(job, from)
  const better = sheetOf(job, to)
  const there = whatIsOn(job, to)
  const taken = [there.views, there.marks, there.notes, there.evidence].some(({ length }) => length > 0)
  if (from === to || taken) throw new JobError(reason('sheet.not-bare', { title: better.title }))
  const { views, marks, notes, evidence } = whatIsOn(job, from)
  const moved = (outline: readonly Pixel[]): Pixel[] => outline.map(mapping.apply)
  const turned = (angle: Degrees): Degrees => directionOn(mapping, sheet, angle)
  const the = calledAround(job)
  return {
    do: 'several',
    name: `put ${the('sheet', from)} on the picture of ${the('sheet', to)}`,
    edits: [
      { do: 'remove-sheet', id: to },
      {
        do: 'change-sheet',
        id: from,
        set: {
          scan: better.scan,
          ...(sheet.straight === undefined ? {} : { straight: turned(sheet.straight) }),
        },
      },
      ...marks.map((mark) => changeOf(mark, mapping)),
      ...views.flatMap(({ id, outline, grain }): Edit[] =>
        outline === undefined && grain === undefined
          ? []
          : [
              {
                do: 'change-view',
                id,
                set: {
                  ...(outline === undefined ? {} : { outline: moved(outline) }),
                  ...(grain === undefined ? {} : { grain: turned(grain) }),
                },
              },
            ],
      ),
      ...notes.map(({ id, outline }): Edit => ({ do: 'change-note', id, set: { outline: moved(outline) } })),
      ...evidence.flatMap(({ dimension, evidence: one }) => boxOf(dimension, one, mapping)),
    ],
  }
}

function sheetOf(job: Job, id: string): Sheet {
  const sheet = job.sheets.find((one) => one.id === id)
  if (sheet === undefined) throw new JobError(reason('edit.no-such-item', { kind: 'sheet', id }))
  return sheet
}

/** A mark where it is on the new picture; the stroke that it was found on is one of the old picture. */
function changeOf(mark: Mark, mapping: PictureMapping): Edit {
  const picks = picksOf(mark).map((pick) => pickOn(pick, mark.sigma, mapping)) as MarkPick[]
  const now = withPicks(mark, picks as never) as Mark
  const set: Record<string, unknown> = { picks: now.picks ?? picks, sigma: now.sigma }
  for (const field of ['pixel', 'pixels', 'repeats', 'repeatedBy'] as const) {
    const value = (now as Record<string, unknown>)[field]
    if (value !== undefined) set[field] = value
  }
  if (mark.kind === 'point' && mark.covariance !== undefined)
    set['covariance'] = covarianceOn(mark.covariance, mark.pixel, mapping)
  const clear = mark.stroke === undefined ? {} : { clear: ['stroke'] }
  return { do: 'change-mark', id: mark.id, set, ...clear } as Edit
}

/** J C Jᵀ with the mapping's own variance: JCGM 102:2011, 6.2. A pixel on either side is near enough for J. */
function covarianceOn(
  [xx, xy, yy]: readonly [number, number, number],
  at: Pixel,
  { apply, uAt }: PictureMapping,
): [number, number, number] {
  const origin = apply(at)
  const [right, down] = [apply(pixel(at[0] + 1, at[1])), apply(pixel(at[0], at[1] + 1))]
  const [a, b] = [right[0] - origin[0], down[0] - origin[0]]
  const [c, d] = [right[1] - origin[1], down[1] - origin[1]]
  const own = uAt(at) ** 2
  return [
    a * a * xx + 2 * a * b * xy + b * b * yy + own,
    a * c * xx + (a * d + b * c) * xy + b * d * yy,
    c * c * xx + 2 * c * d * xy + d * d * yy + own,
  ]
}

/** A pick on the new picture; its uncertainty is that of the pick together with that of the mapping where it is least sure. */
function pickOn(pick: MarkPick, ofMark: number, mapping: PictureMapping): MarkPick {
  const u = Math.max(...placesOf(pick).map(mapping.uAt))
  const scale = Math.max(...placesOf(pick).map(mapping.scaleAt))
  const sigma = Math.hypot((pick.sigma ?? ofMark) * scale, u)
  if ('pixel' in pick) return { ...pick, pixel: mapping.apply(pick.pixel), sigma }
  return { ...pick, pixels: pick.pixels.map(mapping.apply), sigma }
}

/** A direction of the old picture on the new one, as it is in the middle of the sheet. */
function directionOn(mapping: PictureMapping, { scan: { width, height } }: Sheet, angle: Degrees): Degrees {
  const turn = (angle * Math.PI) / 180
  const [x, y] = [width / 2, height / 2]
  const reach = Math.min(width, height) / 4
  const [a, b] = [
    mapping.apply(pixel(x, y)),
    mapping.apply(pixel(x + reach * Math.cos(turn), y + reach * Math.sin(turn))),
  ]
  return degrees((Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI)
}

/** The box of a printed figure: the upright one around where its corners are. */
function boxOf(dimension: string, evidence: Evidence, { apply }: PictureMapping): Edit[] {
  if (evidence.basis !== 'printed' || evidence.box === undefined) return []
  const [x, y, width, height] = evidence.box
  const corners = [
    [x, y],
    [x + width, y],
    [x, y + height],
    [x + width, y + height],
  ].map(([cx = 0, cy = 0]) => apply(pixel(cx, cy)))
  const [xs, ys] = [corners.map(([cx]) => cx), corners.map(([, cy]) => cy)]
  const [left, top] = [Math.min(...xs), Math.min(...ys)]
  const box: [number, number, number, number] = [left, top, Math.max(...xs) - left, Math.max(...ys) - top]
  return [{ do: 'change-evidence', dimension, id: evidence.id, set: { box } } as Edit]
}
