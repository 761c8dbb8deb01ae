import { type Pixel, pixel } from '../../core/geometry/frames.ts'
import { HAND_SIGMA } from '../../core/job/from-picks/mark-by-hand.ts'
import type { UnnamedMark } from '../../core/job/from-picks/picked-mark.ts'
import {
  FEWEST_PICKS,
  type MarkNeed,
  MEASURE_NEEDS,
  REFERENCE_NEEDS,
} from '../../core/job/model/mark-needs.ts'
import type { Mark } from '../../core/job/model/types.ts'
import { firstPlaces } from '../../core/job/picks/picks-of.ts'
import type { StrokeState } from './stroke-state.ts'
import { isCornerToCorner, isSlot, isThroughHoles, type Tool } from './tool.ts'

/** One mark that is being picked: each pixel with its standard uncertainty in pixels. */
export interface NewFeature {
  need: MarkNeed
  pixels: Pixel[]
  sigmas: number[]
  done: boolean
  /** Whether some of it was picked by hand, so that no stroke is looked for. */
  byHand?: boolean
  /** Once its picks are complete and a stroke is looked for. */
  stroke?: StrokeState
}

/** One mark that is being picked, or an old one used again. */
export type PickedFeature = NewFeature | { need: MarkNeed; mark: string; done: true }

/** What was picked so far with a tool; nothing of it is in the job yet. */
export interface Picks {
  tool: Tool
  features: PickedFeature[]
  /** Whether a tool that takes any number of marks has been told that these are all. */
  all?: true
}

const NOTHING = { pixels: [] as Pixel[], sigmas: [] as number[] }

export const noPicks = (tool: Tool): Picks => ({ tool, features: [] })

/** Whether a mark takes more picks until it is ended. */
const endless = (need: MarkNeed): boolean => need === 'path' || need === 'closed path'

/** The marks a tool asks for, in the order that they are picked. */
export function needsOf(tool: Tool): readonly MarkNeed[] {
  switch (tool.kind) {
    case 'look':
      return []
    case 'outline':
    case 'note':
    case 'figure':
      return ['point', 'point']
    case 'straighten':
      return ['line']
    case 'common':
      return ['point']
    case 'repeat':
      return [tool.need]
    case 'reference':
      return REFERENCE_NEEDS[tool.reference]
    case 'measure':
      return isThroughHoles(tool) ? FEWEST_HOLES : (MEASURE_NEEDS[tool.measure][0] ?? [])
  }
}

/** A circle goes through three places at the least. */
const FEWEST_HOLES: readonly MarkNeed[] = ['circle', 'circle', 'circle']

const last = (picks: Picks): PickedFeature | undefined => picks.features.at(-1)

/** What is to be picked now; null when the tool has all it asks for. */
export function wanted(picks: Picks): MarkNeed | null {
  const current = last(picks)
  if (current !== undefined && !current.done) return current.need
  if (isThroughHoles(picks.tool)) return picks.all === true ? null : 'circle'
  return needsOf(picks.tool)[picks.features.length] ?? null
}

/** Whether a mark is begun that takes more picks. */
export const isOpen = (picks: Picks): boolean => last(picks)?.done === false

export const isComplete = (picks: Picks): boolean =>
  picks.tool.kind !== 'look' && wanted(picks) === null && picks.features.length > 0

/**
 * Whether a mark has picks enough. A round end of a slot is found from one pick; where it is not, it takes as many as any circle.
 */
function isEnough(tool: Tool, need: MarkNeed, picks: number, byHand: boolean): boolean {
  return (isSlot(tool) && !byHand && picks === 1) || picks >= FEWEST_PICKS[need]
}

/**
 * After one more pick.
 * @param sigma standard uncertainty of each coordinate, pixels
 * @param byHand whether it is meant exactly where it is, whatever is drawn there
 */
export function withPick(picks: Picks, pixel: Pixel, sigma = HAND_SIGMA, byHand = false): Picks {
  const need = wanted(picks)
  if (need === null) return picks
  const current = last(picks)
  const begun: Pick<NewFeature, 'pixels' | 'sigmas' | 'byHand'> =
    current !== undefined && 'pixels' in current && !current.done ? current : NOTHING
  const pixels = [...begun.pixels, pixel]
  const sigmas = [...begun.sigmas, sigma]
  const isHand = byHand || begun.byHand === true
  const feature: NewFeature = {
    need,
    pixels,
    sigmas,
    done: !endless(need) && isEnough(picks.tool, need, pixels.length, isHand),
    ...(isHand ? { byHand: true } : {}),
  }
  const before = pixels.length > 1 ? picks.features.slice(0, -1) : picks.features
  return { ...picks, features: [...before, feature] }
}

/** Tools that take no old mark. */
const NEW_ONLY: ReadonlySet<Tool['kind']> = new Set(['outline', 'note', 'figure', 'repeat', 'common'])

/** Whether an old mark can stand for what is to be picked now. */
export function takes(picks: Picks, mark: Mark): boolean {
  const need = wanted(picks)
  const current = last(picks)
  if (need === null || NEW_ONLY.has(picks.tool.kind)) return false
  if (current !== undefined && !current.done) return false
  if (picks.features.some((feature) => 'mark' in feature && feature.mark === mark.id)) return false
  return need === 'closed path' ? mark.kind === 'path' && mark.closed === true : mark.kind === need
}

/** After an old mark was taken for what was wanted. */
export function withMark(picks: Picks, mark: Mark): Picks {
  const need = wanted(picks)
  if (need === null || !takes(picks, mark)) return picks
  return { ...picks, features: [...picks.features, { need, mark: mark.id, done: true }] }
}

