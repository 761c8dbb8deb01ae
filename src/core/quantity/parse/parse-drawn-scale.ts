import { CoreError } from '../../words/core-error.ts'
import { reason } from '../../words/core-words.ts'
import { type LengthUnit, lengthIn } from '../length.ts'
import { NotationError } from '../notation/notation-error.ts'
import { parseLength } from './parse-length.ts'

const WORDS: Readonly<Record<string, number>> = {
  'full size': 1,
  full: 1,
  half: 1 / 2,
  'half size': 1 / 2,
  'half full size': 1 / 2,
  quarter: 1 / 4,
  'quarter size': 1 / 4,
  'quarter full size': 1 / 4,
}

/** A plain number or fraction; NaN when it is none. */
function plain(text: string): number {
  const [, over = '', under] = /^(\d*\.?\d+|\d+\.)(?:\s*[/⁄]\s*(\d*\.?\d+))?$/.exec(text) ?? []
  return over === '' ? Number.NaN : Number(over) / Number(under ?? 1)
}

/** One side of `3" = 1'-0"`, millimetres. */
function side(text: string, unit: LengthUnit): number {
  return lengthIn(parseLength(text, { unit }), 'mm')
}

function ratio(text: string, unit: LengthUnit): number {
  const words = WORDS[text.toLowerCase().replaceAll('-', ' ')]
  if (words !== undefined) return words
  const [, part] = /^(\S+)\s+(?:full\s+)?size$/i.exec(text) ?? []
  if (part !== undefined) return plain(part)
  const [, drawn, foot] = /^(.+?)\s+(?:to\s+the|to\s+a|per)\s+(foot|ft\.?)$/i.exec(text) ?? []
  if (drawn !== undefined && foot !== undefined) return side(drawn, 'in') / 304.8
  const sides = text.split(/\s*(?:=|\bto\b)\s*/i)
  if (sides.length === 2) return side(sides[0] ?? '', unit) / side(sides[1] ?? '', unit)
  const [, over, under] = /^([^:]+):([^:]+)$/.exec(text) ?? []
  return over === undefined || under === undefined ? plain(text) : plain(over.trim()) / plain(under.trim())
}

/**
 * Reads the scale of a drawing as a title block states it: `3" = 1'-0"`, `3 in to the foot`, `1:4`, `1/4`, `0.25`,
 * `half size`.
 * @param unit what a bare number on either side of an equals sign means
 * @returns drawn size over true size
 * @throws ScantlingError that says what to write, when it can't be read or is not above nothing
 */
export function parseDrawnScale(text: string, unit: LengthUnit): number {
  const scale = ratioOrNaN(text.trim().replace(/^scale[\s:=–—-]*/i, ''), unit)
  if (Number.isFinite(scale) && scale > 0) return scale
  throw new CoreError(reason('notation.scale-unread', { text: text.trim() }))
}

/** NaN where a side of it is no length. */
function ratioOrNaN(text: string, unit: LengthUnit): number {
  try {
    return ratio(text, unit)
  } catch (error) {
    if (error instanceof NotationError) return Number.NaN
    throw error
  }
}
