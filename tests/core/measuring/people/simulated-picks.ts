/** Marks that several people picked, each with a way of picking of their own. */
import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { Mark } from '../../../../src/core/job/model/types.ts'
import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'

/** How people scatter: one person's picks about their own way, and the ways among themselves. Pixels. */
export interface Scattering {
  within: number
  between: number
}

/** Who picked how often: 3, 1 is one person three times and another once. */
export type Picked = readonly number[]

type Place = readonly [x: number, y: number]

/** A way of picking that a person keeps at one mark. */
type Way = (random: RandomStream, between: number) => (place: Place) => Place

/** Picks of some places of a mark, each person's moved as a whole by the person's own way. */
function picksOf(
  places: readonly Place[],
  picked: Picked,
  { within, between }: Scattering,
  random: RandomStream,
  way: Way,
): { pixels: Pixel[]; by: string }[] {
  const picks = picked.flatMap((times, person) => {
    const moved = way(random, between)
    return Array.from({ length: times }, () => ({
      by: `person ${person}`,
      pixels: places.map((place) => {
        const [x, y] = moved(place)
        return pixel(x + within * random.normal(), y + within * random.normal())
      }),
    }))
  })
  return picks
}

type MarkOf<K extends Mark['kind']> = Mark & { kind: K }

const base = (id: string) => ({ id, sheet: 'S1', how: 'hand' as const, sigma: 1 })

/** Each person picks the whole of it shifted. */
const shifted: Way = (random, between) => {
  const [dx, dy] = [between * random.normal(), between * random.normal()]
  return ([x, y]) => [x + dx, y + dy]
}

/** Each person picks a circle larger or smaller, about a centre of their own. */
const grown =
  ([cx, cy]: Place): Way =>
  (random, between) => {
    const move = shifted(random, between)
    const by = between * random.normal()
    return (place) => {
      const [x, y] = move(place)
      const far = Math.hypot(place[0] - cx, place[1] - cy)
      return [x + (by * (place[0] - cx)) / far, y + (by * (place[1] - cy)) / far]
    }
  }

/** Who picks, how they scatter, and chance. */
export interface Hands {
  picked: Picked
  scattering: Scattering
  random: RandomStream
}

function signed(picks: readonly { by: string }[]) {
  const [first, ...again] = picks
  return { by: first?.by ?? '', repeatedBy: again.map(({ by }) => ({ by })) }
}

export function pointBy(id: string, place: Place, { picked, scattering, random }: Hands): MarkOf<'point'> {
  const picks = picksOf([place], picked, scattering, random, shifted)
  const [first, ...again] = picks.map(({ pixels }) => pixels[0] as Pixel)
  return { ...base(id), ...signed(picks), kind: 'point', pixel: first as Pixel, repeats: again }
}

function whole<K extends 'line' | 'circle' | 'path'>(
  id: string,
  kind: K,
  places: readonly Place[],
  { picked, scattering, random }: Hands,
  way: Way,
): MarkOf<K> {
  const picks = picksOf(places, picked, scattering, random, way)
  const [first = [], ...again] = picks.map(({ pixels }) => pixels)
  return { ...base(id), ...signed(picks), kind, pixels: first, repeats: again } as unknown as MarkOf<K>
}

export const lineBy = (id: string, places: readonly Place[], hands: Hands): MarkOf<'line'> =>
  whole(id, 'line', places, hands, shifted)

export const pathBy = (id: string, places: readonly Place[], hands: Hands): MarkOf<'path'> =>
  whole(id, 'path', places, hands, shifted)

export const circleBy = (
  id: string,
  centre: Place,
  places: readonly Place[],
  hands: Hands,
): MarkOf<'circle'> => whole(id, 'circle', places, hands, grown(centre))

/** The same mark as if nobody said who picked it: all picks are one person's then. */
export function unsigned<M extends Mark>({ by: _, repeatedBy: __, picks: ___, ...mark }: M): M {
  return mark as unknown as M
}

export const grownPathBy = (id: string, places: readonly Place[], hands: Hands): MarkOf<'path'> => ({
  ...whole(id, 'path', places, hands, grown([1000, 1000])),
  closed: true,
})