/** Whether the path that is being picked has points enough to be ended. */
export function canEnd(picks: Picks): boolean {
  const current = last(picks)
  if (isThroughHoles(picks.tool)) {
    return picks.all !== true && picks.features.length >= FEWEST_HOLES.length && current?.done === true
  }
  return (
    current !== undefined &&
    !current.done &&
    endless(current.need) &&
    current.pixels.length >= FEWEST_PICKS[current.need]
  )
}

/** Ends the path that is being picked. */
export function ended(picks: Picks): Picks {
  const current = last(picks)
  if (current === undefined || !canEnd(picks)) return picks
  if (isThroughHoles(picks.tool)) return { ...picks, all: true }
  return { ...picks, features: [...picks.features.slice(0, -1), { ...current, done: true } as PickedFeature] }
}

/** Without the newest pick. */
export function withoutLast({ all, ...picks }: Picks): Picks {
  const current = last(picks)
  if (current === undefined) return picks
  const before = picks.features.slice(0, -1)
  if ('mark' in current || current.pixels.length === 1) return { ...picks, features: before }
  const { stroke, ...rest } = current
  const shorter: NewFeature = {
    ...rest,
    pixels: current.pixels.slice(0, -1),
    sigmas: current.sigmas.slice(0, -1),
    done: false,
  }
  return { ...picks, features: [...before, shorter] }
}

/**
 * With the newest pick moved by so many pixels; an old mark stays where it is. Whoever moves a pick by keys looks at
 * it through the lens, so however coarsely it was placed, it is now as good as a careful one by hand, and none that
 * was found on a stroke.
 */
export function nudged(picks: Picks, dx: number, dy: number): Picks {
  const current = last(picks)
  if (current === undefined || 'mark' in current) return picks
  const [x, y] = current.pixels.at(-1) as Pixel
  const pixels = [...current.pixels.slice(0, -1), pixel(x + dx, y + dy) as Pixel]
  const sigmas = [...current.sigmas.slice(0, -1), HAND_SIGMA]
  const { stroke, ...rest } = current
  const done = current.done && isEnough(picks.tool, current.need, pixels.length, true)
  const moved: NewFeature = { ...rest, pixels, sigmas, done, byHand: true }
  return { ...picks, features: [...picks.features.slice(0, -1), moved] }
}

/** The newest mark, when its picks are complete and a stroke may be looked for under them; null otherwise. */
export function readyForStroke(picks: Picks): NewFeature | null {
  const current = last(picks)
  if (current === undefined || 'mark' in current || !current.done || current.byHand === true) return null
  const outlines = isCornerToCorner(picks.tool)
  return endless(current.need) || outlines || current.stroke !== undefined ? null : current
}

/** Whether a stroke is still being looked for under one of the marks. */
export const isLooking = ({ features }: Picks): boolean =>
  features.some((feature) => 'pixels' in feature && feature.stroke?.state === 'looking')

/** With what is still looked for taken as it was picked, by hand: what a search finds later no longer counts. */
export const byHandInstead = (picks: Picks): Picks => ({
  ...picks,
  features: picks.features.map((feature) => {
    if (!('pixels' in feature) || feature.stroke?.state !== 'looking') return feature
    const { stroke, ...asPicked } = feature
    return { ...asPicked, byHand: true }
  }),
})

/** With what is known of the stroke under one of the marks; picks that no longer have it stay as they are. */
export function withStroke(
  picks: Picks,
  of: NewFeature,
  stroke: StrokeState,
): { picks: Picks; now: NewFeature } {
  const point = stroke.state === 'found' && of.need === 'point' ? stroke.mark : null
  const now: NewFeature = {
    ...of,
    ...(point === null ? {} : { pixels: [...firstPlaces(point)], sigmas: [point.sigma] }),
    stroke,
  }
  const features = picks.features.map((one) => (one === of ? now : one))
  return { picks: picks.features.includes(of) ? { ...picks, features } : picks, now }
}

/** Whether a mark was to be found from one pick alone, which by itself is none. */
export const isOfOnePick = ({ tool }: Picks, { need, pixels }: NewFeature): boolean =>
  isSlot(tool) && pixels.length < FEWEST_PICKS[need]

/** With a mark that was not found from one pick alone to be picked on; what was picked after it is given up. */
export function pickedOn(picks: Picks, of: NewFeature): Picks {
  const place = picks.features.indexOf(of)
  if (place < 0) return picks
  const { stroke, ...rest } = of
  return { ...picks, features: [...picks.features.slice(0, place), { ...rest, done: false }] }
}

/** Without a mark that was picked, where it is the newest. */
export const withoutFeature = (picks: Picks, of: PickedFeature): Picks =>
  last(picks) === of ? { ...picks, features: picks.features.slice(0, -1) } : picks

/** What was found for a mark that is being picked; null when it is by hand, or the search goes on. */
export const foundMark = (feature: PickedFeature): UnnamedMark | null =>
  'pixels' in feature && feature.stroke?.state === 'found' ? feature.stroke.mark : null

/** Where the newest pick is; null when there is none or it is an old mark. */
export function lastPixel(picks: Picks): Pixel | null {
  const current = last(picks)
  return current === undefined || 'mark' in current ? null : (current.pixels.at(-1) ?? null)
}

/** Whether nothing was picked, taken back or put down between the two. */
export const isAsFar = (one: Picks, other: Picks): boolean =>
  one.tool === other.tool && picksIn(one) === picksIn(other)

/** How many picks there are; an old mark that is taken counts as one. */
const picksIn = ({ features }: Picks): number =>
  features.reduce((sum, feature) => sum + ('pixels' in feature ? feature.pixels.length : 1), 0)
