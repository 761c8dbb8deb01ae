import { describe, expect, it } from 'vitest'
import { fromWebAnnotations } from '../../../../src/core/handoff/annotations/in/from-web-annotations.ts'
import { niUri } from '../../../../src/core/handoff/annotations/model/ni-uri.ts'
import { toWebAnnotations } from '../../../../src/core/handoff/annotations/out/to-web-annotations.ts'
import { ANNOTATION_WORDS, type AnnotationReason } from '../../../../src/core/words/annotations.ts'
import { inWords } from '../../../../src/core/words/core-words.ts'
import type { AnyReason } from '../../../../src/core/words/reason.ts'
import { ScantlingError } from '../../../../src/core/words/scantling-error.ts'
import { aNote, HELLO, notedJob } from './a-noted-job.ts'

const SCAN = niUri(HELLO)
const there = aNote()

/** All that is said when a document is read into a job with one note. */
function saidOf(document: unknown): AnyReason[] {
  const text = typeof document === 'string' ? document : JSON.stringify(document)
  try {
    return fromWebAnnotations(text, notedJob([there])).remarks
  } catch (error) {
    if (error instanceof ScantlingError) return [error.reason]
    throw error
  }
}

const annotation = (rest: object) => ({ type: 'Annotation', bodyValue: 'x', target: SCAN, ...rest })
const body = (one: unknown) => annotation({ bodyValue: undefined, body: one })
const target = (one: unknown) => annotation({ target: one })
const selector = (one: unknown) => target({ source: SCAN, selector: one })
const svg = (inside: string, root = '') =>
  selector({ type: 'SvgSelector', value: `<svg ${root}>${inside}</svg>` })
const people = Array.from({ length: 1001 }, (_, k) => annotation({ creator: `Stranger ${k}` }))

/** A document for each thing that may be said, but that there are no notes to hand on. */
const SAID: [code: string, document: unknown][] = [
  ['not-json', '{'],
  ['none', {}],
  ['pages-elsewhere', { type: 'AnnotationCollection', first: 'http://example.org/page1' }],
  ['too-many-people', people],
  ['times', [target([]), target([])]],
  ['further-pages', { type: 'AnnotationPage', items: [annotation({})], next: 'http://example.org/page2' }],
  ['already-here', toWebAnnotations(notedJob([there]))],
  ['first-of-choice', body({ type: 'Choice', items: ['a', 'b'] })],
  ['empty-body', body({ type: 'TextualBody' })],
  ['body-elsewhere', body('http://example.org/post1')],
  ['markup', body({ value: '<b>x</b>', format: 'text/html' })],
  ['unknown-fields', { ...annotation({}), 'scantling:note': JSON.parse('{"a":{"__proto__":1}}') }],
  ['no-date', annotation({ created: 'a Tuesday' })],
  ['first-creator', annotation({ creator: ['A. Rivet', 'B. Stay'] })],
  ['id-taken', toWebAnnotations(notedJob([aNote({ text: 'Another hand' })]))],
  ['left-out', target([])],
  ['no-target', target([])],
  ['unknown-picture', target('http://example.org/a.png')],
  ['unnamed-target', target({})],
  ['selector-elsewhere', selector('http://example.org/selector1')],
  ['region-elsewhere', selector({ type: 'SvgSelector' })],
  ['unknown-fragment', selector({ type: 'FragmentSelector', value: 't=10' })],
  ['unknown-selector', selector({ type: 'TextQuoteSelector' })],
  ['unknown-transform', svg('<rect transform="none"/>')],
  ['inner-canvas', svg('<svg width="5" height="5"><rect/></svg>')],
  ['nested-too-deep', svg('<g>'.repeat(300))],
  ['too-many-corners', svg(`<path d="M0 0 ${'q 1e7 1e7 1 1 '.repeat(400)}"/>`)],
  ['no-shape', svg('<text>rect</text>')],
  ['malformed-shape', svg('<path d="M"/>')],
  ['first-shape', svg('<rect/><rect/>')],
  ['circle-straightened', svg('<circle r="5"/>')],
  ['curves-straightened', svg('<path d="M0 0 Q 5 5 9 0"/>')],
  ['other-proportions', svg('<rect/>', 'viewBox="0 0 10 500"')],
]

const withParts = (said: AnyReason): AnyReason[] => [
  said,
  ...Object.values(said.parts).flatMap((part) => (isReason(part) ? withParts(part) : [])),
]
const isReason = (part: unknown): part is AnyReason =>
  typeof part === 'object' && part !== null && 'code' in part && 'parts' in part

describe('What is said of annotations is a code with parts', () => {
  it.each(SAID)('%s', (code, document) => {
    const said = saidOf(document)
    expect(said.flatMap(withParts).map((one) => one.code)).toContain(`annotation.${code}`)
    for (const one of said) {
      const again: AnnotationReason = JSON.parse(JSON.stringify(one))
      expect(again).toEqual(one)
      expect(inWords(again)).toMatch(/[.)]$/)
    }
  })

  it('and there are words for no other', () => {
    const given = [...SAID.map(([code]) => `annotation.${code}`), 'annotation.no-notes']
    expect(Object.keys(ANNOTATION_WORDS).toSorted()).toEqual(given.toSorted())
  })

  it('and so is why there is nothing to hand on', () => {
    expect(() => toWebAnnotations(notedJob([]))).toThrow(
      expect.objectContaining({ reason: { code: 'annotation.no-notes', parts: {} } }),
    )
  })
})
