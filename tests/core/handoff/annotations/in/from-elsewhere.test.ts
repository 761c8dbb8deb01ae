import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fromWebAnnotations } from '../../../../../src/core/handoff/annotations/in/from-web-annotations.ts'
import { niUri } from '../../../../../src/core/handoff/annotations/model/ni-uri.ts'
import { applyEdit } from '../../../../../src/core/job/edits/edit.ts'
import type { Job, Note } from '../../../../../src/core/job/model/types.ts'
import { inWords } from '../../../../../src/core/words/core-words.ts'
import { ScantlingError } from '../../../../../src/core/words/scantling-error.ts'
import { HELLO, notedJob } from '../a-noted-job.ts'

const JOB = notedJob([])
const SCAN = niUri(HELLO)

const annotation = (rest: object): string =>
  JSON.stringify({
    '@context': 'http://www.w3.org/ns/anno.jsonld',
    id: 'http://example.org/anno1',
    type: 'Annotation',
    bodyValue: 'Comment text',
    target: SCAN,
    ...rest,
  })

function read(rest: object, options = {}, job: Job = JOB): { notes: Note[]; remarks: string[]; job: Job } {
  const { edits, remarks } = fromWebAnnotations(annotation(rest), job, options)
  const after = edits.reduce((before, edit) => applyEdit(before, edit).job, job)
  return { notes: after.notes.slice(job.notes.length), remarks: remarks.map(inWords), job: after }
}

const region = (selector: unknown) => read({ target: { source: SCAN, selector } })
const svg = (inside: string, root = 'xmlns="http://www.w3.org/2000/svg"') =>
  region({ type: 'SvgSelector', value: `<svg ${root}>${inside}</svg>` })

const RECTANGLE = [
  [100, 100],
  [400, 100],
  [400, 400],
  [100, 400],
]

describe('Annotations that were made elsewhere become notes', () => {
  it('from a string body on a whole page, as in example 6 of the Recommendation', () => {
    const { notes, remarks } = read({})
    expect(notes).toEqual([
      { id: 'N1', sheet: 'S1', outline: [], text: 'Comment text', annotation: 'http://example.org/anno1' },
    ])
    expect(remarks).toEqual([])
  })

  it('from an IRI with a fragment, as in example 4', () => {
    expect(read({ target: { id: `${SCAN}#xywh=100,100,300,300`, type: 'Image' } }).notes[0]?.outline).toEqual(
      RECTANGLE,
    )
  })

  it('from hundredths of the page', () => {
    expect(region({ type: 'FragmentSelector', value: 'xywh=percent:25,50,50,25' }).notes[0]?.outline).toEqual(
      [
        [1000, 1500],
        [3000, 1500],
        [3000, 2250],
        [1000, 2250],
      ],
    )
  })

  it('on the page that they name, whichever selector says so', () => {
    const inside = { type: 'SvgSelector', value: '<svg><polygon points="1,2 3,4 5,6"/></svg>' }
    for (const selector of [
      { type: 'FragmentSelector', value: 'page=2', refinedBy: inside },
      [{ type: 'FragmentSelector', value: 'page=2', refinedBy: [inside] }],
      { type: 'FragmentSelector', value: 'page=2&xywh=100,100,300,300' },
    ]) {
      expect(region(selector).notes[0]).toMatchObject({ sheet: 'S2' })
    }
    expect(region({ type: 'FragmentSelector', value: 'page=7' }).remarks[0]).toContain(
      'about a picture that is no sheet of this job',
    )
  })

  it('from several bodies, a tag, a choice, and a text with markup that stays text', () => {
    const { notes, remarks } = read({
      bodyValue: undefined,
      body: [
        { type: 'TextualBody', value: '<b onclick="x()">Worn</b>', format: 'text/html' },
        { type: 'TextualBody', value: 'bore', purpose: 'tagging' },
        {
          type: 'Choice',
          items: [
            { type: 'TextualBody', value: 'Here' },
            { type: 'TextualBody', value: 'Ici' },
          ],
        },
        'http://example.org/post1',
      ],
    })
    expect(notes[0]).toMatchObject({
      text: '<b onclick="x()">Worn</b>\n\nHere\n\nhttp://example.org/post1',
      about: 'bore',
    })
    expect(remarks).toHaveLength(3)
  })

  it('by whoever made them, whether an IRI, a name or an object says so', () => {
    const by = (creator: unknown): string | undefined => {
      const { notes, job } = read({ creator })
      return job.people.find(({ id }) => id === notes[0]?.by)?.name
    }
    expect(by('http://example.org/user1')).toBe('http://example.org/user1')
    expect(by({ type: 'Person', name: 'B. Stay' })).toBe('B. Stay')
    expect(by([{ name: ['Crank, E.', 'E. Crank'] }, 'http://example.org/user2'])).toBe('Crank, E.')
    expect(by({ id: 'http://example.org/user1', email: 'mailto:pin@example.org' })).toBe('pin@example.org')
    expect(by(undefined)).toBeUndefined()
    expect(read({}, { by: 'B. Stay' }).notes[0]?.by).toBe('BS')
  })

  it('one for each target', () => {
    const { notes } = read({
      target: [SCAN, { source: SCAN, selector: { type: 'FragmentSelector', value: 'page=2' } }],
    })
    expect(notes.map(({ sheet }) => sheet)).toEqual(['S1', 'S2'])
  })

  it('on the sheet that a person chooses, where the picture goes by another name', () => {
    const elsewhere = { target: 'http://example.org/scans/valve.tif#xywh=100,100,300,300' }
    expect(fromWebAnnotations(annotation(elsewhere), JOB)).toMatchObject({
      edits: [],
      elsewhere: ['http://example.org/scans/valve.tif'],
    })
    expect(read(elsewhere, { sheet: 'S2' }).notes[0]).toMatchObject({ sheet: 'S2', outline: RECTANGLE })
  })

  it('out of a list, a page and a graph alike', () => {
    const one = JSON.parse(annotation({}))
    for (const document of [
      [one],
      { type: 'AnnotationPage', items: [one] },
      { type: ['AnnotationCollection'], first: { type: 'AnnotationPage', items: one } },
      { '@graph': [one] },
    ]) {
      expect(fromWebAnnotations(JSON.stringify(document), JOB).notes).toEqual(['N1'])
    }
  })
})

