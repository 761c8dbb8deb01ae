import { degrees, toRadians } from '../../../../geometry/angle-units.ts'
import { type Affine, compose, IDENTITY } from './affine.ts'
import { numbersIn } from './svg-numbers.ts'

const STEP = /[\s,]*([A-Za-z]+)\s*\(([^()]*)\)[\s,]*/y

const translation = (x: number, y: number): Affine => [1, 0, 0, 1, x, y]

function rotation(turn: number): Affine {
  const angle = toRadians(degrees(turn))
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return [cos, sin, -sin, cos, 0, 0]
}

const slope = (turn: number): number => Math.tan(toRadians(degrees(turn)))

/** One step of a transform; null for what is none. Source: CSS Transforms Level 1, section 6 (2D functions). */
function stepOf(name: string, numbers: readonly number[]): Affine | null {
  const [first = 0, second, third] = numbers
  switch (`${name} ${numbers.length}`) {
    case 'matrix 6': {
      const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = numbers
      return [a, b, c, d, e, f]
    }
    case 'translate 1':
    case 'translate 2':
      return translation(first, second ?? 0)
    case 'scale 1':
    case 'scale 2':
      return [first, 0, 0, second ?? first, 0, 0]
    case 'rotate 1':
      return rotation(first)
    case 'rotate 3': {
      const [x, y] = [second ?? 0, third ?? 0]
      return compose(translation(x, y), compose(rotation(first), translation(-x, -y)))
    }
    case 'skewX 1':
      return [1, 0, slope(first), 1, 0, 0]
    case 'skewY 1':
      return [1, slope(first), 0, 1, 0, 0]
    default:
      return null
  }
}

/** The matrix that a `transform` attribute stands for; null when it is not understood. */
export function parseTransform(text: string): Affine | null {
  let matrix = IDENTITY
  const end = text.trimEnd().length
  for (let at = 0; at < end; at = STEP.lastIndex) {
    STEP.lastIndex = at
    const [, name = '', given = ''] = STEP.exec(text) ?? []
    const step = name === '' ? null : stepOf(name, numbersIn(given))
    if (step === null) return null
    matrix = compose(matrix, step)
  }
  return matrix.every(Number.isFinite) ? matrix : null
}
