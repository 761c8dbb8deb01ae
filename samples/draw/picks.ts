import { type Pixel, pixel } from '../../src/core/geometry/frames.ts'
import type { Mark } from '../../src/core/job/model/types.ts'
import type { Chance } from './chance.ts'
import type { DrawnView } from './draughtsman.ts'
import { lerp, type Pt, polar } from './plane.ts'
import { toPixel } from './sheet-distortion.ts'

export const ARCHIVIST = 'om'
export const RESTORER = 'jt'

/** What is picked, by whom and how; edges and rings by the names of the view's outlines. */
export type PickPlan = {
  id: string
  view: 'elevation' | 'foot-plan' | 'bracket'
  by: string
  at: string
  label: string
  /** Standard uncertainty of a pick, pixels; below 1 it was found by fitting the stroke. */
  sigma: number
} & (
  | { kind: 'point'; corner: readonly [string, string]; repeats?: number }
  | { kind: 'line'; edge: string; picks: number; from?: number; to?: number }
  | { kind: 'circle'; ring: string; picks: number }
  | { kind: 'path'; corners: readonly (readonly [string, string])[]; closed: boolean }
)

export interface Picked {
  mark: Mark
  /** Where the picks would have been without picking error. */
  truth: Pixel[]
}

export function pick(plan: PickPlan, view: DrawnView, chance: Chance): Picked {
  const round = (x: number) => Math.round(x * 100) / 100
  const exact = positions(plan, view).map(toPixel)
  const miss = ([x, y]: Pixel): Pixel =>
    pixel(round(x + plan.sigma * chance.normal()), round(y + plan.sigma * chance.normal()))
  const { id, by, at, label, sigma } = plan
  const how = sigma < 1 ? ('stroke' as const) : ('hand' as const)
  const common = { id, sheet: 'sheet-1', by, at, label, how, sigma }
  const picks = exact.map(miss)
  switch (plan.kind) {
    case 'point': {
      const [pixel, ...repeats] = picks
      if (pixel === undefined) throw new Error(`${id} has no pick.`)
      const mark: Mark = { ...common, kind: 'point', pixel, ...(repeats.length > 0 ? { repeats } : {}) }
      return { mark, truth: exact.slice(0, 1) }
    }
    case 'line':
      return { mark: { ...common, kind: 'line', pixels: picks }, truth: exact }
    case 'circle':
      return { mark: { ...common, kind: 'circle', pixels: picks }, truth: exact }
    case 'path':
      return { mark: { ...common, kind: 'path', pixels: picks, closed: plan.closed }, truth: exact }
  }
}

function positions(plan: PickPlan, view: DrawnView): Pt[] {
  const spread = (n: number, from: number, to: number) =>
    Array.from({ length: n }, (_, i) => from + ((to - from) * i) / (n - 1))
  switch (plan.kind) {
    case 'point':
      return Array.from({ length: 1 + (plan.repeats ?? 0) }, () => view.corner(...plan.corner))
    case 'line': {
      const { a, b } = view.edge(plan.edge)
      return spread(plan.picks, plan.from ?? 0.02, plan.to ?? 0.98).map((t) => lerp(a, b, t))
    }
    case 'circle': {
      const { c, r } = view.ring(plan.ring)
      return spread(plan.picks + 1, 0.2, 0.2 + 2 * Math.PI)
        .slice(0, -1)
        .map((angle) => polar(c, r, angle))
    }
    case 'path':
      return plan.corners.map(([first, second]) => view.corner(first, second))
  }
}
