import Fraction from 'fraction.js'
import { reason } from '../../words/core-words.ts'
import type { NotationReason } from '../../words/notation.ts'
import type { Length, LengthUnit } from '../length.ts'
import type { TokenReader } from '../notation/token-reader.ts'
import type { Token } from '../notation/tokenise.ts'
import { afterNumber, readNumber, type WrittenNumber } from './read-number.ts'

/** A length and the signs that it was read from. */
export interface WrittenLength {
  readonly length: Length
  readonly number: WrittenNumber
  /** Its unit mark, when one is written. */
  readonly unit: Token | undefined
}

/** A unit as millimetres per unit, mm / per. */
interface UnitSize {
  readonly mm: bigint
  readonly per: bigint
  readonly system: LengthUnit
}

const INCH: UnitSize = { mm: 127n, per: 5n, system: 'in' }
const FOOT: UnitSize = { mm: 1524n, per: 5n, system: 'in' }
const MIL: UnitSize = { mm: 127n, per: 5000n, system: 'in' }
const MILLIMETRE: UnitSize = { mm: 1n, per: 1n, system: 'mm' }
const CENTIMETRE: UnitSize = { mm: 10n, per: 1n, system: 'mm' }
const METRE: UnitSize = { mm: 1000n, per: 1n, system: 'mm' }
const MICROMETRE: UnitSize = { mm: 1n, per: 1000n, system: 'mm' }

const UNITS = new Map<string, UnitSize>([
  ['in', INCH],
  ['ins', INCH],
  ['inch', INCH],
  ['inches', INCH],
  ['ft', FOOT],
  ['foot', FOOT],
  ['feet', FOOT],
  ['mil', MIL],
  ['mils', MIL],
  ['thou', MIL],
  ['mm', MILLIMETRE],
  ['millimetre', MILLIMETRE],
  ['millimetres', MILLIMETRE],
  ['millimeter', MILLIMETRE],
  ['millimeters', MILLIMETRE],
  ['cm', CENTIMETRE],
  ['m', METRE],
  ['metre', METRE],
  ['metres', METRE],
  ['meter', METRE],
  ['meters', METRE],
  ['\u00b5m', MICROMETRE],
  ['\u03bcm', MICROMETRE],
  ['um', MICROMETRE],
])

function unitOf(token: Token): UnitSize | undefined {
  if (token.kind === 'inch') return INCH
  if (token.kind === 'foot') return FOOT
  return token.kind === 'word' ? UNITS.get(token.text) : undefined
}

/** Whether a sign is a capital M, which is a thread before its size and no metre (ISO 80000-1: m). */
export const isCapitalM = (reader: TokenReader, { kind, at, end }: Token): boolean =>
  kind === 'word' && reader.text.slice(at, end) === 'M'

/** The last graduation of a number written in a unit, millimetres. */
const step = (unit: UnitSize, parts: bigint): Fraction => new Fraction(unit.mm, unit.per * parts)

/** How many signs the unit mark at the place takes: three for `m/m`, the old mark of millimetres. */
function markLength(reader: TokenReader): number {
  const isM = (token: Token): boolean => token.kind === 'word' && token.text === 'm'
  const stroke = reader.peek(1)
  const last = reader.peek(2)
  const whole = isM(reader.peek()) && stroke.kind === 'slash' && isM(last) && !stroke.spaced && !last.spaced
  return whole ? 3 : 1
}

function sized(number: WrittenNumber, unit: UnitSize): Length {
  return {
    mm: new Fraction(number.n * unit.mm, number.d * unit.per),
    graduation: step(unit, number.parts),
    system: unit.system,
    feet: false,
    fraction: number.form !== 'decimal' && unit.system === 'in' && unit !== MIL,
  }
}

/** A number without unit as inches. */
export const asInches = (number: WrittenNumber): Length => sized(number, INCH)

function startsNumber(token: Token): boolean {
  return token.kind === 'number' || token.kind === 'vulgar'
}

function feetAndInches(reader: TokenReader, feet: WrittenNumber, mark: Token): WrittenLength {
  const next = reader.peek()
  const dashed = next.kind === 'dash' && startsNumber(reader.peek(1))
  if (!dashed && !startsNumber(next)) {
    // Nobody dimensions to the nearest foot: whole feet are taken to be written to the inch.
    const graduation = feet.parts === 1n ? step(INCH, 1n) : step(FOOT, feet.parts)
    return { length: { ...sized(feet, FOOT), graduation, feet: true }, number: feet, unit: mark }
  }
  // `1' -2"` has its dash towards the inches only, as a minus would be written; feet never lose inches.
  if (dashed) reader.take()
  if (feet.form !== 'whole') {
    throw reader.error(reason('notation.fraction-of-a-foot'), feet.first)
  }
  const inches = readNumber(reader, reason('notation.length-expected'))
  const after = reader.peek()
  const unit = unitOf(after)
  if (unit !== undefined && unit !== INCH) throw reader.error(reason('notation.inch-mark-wrong'))
  if (inches.n >= 12n * inches.d) {
    const whole = inches.n / inches.d
    const carried = reason('notation.twelve-inches', {
      inches: `${whole}`,
      feetAndInches: `${BigInt(feet.first.text) + whole / 12n}'-${whole % 12n}"`,
    })
    throw reader.error(carried, inches.first)
  }
  if (unit !== undefined) reader.take()
  const n = inches.n + 12n * inches.d * feet.n
  const length: Length = {
    mm: new Fraction(n * INCH.mm, inches.d * INCH.per),
    graduation: step(INCH, inches.parts),
    system: 'in',
    feet: true,
    fraction: inches.form !== 'decimal',
  }
  return { length, number: inches, unit: unit === undefined ? undefined : after }
}

/**
 * Reads one length without sign: feet and inches, inches or metric.
 *
 * @param bare the unit of a number without one
 * @param joins whether a dash may join whole number and fraction; not so where a dash is a minus
 * @throws NotationError
 */
export function readLength(reader: TokenReader, bare: LengthUnit, joins = true): WrittenLength {
  const number = readNumber(reader, reason('notation.length-expected'), joins)
  const mark = reader.peek()
  const long = markLength(reader)
  const unit = long > 1 ? MILLIMETRE : unitOf(mark)
  if (unit === undefined) {
    return { length: sized(number, bare === 'in' ? INCH : MILLIMETRE), number, unit: undefined }
  }
  if (unit === METRE && isCapitalM(reader, mark)) throw reader.error(reason('notation.capital-m'))
  reader.take(long)
  if (unit === FOOT) return feetAndInches(reader, number, mark)
  return { length: sized(number, unit), number, unit: mark }
}

/** What to say of a sign that cannot follow a length. */
export function afterLength(reader: TokenReader, read: WrittenLength): NotationReason {
  if (read.unit === undefined) return afterNumber(reader, read.number)
  const token = reader.peek()
  if (startsNumber(token)) return reason('notation.second-length')
  if (unitOf(token)) return reason('notation.second-unit')
  return reason('notation.after-length')
}
