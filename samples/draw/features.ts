import type { Pt } from './plane.ts'

/** A straight edge from end to end, or a circle: what a draughtsman sets out in one act. */
export type Outline = { kind: 'edge'; a: Pt; b: Pt } | { kind: 'ring'; c: Pt; r: number }

export type Outlines = Readonly<Record<string, Outline>>

export const edge = (ax: number, ay: number, bx: number, by: number): Outline => ({
  kind: 'edge',
  a: [ax, ay],
  b: [bx, by],
})

export const ring = (cx: number, cy: number, r: number): Outline => ({ kind: 'ring', c: [cx, cy], r })

/** An edge and its image on the other side of the vertical axis, named with R and L. */
export function bothSides(name: string, ax: number, ay: number, bx: number, by: number): Outlines {
  return { [`${name}R`]: edge(ax, ay, bx, by), [`${name}L`]: edge(-ax, ay, -bx, by) }
}

/** A view as the draughtsman meant it: outlines in true inches, y up, about an origin on the sheet. */
export interface ViewPlan {
  id: string
  /** On the sheet as drawn: millimetres from its top-left corner, y down. */
  origin: Pt
  /** Drawn size / true size as stated beside the view. */
  statedScale: number
  /** The same as truly drawn. */
  trueScale: number
  outlines: Outlines
}
