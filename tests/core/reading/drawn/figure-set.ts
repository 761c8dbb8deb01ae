import { dice } from './dice.ts'
import { type DrawnFigure, drawFigure, type FigureOrder } from './draw-figure.ts'
import { LETTERINGS } from './letterings.ts'
import { LEVELS } from './levels.ts'
import type { FractionLayout } from './set-figure.ts'
import { FIGURE_KINDS, type FigureKind, someFigure } from './some-figure.ts'

/** One question of the examination. */
export interface SetOrder {
  readonly kind: FigureKind
  readonly order: FigureOrder
}

/** A question with its picture and its answer. */
export interface ExaminedFigure extends DrawnFigure {
  readonly kind: FigureKind
}

export const SET_SIZE = 1200

/** Which way figures run: level, from the right, rarely from the left, and along what they measure. */
function someAngle(d: ReturnType<typeof dice>): number {
  const form = d.uniform()
  if (form < 0.5) return d.between(-1.5, 1.5)
  if (form < 0.7) return -90 + d.between(-1.5, 1.5)
  if (form < 0.8) return 90 + d.between(-1.5, 1.5)
  return d.between(-75, 75)
}

const someLayout = (d: ReturnType<typeof dice>): FractionLayout =>
  d.pick(['stacked', 'stacked', 'stacked', 'diagonal', 'inline'] as const)

/** The n-th figure of a seed's set; letterings, kinds and levels go round evenly, whatever part is taken in order. */
export function setOrder(seed: number, n: number): SetOrder {
  const d = dice(seed, n)
  const letterings = LETTERINGS.length
  const round = Math.floor(n / letterings)
  const lettering = LETTERINGS[n % letterings] ?? 'Work Sans'
  // By one more each round, so that each lettering meets each kind at each level.
  const place = (n % letterings) + round
  const kind = FIGURE_KINDS[place % FIGURE_KINDS.length] ?? 'fraction'
  const level = LEVELS[(place + Math.floor(round / FIGURE_KINDS.length)) % LEVELS.length] ?? 'clean'
  const height = Math.round(Math.exp(d.between(Math.log(14), Math.log(60))))
  const order = {
    figure: someFigure(kind, d),
    lettering,
    height,
    angle: someAngle(d),
    layout: someLayout(d),
    level,
  }
  return { kind, order: { ...order, seed: d.whole(1, 2 ** 30) } }
}

/** The figures of a seed's set, one after another. */
export async function* figureSet(seed: number, size = SET_SIZE): AsyncGenerator<ExaminedFigure> {
  for (let n = 0; n < size; n++) {
    const { kind, order } = setOrder(seed, n)
    yield { ...(await drawFigure(order)), kind }
  }
}
