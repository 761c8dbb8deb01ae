import type { Pixel } from '../../core/geometry/frames.ts'
import { type MarkNeed, MEASURE_NEEDS, REFERENCE_NEEDS } from '../../core/job/mark-needs.ts'
import type { Mark } from '../../core/job/types.ts'
import type { Tool } from './tool.ts'

/** One mark that is being picked, each pixel with its standard uncertainty in pixels, or an old one used again. */
export type PickedFeature =
  | { need: MarkNeed; pixels: Pixel[]; sigmas: number[]; done: boolean }
  | { need: MarkNeed; mark: string; done: true }

/** What was picked so far with a tool; nothing of it is in the job yet. */
export interface Picks {
  tool: Tool
  features: PickedFeature[]
}

/** Pixels. Common practice, no source: a careful pick by hand on an enlarged scan is good to about a pixel. */
export const HAND_SIGMA = 1

const NOTHING = { pixels: [] as Pixel[], sigmas: [] as number[] }

export const noPicks = (tool: Tool): Picks => ({ tool, features: [] })

/** Fewest picks that settle a mark of each kind; a path takes more until it is ended. */
const ENOUGH: Record<MarkNeed, number> = { point: 1, line: 2, circle: 3, path: 2, 'closed path': 3 }

const endless = (need: MarkNeed): boolean => need === 'path' || need === 'closed path'

/** The marks a tool asks for, in the order that they are picked. */
export function needsOf(tool: Tool): readonly MarkNeed[] {
  switch (tool.kind) {
    case 'look':
      return []
    case 'outline':
      return ['point', 'point']
    case 'reference':
      return REFERENCE_NEEDS[tool.reference]
    case 'measure':
      return MEASURE_NEEDS[tool.measure][0] ?? []
  }
}

const last = (picks: Picks): PickedFeature | undefined => picks.features.at(-1)

/** What is to be picked now; null when the tool has all it asks for. */
export function wanted(picks: Picks): MarkNeed | null {
  const current = last(picks)
  if (current !== undefined && !current.done) return current.need
  return needsOf(picks.tool)[picks.features.length] ?? null
}

export const isComplete = (picks: Picks): boolean =>
  picks.tool.kind !== 'look' && wanted(picks) === null && picks.features.length > 0

/**
 * After one more pick.
 * @param sigma standard uncertainty of each coordinate, pixels
 */
export function withPick(picks: Picks, pixel: Pixel, sigma = HAND_SIGMA): Picks {
  const need = wanted(picks)
  if (need === null) return picks
  const current = last(picks)
  const begun = current !== undefined && 'pixels' in current && !current.done ? current : NOTHING
  const pixels = [...begun.pixels, pixel]
  const sigmas = [...begun.sigmas, sigma]
  const feature: PickedFeature = {
    need,
    pixels,
    sigmas,
    done: !endless(need) && pixels.length >= ENOUGH[need],
  }
  const before = pixels.length > 1 ? picks.features.slice(0, -1) : picks.features
  return { ...picks, features: [...before, feature] }
}

/** Whether an old mark can stand for what is to be picked now. */
export function takes(picks: Picks, mark: Mark): boolean {
  const need = wanted(picks)
  const current = last(picks)
  if (need === null || picks.tool.kind === 'outline') return false
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
  return (
    current !== undefined &&
    !current.done &&
    endless(current.need) &&
    current.pixels.length >= ENOUGH[current.need]
  )
}

/** Ends the path that is being picked. */
export function ended(picks: Picks): Picks {
  const current = last(picks)
  if (current === undefined || !canEnd(picks)) return picks
  return { ...picks, features: [...picks.features.slice(0, -1), { ...current, done: true } as PickedFeature] }
}

/** Without the newest pick. */
export function withoutLast(picks: Picks): Picks {
  const current = last(picks)
  if (current === undefined) return picks
  const before = picks.features.slice(0, -1)
  if ('mark' in current || current.pixels.length === 1) return { ...picks, features: before }
  return {
    ...picks,
    features: [
      ...before,
      {
        ...current,
        pixels: current.pixels.slice(0, -1),
        sigmas: current.sigmas.slice(0, -1),
        done: false,
      },
    ],
  }
}

/**
 * With the newest pick moved by so many pixels; an old mark stays where it is. Whoever moves a pick by keys looks at
 * it through the lens, so however coarsely it was placed, it is now as good as a careful one.
 */
export function nudged(picks: Picks, dx: number, dy: number): Picks {
  const current = last(picks)
  if (current === undefined || 'mark' in current) return picks
  const [x, y] = current.pixels.at(-1) as Pixel
  const pixels = [...current.pixels.slice(0, -1), [x + dx, y + dy] as Pixel]
  const sigmas = [...current.sigmas.slice(0, -1), Math.min(HAND_SIGMA, current.sigmas.at(-1) ?? HAND_SIGMA)]
  return { ...picks, features: [...picks.features.slice(0, -1), { ...current, pixels, sigmas }] }
}

/** Where the newest pick is; null when there is none or it is an old mark. */
export function lastPixel(picks: Picks): Pixel | null {
  const current = last(picks)
  return current === undefined || 'mark' in current ? null : (current.pixels.at(-1) ?? null)
}
