import { type Dice, dice } from '../../tests/core/reading/drawn/dice.ts'
import { type DrawnFigure, drawFigure } from '../../tests/core/reading/drawn/draw-figure.ts'
import type { Face } from '../../tests/core/reading/drawn/face.ts'
import { setOrder } from '../../tests/core/reading/drawn/figure-set.ts'
import { type Fount, fountFace } from '../../tests/core/reading/drawn/fount-face.ts'
import type { LetteringName } from '../../tests/core/reading/drawn/letterings.ts'

/** Founts that calibrate (`HELD_OUT` of draw.py), and whose ways of setting figures they are given. */
const HELD: readonly (Omit<Fount, 'from'> & { readonly name: string; readonly as: LetteringName })[] = [
  { name: 'courier-prime', as: 'Special Elite', unsteady: 0.02 },
  { name: 'nova-mono', as: 'Cutive Mono', unsteady: 0.015, spread: [0.02, 0.05] },
  { name: 'share-tech-mono', as: 'Cutive Mono', unsteady: 0.01 },
  { name: 'overpass', as: 'Work Sans', unsteady: 0 },
  { name: 'zilla-slab', as: 'Work Sans', unsteady: 0 },
  { name: 'gfs-didot', as: 'Old Standard', unsteady: 0, spread: [0.015, 0.04] },
  { name: 'libre-caslon-text', as: 'IM Fell English', unsteady: 0.006 },
  { name: 'sirin-stencil', as: 'Stardos Stencil', unsteady: 0.004 },
  { name: 'handlee', as: 'Architects Daughter', unsteady: 0.02 },
  { name: 'coming-soon', as: 'Patrick Hand', unsteady: 0.015 },
  { name: 'coming-soon', as: 'Patrick Hand', unsteady: 0.015, sheared: [15, 20] },
  { name: 'shantell-sans', as: 'Patrick Hand', unsteady: 0.015 },
  { name: 'annie-use-your-telescope', as: 'Kalam', unsteady: 0.015, spread: [0.01, 0.04] },
]

/** Figures like those of the examination, spoiled alike, in the founts that calibrate: the n-th of a seed. */
export async function heldFigure(
  founts: string,
  seed: number,
  n: number,
): Promise<DrawnFigure & { held: string }> {
  const held = HELD[n % HELD.length]
  if (held === undefined) throw new Error('There is no fount to draw with.')
  const { order } = setOrder(seed, n)
  const d = dice(seed, n, 7)
  const { name, as, ...fount } = held
  const face = (own: Dice): Face => fountFace({ ...fount, from: `${founts}/${name}` }, own)
  const level = d.pick(['clean', 'moderate', 'bad'] as const)
  return { ...(await drawFigure({ ...order, lettering: as, face, level })), held: name }
}
