import { describe, expect, it } from 'vitest'
import { toWebAnnotations } from '../../../../../src/core/handoff/annotations/out/to-web-annotations.ts'
import { aNote, notedJob } from '../a-noted-job.ts'
import { annotation, shortcomings } from './required-properties.ts'

type Thing = Record<string, unknown>

const document = (): Thing =>
  JSON.parse(toWebAnnotations(notedJob([aNote(), aNote({ id: 'N2', sheet: 'S3' })])))
const firstItem = (of: Thing): Thing => ((of['first'] as Thing)['items'] as Thing[])[0] ?? {}

describe('What the Recommendation requires is looked for', () => {
  it.each([
    ['3.1: not exactly one IRI', (of: Thing) => delete firstItem(of)['id']],
    ['3.1: type', (of: Thing) => Object.assign(firstItem(of), { type: 'Note' })],
    ['3.1: no target', (of: Thing) => delete firstItem(of)['target']],
    ['3.2.4: value', (of: Thing) => delete (firstItem(of)['body'] as Thing)['value']],
    ['3.2.5: a string body beside another', (of: Thing) => Object.assign(firstItem(of), { bodyValue: 'x' })],
    ['3.3.1: created', (of: Thing) => Object.assign(firstItem(of), { created: '2026-03-01T09:30:00+01:00' })],
    [
      '4: not exactly one source',
      (of: Thing) => Object.assign(firstItem(of)['target'] as Thing, { source: [] }),
    ],
    ['5.1: no context', (of: Thing) => delete of['@context']],
    [
      '5.1: a single context is not a string',
      (of: Thing) => Object.assign(of, { '@context': [of['@context']] }),
    ],
    ['5.2: no items', (of: Thing) => Object.assign(of['first'] as Thing, { items: [] })],
  ])('%s', (what, spoil) => {
    const spoilt = document()
    expect(shortcomings(spoilt)).toEqual([])
    spoil(spoilt)
    expect(shortcomings(spoilt)).toContain(what)
  })

  it('and examples 1 and 6 of the Recommendation have it', () => {
    const basic = {
      '@context': 'http://www.w3.org/ns/anno.jsonld',
      id: 'http://example.org/anno1',
      type: 'Annotation',
      body: 'http://example.org/post1',
      target: 'http://example.com/page1',
    }
    const text = { ...basic, id: 'http://example.org/anno6', body: undefined, bodyValue: 'Comment text' }
    for (const example of [basic, JSON.parse(JSON.stringify(text))]) {
      const found: string[] = []
      annotation(example, found, false)
      expect(found).toEqual([])
    }
  })

  it('and a page of a file is named as the Recommendation names the pages of a PDF', () => {
    const items = (document()['first'] as Thing)['items'] as {
      target: { source: object; selector: object }
    }[]
    expect(items[1]?.target.source).toMatchObject({ format: 'application/pdf' })
    expect(items[1]?.target.selector).toMatchObject({
      type: 'FragmentSelector',
      conformsTo: 'http://tools.ietf.org/rfc/rfc3778',
      value: 'page=1',
      refinedBy: { type: 'SvgSelector' },
    })
  })
})