describe('Regions drawn as SVG', () => {
  it('are read whatever their shape', () => {
    const shapes = [
      '<rect x="100" y="100" width="300" height="300"/>',
      '<g><svg:path d="M100,100 h300 v300 h-300 Z"/></g>',
      "<polygon points='100,100,400,100,400,400,100,400' style='fill:none'></polygon>",
      '<path d="M 100 100 L 400 100 400 400 100 400 z M 0 0 L 9 9"/>',
      '<!-- <rect x="1"/> --><script>"<rect/>"</script><polyline points="1e2 1e2 4e2 1e2 4e2 4e2 1e2 4e2"/>',
    ]
    for (const shape of shapes) expect(svg(shape).notes[0]?.outline, shape).toEqual(RECTANGLE)
  })

  it('are laid over the whole page when their canvas is of another size (section 4.2.7)', () => {
    const quarter = '<rect x="25" y="25" width="75" height="75"/>'
    for (const root of ['viewBox="0 0 1000 750"', 'width="1000px" height="750px"']) {
      expect(svg(quarter, root).notes[0]?.outline).toEqual(RECTANGLE)
    }
    expect(svg(quarter, 'viewBox="0 0 10 500"').remarks).toEqual([
      'The canvas of a region has other proportions than its page: its numbers were taken as pixels.',
    ])
  })

  it('are round within a hundredth of the radius', () => {
    const { notes, remarks } = svg('<circle cx="500" cy="400" r="100"/>')
    const outline = notes[0]?.outline ?? []
    for (const [x, y] of outline) expect(Math.hypot(x - 500, y - 400)).toBeCloseTo(100, 9)
    expect(100 * (1 - Math.cos(Math.PI / outline.length))).toBeLessThan(1)
    expect(remarks).toEqual(['A circle was made a polygon of 48 sides.'])
  })

  it('are left out, with words, when they are not understood', () => {
    expect(svg('<rect transform="rotate3d(1, 1, 0, 3deg)" width="9" height="9"/>').remarks[0]).toContain(
      'by a transform',
    )
    expect(svg('<text>rect</text>').remarks[0]).toContain('no shape that is understood')
    expect(svg('<path d="M 1 1 L 1e999 2"/>').remarks[0]).toContain('not written as SVG has it')
    expect(region({ type: 'TextQuoteSelector', exact: 'x' }).remarks[0]).toBe(
      'Annotation "http://example.org/anno1" was not brought in: its TextQuoteSelector does not select a region of a picture.',
    )
  })
})

describe('A file that holds no annotations', () => {
  it.each([
    ['', 'not JSON'],
    ['{', 'not JSON'],
    ['null', 'no Web Annotations'],
    ['[1, "two", null]', 'no Web Annotations'],
    ['{"type":"Feature"}', 'no Web Annotations'],
    ['{"type":"AnnotationCollection","first":"http://example.org/page1"}', 'file of its first page'],
  ])('%s is refused in a sentence', (text, why) => {
    expect(() => fromWebAnnotations(text, JOB)).toThrow(why)
  })

  it('and a document of any other shape is read or refused, never worse', () => {
    const fields = fc.constantFrom(
      'id',
      'type',
      'body',
      'target',
      'source',
      'selector',
      'value',
      'refinedBy',
      'items',
    )
    const values = fc.oneof(
      fc.jsonValue({ maxDepth: 2 }),
      fc.constantFrom(
        'Annotation',
        'SvgSelector',
        'FragmentSelector',
        'page=1',
        SCAN,
        '<svg><path d="M1',
        '__proto__',
      ),
    )
    const thing = fc.dictionary(
      fields,
      fc.oneof(values, fc.dictionary(fields, fc.oneof(values, fc.array(values)))),
    )
    fc.assert(
      fc.property(thing, thing, fc.json(), (one, target, json) => {
        for (const text of [json, annotation(one), annotation({ target: { source: SCAN, ...target } })]) {
          try {
            const { edits } = fromWebAnnotations(text, JOB)
            edits.reduce((before, edit) => applyEdit(before, edit).job, JOB)
          } catch (error) {
            expect(error).toBeInstanceOf(ScantlingError)
          }
        }
      }),
      { numRuns: 500 },
    )
  })
})
