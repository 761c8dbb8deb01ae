import type { Pixel } from '../../../geometry/frames.ts'
import type { Job, Note, Sheet } from '../../../job/model/types.ts'
import { niUri } from '../model/ni-uri.ts'
import { iriOfNote, NOTE_FIELD, wellFormed } from '../model/note-iri.ts'

/** xsd:dateTime in UTC, as the model asks for. */
const UTC = /^-?\d{4,}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d+)?Z$/

const FORMATS: Readonly<Record<string, string>> = {
  png: 'image/png',
  jpg: 'image/jpeg',
  jpeg: 'image/jpeg',
  webp: 'image/webp',
  tif: 'image/tiff',
  tiff: 'image/tiff',
  pdf: 'application/pdf',
}

const formatOf = (file: string): string | undefined => FORMATS[file.split('.').at(-1)?.toLowerCase() ?? '']

/**
 * A region of a page as an SVG polygon, for an SvgSelector. The canvas is the page, one unit a pixel.
 * Source: Web Annotation Data Model (W3C Recommendation 23 February 2017), section 4.2.7.
 */
function svgOfOutline(outline: readonly Pixel[], page: { width: number; height: number }): string {
  const points = outline.map(([x, y]) => `${x},${y}`).join(' ')
  const size = `width="${page.width}" height="${page.height}" viewBox="0 0 ${page.width} ${page.height}"`
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size}><polygon points="${points}"/></svg>`
}

function targetOf({ scan }: Sheet, { outline }: Note): object {
  const format = formatOf(scan.file)
  const pdf = format === 'application/pdf'
  const region = outline.length === 0 ? null : { type: 'SvgSelector', value: svgOfOutline(outline, scan) }
  const page =
    pdf || scan.page > 1
      ? {
          type: 'FragmentSelector',
          ...(pdf ? { conformsTo: 'http://tools.ietf.org/rfc/rfc3778' } : {}),
          value: `page=${scan.page}`,
        }
      : null
  const selector = page === null ? region : region === null ? page : { ...page, refinedBy: region }
  return {
    type: 'SpecificResource',
    source: { id: niUri(scan.sha256), ...(format === undefined ? {} : { format }) },
    ...(selector === null ? {} : { selector }),
  }
}

/** What the annotation can't say in the model's own words, so that it can be read back as it was. */
function restOf(note: Note): object {
  const { id, sheet: _sheet, outline: _outline, text: _text, by: _by, at, about: _about, ...others } = note
  const { annotation, ...unknown } = others
  const rest = {
    ...(annotation === undefined && wellFormed(id) === id ? {} : { id }),
    ...(at === undefined || UTC.test(at) ? {} : { at }),
    ...unknown,
  }
  return Object.keys(rest).length === 0 ? {} : { [NOTE_FIELD]: rest }
}

const text = (value: string, purpose: 'commenting' | 'tagging') => ({
  type: 'TextualBody',
  purpose,
  value,
  format: 'text/plain',
})

/**
 * A note as a Web Annotation, without its `@context`. The target is the scan by its SHA-256 (a `ni` URI), the page as
 * a fragment selector where the file has pages, and the region as an SVG polygon in pixels of the page. What the note
 * is about goes as a tag.
 * Source: Web Annotation Data Model (W3C Recommendation 23 February 2017), sections 3.1, 3.2.4, 3.3, 4.2.
 */
export function webAnnotationOf(job: Job, sheet: Sheet, note: Note): object {
  const { by, at, about } = note
  const name = job.people.find(({ id }) => id === by)?.name ?? by
  const comment = text(note.text, 'commenting')
  return {
    id: note.annotation ?? iriOfNote(sheet, note),
    type: 'Annotation',
    motivation: 'commenting',
    ...(by === undefined ? {} : { creator: { type: 'Person', name, nickname: by } }),
    ...(at !== undefined && UTC.test(at) ? { created: at } : {}),
    body: about === undefined ? comment : [comment, text(about, 'tagging')],
    target: targetOf(sheet, note),
    ...restOf(note),
  }
}
