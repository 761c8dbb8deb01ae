import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { niUri, sha256OfNi } from '../../../../../src/core/handoff/annotations/model/ni-uri.ts'

const digest = (text: string, as: 'hex' | 'base64url'): string => createHash('sha256').update(text).digest(as)

describe('A scan is named by its SHA-256 as RFC 6920 names things', () => {
  it('as in the example of section 8.1', () => {
    expect(niUri(digest('Hello World!', 'hex'))).toBe(
      'ni:///sha-256;f4OxZX_x_FO5LcGBSKHWXfwtSx-j1ncoSt3SABJtkGk',
    )
  })

  it('and as Node writes any digest in base64url', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const iri = `ni:///sha-256;${digest(text, 'base64url')}`
        expect(niUri(digest(text, 'hex'))).toBe(iri)
        expect(sha256OfNi(iri)).toBe(digest(text, 'hex'))
        expect(sha256OfNi(`${iri}?ct=image/tiff#page=2`)).toBe(digest(text, 'hex'))
      }),
    )
  })

  it('and what is no such name has no digest', () => {
    for (const iri of [
      '',
      'http://example.org/scan.tif',
      'ni:///sha-256-32;f4OxZQ',
      'ni:///sha-256;f4OxZX',
    ]) {
      expect(sha256OfNi(iri)).toBeNull()
    }
  })
})
