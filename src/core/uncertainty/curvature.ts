import { covariance } from './covariance.ts'
import { expand } from './coverage.ts'
import { independentMoves } from './independent-moves.ts'
import type { Uncertain } from './uncertain.ts'

/**
 * Numerical tolerance, as a share of U, within which first order must give the ends of an interval: half a unit in the
 * second digit of the standard uncertainty where that begins with 1 (5 % of u, so 2.5 % of U). JCGM 101 lets it come down to
 * a tenth of that as the digits of u grow to 9.9; one share for all keeps it from hanging on the unit of a value whether
 * first order is held good enough. An interval that is off by so much at both ends still holds 94.9 %.
 * Source: JCGM 101:2008, 7.9.2 and 8.1.
 */
export const TOLERANCE = 0.025

/** What is a difference only by the rounding of numbers, as a share of the value. */
const ROUNDING = 1e-12

/** Pairs of corners that are looked at where there are too many for all of them. */
const MOST_CORNERS = 8

/**
 * Whether a function may be so curved, or so near to where it has no value, that first order misleads: a quick look at
 * the ends of its 95 % interval along its gradient, along each input alone and, for what only inputs together show, at
 * corners between them. It would rather look twice than overlook: what it finds is then to be simulated.
 * @param f of plain numbers, in the order of the inputs; a number that is none where there is no value
 * @param inputs with sources
 * @param y the function by first order
 */
export function mayBeCurved(
  f: (values: readonly number[]) => number,
  inputs: readonly Uncertain[],
  y: Uncertain,
): boolean {
  const values = inputs.map((x) => x.value)
  const at = (shifts: readonly number[], times: number): number =>
    f(values.map((value, i) => value + times * (shifts[i] ?? 0)))
  const { u, U, k } = expand(y)
  /** Whether two values differ by no more than may be; never where there is no number. */
  const near = (a: number, b: number): boolean =>
    Math.abs(a - b) <= TOLERANCE * U + ROUNDING * Math.max(Math.abs(a), Math.abs(b), Math.abs(y.value))
  if (u > 0) {
    const along = inputs.map((x) => covariance(x, y) / u)
    for (const times of [-k, k]) if (!near(at(along, times), y.value + times * u)) return true
  }
  const moves = independentMoves(inputs).map((move) => move.map((c) => k * c))
  for (const move of moves) {
    const [low, high] = [at(move, -1), at(move, 1)]
    if (!near((low + high) / 2, y.value)) return true
    // What is the same on both sides of the middle but for its sign shows in half the way.
    if (!near((high - low) / 2, at(move, 0.5) - at(move, -0.5))) return true
  }
  for (const corner of corners(moves)) {
    if (!near((at(corner, -1) + at(corner, 1)) / 2, y.value)) return true
  }
  return false
}

/** One of each pair of opposite corners between moves, as far from the middle as each of these goes. */
function* corners(moves: readonly (readonly number[])[]): Generator<readonly number[]> {
  const n = moves.length
  const [first] = moves
  if (n < 2 || first === undefined) return
  const scale = 1 / Math.sqrt(n)
  const all = 2 ** (n - 1)
  for (let pair = 0; pair < Math.min(all, MOST_CORNERS); pair++) {
    const signs = moves.map((_, m) => (all <= MOST_CORNERS ? bit(pair, m) : bit(scattered(pair, m), 16)))
    yield first.map((_, i) =>
      moves.reduce((sum, move, m) => sum + scale * (signs[m] ?? 0) * (move[i] ?? 0), 0),
    )
  }
}

const bit = (word: number, i: number): 1 | -1 => ((word >>> i) & 1 ? -1 : 1)

/** A word that looks drawn by lot, the same for the same two numbers. */
const scattered = (a: number, b: number): number =>
  Math.imul(Math.imul(a + 1, 0x9e3779b1) ^ Math.imul(b + 1, 0x85ebca6b), 0xc2b2ae35)
