import { describe, expect, it } from 'vitest'
import type { PageLook, ScanLook } from '../../../src/contract/scan-look.ts'
import {
  dpiInFile,
  drawnAtDpi,
  drawnSize,
  isPlain,
  leftOutInWords,
  pageLines,
  usableDpi,
} from '../../../src/renderer/intake/page-words.ts'
import { sentenceOf } from '../../../src/renderer/words/window-words.ts'

const scanned: PageLook = { page: 1, made: 'scanned', width: 5100, height: 3300, dpi: 300 }
/** ANSI C, 22 by 17 in (ASME Y14.1). */
const drawn: PageLook = {
  page: 2,
  made: 'drawn',
  width: 8800,
  height: 6800,
  drawnAt: 400,
  paper: { width: 22, height: 17 },
}
const look = (rest: Partial<ScanLook>): ScanLook => ({
  upload: 'u',
  name: 'valve-chest.tif',
  format: 'tiff',
  locked: false,
  pages: 1,
  looked: [scanned],
  ...rest,
})

describe('A scan goes straight in', () => {
  it('when it is one page that was scanned and can be a sheet, whether its file says a dpi or not', () => {
    expect(isPlain(look({}))).toBe(true)
    const { dpi: _, ...silent } = scanned
    expect(isPlain(look({ looked: [silent] }))).toBe(true)
    expect(isPlain(look({ pages: 3, leftOut: [2, 3] }))).toBe(true)
  })

  it('and is asked about otherwise', () => {
    expect(isPlain(look({ locked: true, looked: [] }))).toBe(false)
    expect(isPlain(look({ pages: 2 }))).toBe(false)
    expect(isPlain(look({ pages: 3, leftOut: [2] }))).toBe(false)
    expect(isPlain(look({ looked: [drawn] }))).toBe(false)
    expect(isPlain(look({ looked: [{ ...scanned, fault: 'It is cut short.' }] }))).toBe(false)
  })
})

describe('What a page is, in words', () => {
  it('of one that was scanned, and of one that was drawn', () => {
    expect(pageLines(scanned)).toEqual(['5100 × 3300 px', '300 dpi'])
    expect(pageLines({ ...scanned, dpi: 299.9994 })).toEqual(['5100 × 3300 px', '300 dpi'])
    expect(pageLines(drawn)).toEqual(['Drawn, not scanned', '22 × 17 in'])
  })

  it('with the dpi that the file itself gives', () => {
    expect(dpiInFile([scanned, { ...scanned, page: 2 }])).toBe('300 in the file')
    expect(dpiInFile([scanned, { ...scanned, page: 2, dpi: 200 }])).toBe('differs by page')
    expect(dpiInFile([drawn])).toBe('not in the file')
  })
})

describe('A drawn page has pixels by its paper and the dpi that is chosen', () => {
  it('an ANSI C sheet at 600 dpi', () => {
    expect(drawnSize(drawn, 600)).toEqual({ width: 13200, height: 10200 })
    const { paper: _, ...unsized } = drawn
    expect(drawnSize(unsized, 600)).toEqual({ width: 13200, height: 10200 })
    const { size, problem } = drawnAtDpi([drawn], 600, 1e9)
    expect(sentenceOf(size)).toBe('Page 2 would have 13200 × 10200 px, 135 megapixels.')
    expect(problem).toBeNull()
  })

  it('and beyond the limit it is said which dpi would do, and that does', () => {
    const { problem } = drawnAtDpi([drawn], 2400, 1e9)
    expect(problem).toMatchObject({ code: 'intake.too-many-pixels', parts: { page: 2, most: 1635 } })
    expect(sentenceOf(problem)).toContain(
      'The limit is 1000 megapixels: draw it at 1635 dpi or less, or raise the limit.',
    )
    expect(drawnAtDpi([drawn], 1635, 1e9).problem).toBeNull()
    expect(drawnAtDpi([drawn], 1637, 1e9).problem).not.toBeNull()
  })

  it('and nothing is no resolution', () => {
    expect(sentenceOf(drawnAtDpi([drawn], Number.NaN, 1e9).problem)).toContain('a number greater than 0')
    expect(usableDpi('')).toBeUndefined()
    expect(usableDpi('299,5')).toBe(299.5)
    for (const text of ['0', '-300', 'high', 'Infinity']) expect(usableDpi(text)).toBeNull()
  })
})

describe('pages that are no sheets of their own', () => {
  it('are told of by number', () => {
    expect(leftOutInWords([2])).toMatch(/^Page 2 is not offered: .*reduced copy/)
    expect(leftOutInWords([2, 4, 5])).toMatch(/^Pages 2, 4-5 are not offered: .*reduced copies/)
  })
})
