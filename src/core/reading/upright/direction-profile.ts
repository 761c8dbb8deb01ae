/** Places of ink, with how much of it there is. */
export interface InkPlaces {
  readonly x: Float32Array
  readonly y: Float32Array
  readonly ink: Float32Array
}

/** How much it tells that rows are longer than they are high. */
const FLATNESS = 1.6

/**
 * How much rows of lettering that run in a direction would show in the ink summed along it: its steps at the base line and
 * at the height of the digits are steep, and nothing lies beyond. Larger is likelier; only differences tell.
 * @param angle degrees clockwise on the page
 */
export function rowsShow({ x, y, ink }: InkPlaces, angle: number): number {
  const turn = (angle * Math.PI) / 180
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  let least = Number.POSITIVE_INFINITY
  let most = Number.NEGATIVE_INFINITY
  for (let i = 0; i < x.length; i++) {
    const down = (y[i] ?? 0) * c - (x[i] ?? 0) * s
    least = Math.min(least, down)
    most = Math.max(most, down)
  }
  const profile = new Float32Array(Math.ceil(most - least) + 4)
  let whole = 0
  for (let i = 0; i < x.length; i++) {
    const at = (y[i] ?? 0) * c - (x[i] ?? 0) * s - least + 1
    const [low, part, v] = [Math.floor(at), at - Math.floor(at), ink[i] ?? 0]
    profile[low] = (profile[low] ?? 0) + (1 - part) * v
    profile[low + 1] = (profile[low + 1] ?? 0) + part * v
    whole += v
  }
  let steep = 0
  for (let i = 2; i < profile.length; i++) steep += ((profile[i] ?? 0) - (profile[i - 2] ?? 0)) ** 2
  return whole > 0 ? Math.log(steep / whole ** 2) - FLATNESS * Math.log(profile.length) : 0
}
