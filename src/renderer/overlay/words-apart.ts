import { type Screen, screen } from '../../core/geometry/frames.ts'
import { collide, type LetteredBox } from './geometry-on-screen.ts'
import type { Laid } from './laid.ts'
import type { Lettering } from './lay-out-size.ts'

type Word = NonNullable<Laid['word']>

/** Where a word may go that has no room where it belongs: up and down, then to the other side. CSS pixels. */
const UP_AND_DOWN = [0, -16, 16, -32, 32]
const ACROSS = 12

function boxOf({ at: [x, y], text }: Word, lettering: Lettering): LetteredBox {
  const { width, height } = lettering(text)
  return { centre: screen(x + width / 2, y), angle: 0, width, height }
}

/**
 * The word beside what it is said of, where it lies on no other lettering. One that has no room is left out, but for what
 * is chosen: the line itself shows that something is wrong, and the table says what.
 * @param taken lettering that stands already; the word is added where it is placed
 */
export function wordApart(one: Laid, taken: LetteredBox[], lettering: Lettering): Laid {
  const { word } = one
  if (word === null) return one
  const places = placesOf(word, lettering(word.text).width).map((at): Word => ({ ...word, at }))
  const free = places.find((place) => !taken.some((other) => collide(boxOf(place, lettering), other)))
  const placed = free ?? (one.item.chosen ? word : null)
  if (placed !== null) taken.push(boxOf(placed, lettering))
  return { ...one, word: placed }
}

const placesOf = ({ at: [x, y] }: Word, width: number): Screen[] =>
  [0, -width - ACROSS].flatMap((across) => UP_AND_DOWN.map((down) => screen(x + across, y + down)))
