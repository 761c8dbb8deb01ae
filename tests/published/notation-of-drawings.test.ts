import { describe, expect, it } from 'vitest'
import type { Figure, Tolerance } from '../../src/core/quantity/figure.ts'
import { formatFigure } from '../../src/core/quantity/format/format-figure.ts'
import { exactInches, type Length } from '../../src/core/quantity/length.ts'
import { NotationError } from '../../src/core/quantity/notation/notation-error.ts'
import { parseFigure } from '../../src/core/quantity/parse/parse-figure.ts'
import { SPELLINGS } from './spellings.ts'

const number = (length: Length): string =>
  length.system === 'mm' ? length.mm.toFraction() : exactInches(length).toFraction(true)

const size = (length: Length): string =>
  length.system === 'mm' ? `${number(length)} mm` : `${number(length)}"`

const signed = (value: number): string =>
  value === 0 ? '0' : value > 0 ? `+${value}` : `−${Math.abs(value)}`

function allowed<T>(tolerance: Tolerance<T> | undefined, write: (one: T) => string): string | undefined {
  if (tolerance === undefined) return undefined
  return `+${write(tolerance.plus)} −${write(tolerance.minus)}`
}

/** In inches a part of a tolerance is written over its own denominator: 3/1000, not in lowest terms only by chance. */
const limit = (length: Length): string => (length.mm.n === 0n ? '0' : number(length))

/** All that a figure says, in one line. */
function said(figure: Figure): string {
  const { length, angle, slope, gauge, fit, thread } = figure
  const parts: (string | false | undefined)[] = [
    figure.of,
    length && size(length),
    angle && `${angle.degrees.toFraction(true)}°`,
    slope && `${slope.rise}:${slope.run}${slope.taper ? ' taper' : ''}`,
    gauge && `${gauge.number}-${gauge.standard}${gauge.assumed ? '-assumed' : ''}`,
    figure.count !== undefined && `×${figure.count}`,
    figure.counted,
    figure.fastener,
    figure.mayBeSection && 'or-section',
    figure.drilled && 'drilled',
    figure.side,
    figure.square && 'square',
    thread &&
      ['thread', thread.perInch ?? thread.pitch, thread.form].filter((one) => one !== undefined).join('-'),
    fit && `fit-${fit.code}${fit.limits ? ` ${signed(fit.limits.upper)} ${signed(fit.limits.lower)}` : ''}`,
    allowed(figure.tolerance, limit),
    allowed(figure.angleTolerance, (one) => one.degrees.toFraction()),
    figure.twoLimits && 'limits',
    figure.limit,
    figure.reference && 'ref',
    figure.looseness,
    figure.notToScale && 'nts',
    figure.typical && 'typical',
    figure.decimalComma && 'comma',
    figure.notes && `[${figure.notes.join(', ')}]`,
  ]
  return parts.filter((part) => typeof part === 'string').join(' ')
}

function given(written: string, unit: 'in' | 'mm' = 'in'): string {
  try {
    return said(parseFigure(written, { unit }))
  } catch (error) {
    if (error instanceof NotationError) return error.advice.code.replace('notation.', 'refused ')
    throw error
  }
}

describe('a spelling of the shop', () => {
  for (const [written, gives, source, unit] of SPELLINGS) {
    it(`${JSON.stringify(written)} gives ${gives} (${source})`, () => {
      expect(given(written, unit)).toBe(gives)
    })
  }

  it('says the same when it is written in the one notation and read again', () => {
    for (const [written, gives, , unit] of SPELLINGS) {
      if (gives.startsWith('refused')) continue
      const again = formatFigure(parseFigure(written, { unit: unit ?? 'in' }))
      // Metres are written as whole millimetres, which have no comma.
      const wanted = again.includes(',') ? gives : gives.replace(' comma', '')
      expect(`${again}: ${given(again, unit)}`).toBe(`${again}: ${wanted}`)
      expect(formatFigure(parseFigure(again, { unit: unit ?? 'in' }))).toBe(again)
    }
  })

  it('is among some three hundred, each once', () => {
    expect(new Set(SPELLINGS.map(([written, , , unit]) => `${written} ${unit}`)).size).toBe(SPELLINGS.length)
    expect(SPELLINGS.length).toBeGreaterThanOrEqual(260)
  })
})
