import { describe, expect, it } from 'vitest'
import type { PageLook } from '../../../src/contract/scan-look.ts'
import { pagesWanted } from '../../../src/renderer/intake/pages-wanted.ts'

const look = (page: number, made: PageLook['made']): PageLook => ({ page, made, width: 100, height: 80 })

describe('the pages that are asked for', () => {
  it('come in order, drawn ones at the resolution that was chosen, scanned ones with what a person says', () => {
    const looked = [look(1, 'drawn'), look(2, 'scanned')]
    expect(pagesWanted([2, 1], looked, { drawnAt: 200, dpi: 300 })).toEqual([
      { page: 1, drawnAt: 200 },
      { page: 2, dpi: 300 },
    ])
  })

  it('are drawn at that resolution too when they were not looked into yet and all others are drawn', () => {
    expect(pagesWanted([1, 40], [look(1, 'drawn')], { drawnAt: 200, dpi: undefined })).toEqual([
      { page: 1, drawnAt: 200 },
      { page: 40, drawnAt: 200 },
    ])
  })

  it('have what a person says of scans when they were not looked into yet and all others are scanned', () => {
    expect(pagesWanted([40], [look(1, 'scanned')], { drawnAt: 400, dpi: 300 })).toEqual([
      { page: 40, dpi: 300 },
    ])
  })

  it('are left as the file has them where it has both and they were not looked into yet', () => {
    const looked = [look(1, 'drawn'), look(2, 'scanned')]
    expect(pagesWanted([40], looked, { drawnAt: 200, dpi: 300 })).toEqual([{ page: 40 }])
  })
})
