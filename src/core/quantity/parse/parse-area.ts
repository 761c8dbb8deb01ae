import Fraction from 'fraction.js'
import { reason } from '../../words/core-words.ts'
import { type LengthUnit, MM_PER_INCH } from '../length.ts'
import { TokenReader } from '../notation/token-reader.ts'
import { afterNumber, readNumber } from './read-number.ts'

/** An exact area, with the last graduation that it is written to. */
export interface Area {
  readonly mm2: Fraction
  readonly graduation: Fraction
  readonly system: LengthUnit
}

/** The side of a unit of area, millimetres. */
interface Side {
  readonly side: Fraction
  readonly system: LengthUnit
}

const INCH: Side = { side: MM_PER_INCH, system: 'in' }
const FOOT: Side = { side: MM_PER_INCH.mul(12), system: 'in' }

const SIDES = new Map<string, Side>([
  ['in', INCH],
  ['ins', INCH],
  ['inch', INCH],
  ['inches', INCH],
  ['ft', FOOT],
  ['feet', FOOT],
  ['mm', { side: new Fraction(1n, 1n), system: 'mm' }],
  ['cm', { side: new Fraction(10n, 1n), system: 'mm' }],
  ['m', { side: new Fraction(1000n, 1n), system: 'mm' }],
])

const SQUARE: ReadonlySet<string> = new Set(['sq', 'square'])

/**
 * Reads an area exactly: `12.4 sq in`, `12 3/8 sq. ins.`, `8000 mm²`. The unit is never left out.
 *
 * @throws NotationError
 */
export function parseArea(text: string): Area {
  const reader = new TokenReader(text)
  const number = readNumber(reader, reason('notation.area-expected'))
  const squared = reader.acceptWord(SQUARE) !== undefined
  const word = reader.peek()
  const unit = word.kind === 'word' ? SIDES.get(word.text) : undefined
  if (unit === undefined) {
    throw reader.error(
      squared || word.kind === 'word' || word.kind === 'end'
        ? reason('notation.area-unit-missing')
        : afterNumber(reader, number),
    )
  }
  reader.take()
  if (!squared) {
    if (reader.peek().text !== '²') throw reader.error(reason('notation.area-not-square'), word)
    reader.take()
  }
  if (!reader.atEnd()) throw reader.error(reason('notation.after-area'))
  const square = unit.side.mul(unit.side)
  return {
    mm2: square.mul(new Fraction(number.n, number.d)),
    graduation: square.div(new Fraction(number.parts, 1n)),
    system: unit.system,
  }
}
