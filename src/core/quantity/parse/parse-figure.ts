import { reason } from '../../words/core-words.ts'
import type { NotationReason } from '../../words/notation.ts'
import type { Figure } from '../figure.ts'
import { TokenReader } from '../notation/token-reader.ts'
import { acceptCount, addTerm, addTolerance, addValue, type FigureDraft } from './figure-draft.ts'
import { acceptTerm } from './figure-terms.ts'
import { COUNTED } from './parse-count.ts'
import type { LengthContext } from './parse-length.ts'
import { afterAngle } from './read-angle.ts'
import { gaugeFollows } from './read-gauge.ts'
import { afterLength } from './read-length.ts'
import { toleranceFollows } from './read-tolerance.ts'

/** What to say of a sign that begins no part of a figure. */
function afterPart(reader: TokenReader, draft: FigureDraft): NotationReason {
  const { kind, text } = reader.peek()
  if (kind === 'word' && COUNTED.has(text)) return reason('notation.count-after-size', { counted: text })
  if (kind === 'word') return reason('notation.word-unknown')
  if (draft.angle) return afterAngle(reader)
  if (draft.read) return afterLength(reader, draft.read)
  return reason(draft.gauge ? 'notation.after-gauge-figure' : 'notation.figure-expected')
}

function addNext(reader: TokenReader, draft: FigureDraft, context: LengthContext): void {
  const valued = draft.length !== undefined || draft.angle !== undefined
  const found = acceptTerm(reader)
  if (found) {
    addTerm(reader, draft, found.term, found.token)
    return
  }
  if (acceptCount(reader, draft)) return
  const { kind } = reader.peek()
  if (!valued && (gaugeFollows(reader) || kind === 'number' || kind === 'vulgar')) {
    addValue(reader, draft, context)
    return
  }
  // A lone minus is refused as a tolerance without its other limit; before any size it is a sign.
  if (!valued && kind === 'dash') throw reader.error(reason('notation.length-negative'))
  const unsettled = draft.read !== undefined && draft.read.unit === undefined && kind === 'dash'
  if (toleranceFollows(reader) && !(unsettled && startsMixed(reader))) {
    addTolerance(reader, draft)
    return
  }
  throw reader.error(afterPart(reader, draft))
}

/** A dash right after a bare number, as in `1-38`, was meant to join something. */
function startsMixed(reader: TokenReader): boolean {
  return reader.peek().kind === 'dash' && !reader.peek().spaced
}

function figureFrom(text: string, draft: FigureDraft): Figure {
  const { terms, of, read: _, ...parts } = draft
  const given = draft.angle ? 'angle' : draft.gauge ? 'gauge' : draft.length ? 'length' : 'count'
  const side = terms.has('outside') ? 'outside' : terms.has('inside') ? 'inside' : undefined
  return {
    text,
    of: of ?? given,
    ...parts,
    typical: terms.has('typical'),
    drilled: terms.has('drilled'),
    ...(side && { side }),
    ...(terms.has('square') && { square: true }),
  }
}

/**
 * Reads a printed dimension as it stands on the sheet: one size (a length, an angle or a sheet gauge), with what it is
 * of (`Ø`, `DIA.`, `R`, `C.C.`, `O.D.`, `SQ.`, `DRILL`), how many (`4 HOLES`), its tolerance (`±1/32`, `+0 −1/64`) and
 * `TYP.`, in any order and either case; or a bare count. A bare number in a tolerance has the unit of its size.
 *
 * @param context what a bare number and a gauge number mean
 * @throws NotationError with the place where reading stopped, for anything that has no single meaning
 */
export function parseFigure(text: string, context: LengthContext = {}): Figure {
  const reader = new TokenReader(text)
  const draft: FigureDraft = { terms: new Set() }
  while (!reader.atEnd()) addNext(reader, draft, context)
  const sized = draft.length !== undefined || draft.angle !== undefined
  if (!sized && (draft.count === undefined || draft.terms.size > 0)) {
    throw reader.error(reason('notation.figure-expected'))
  }
  return figureFrom(text, draft)
}
