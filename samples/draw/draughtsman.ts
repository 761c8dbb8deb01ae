import type { Chance } from './chance.ts'
import type { ViewPlan } from './features.ts'
import { add, crossing, lerp, type Pt, quarter, sub, times, unit } from './plane.ts'

/** Standard uncertainty of where a drawn feature lies, mm on paper (common practice, no source). */
export const DRAUGHTING = 0.13

export interface DrawnEdge {
  a: Pt
  b: Pt
}
export interface DrawnRing {
  c: Pt
  r: number
}

/** A view as it came out on the sheet: millimetres on paper, y down, before the sheet shrank. */
export interface DrawnView {
  plan: ViewPlan
  edge(name: string): DrawnEdge
  ring(name: string): DrawnRing
  /** Where two drawn edges cross. */
  corner(first: string, second: string): Pt
  /** Part of the way along an edge; 0 and 1 are its ends. */
  along(name: string, t: number): Pt
}

/**
 * Draws a view with a draughtsman's errors: each end of an edge lies off across the edge, a circle's centre lies
 * off in both coordinates and its radius by 1/√2 of that.
 */
export function draw(plan: ViewPlan, chance: Chance): DrawnView {
  const edges = new Map<string, DrawnEdge>()
  const rings = new Map<string, DrawnRing>()
  const off = () => DRAUGHTING * chance.normal()
  const k = 25.4 * plan.trueScale
  const onPaper = ([x, y]: Pt): Pt => [plan.origin[0] + k * x, plan.origin[1] - k * y]
  for (const [name, outline] of Object.entries(plan.outlines)) {
    if (outline.kind === 'edge') {
      const a = onPaper(outline.a)
      const b = onPaper(outline.b)
      const across = quarter(unit(sub(b, a)))
      edges.set(name, { a: add(a, times(across, off())), b: add(b, times(across, off())) })
    } else {
      rings.set(name, { c: add(onPaper(outline.c), [off(), off()]), r: k * outline.r + off() / Math.SQRT2 })
    }
  }
  const edge = (name: string) => known(edges.get(name), name, plan.id)
  return {
    plan,
    edge,
    ring: (name) => known(rings.get(name), name, plan.id),
    corner(first, second) {
      const p = edge(first)
      const q = edge(second)
      return crossing(p.a, p.b, q.a, q.b)
    },
    along(name, t) {
      const { a, b } = edge(name)
      return lerp(a, b, t)
    },
  }
}

function known<T>(found: T | undefined, name: string, view: string): T {
  if (found === undefined) throw new Error(`The view ${view} has no outline named ${name}.`)
  return found
}
