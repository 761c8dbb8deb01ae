/**
 * The properties that the Web Annotation Data Model (W3C Recommendation 23 February 2017) requires, of the parts of the
 * model that notes go out as. Retyped as facts from its tables, each with its section:
 *
 * 3.1    an annotation: a context where it stands alone, `http://www.w3.org/ns/anno.jsonld` among its values, a single
 *        one as a string; exactly one IRI; the type Annotation; one target or more
 * 3.2.1  a body or target that is a resource of its own: exactly one IRI
 * 3.2.4  a textual body: exactly one value
 * 3.2.5  a string body: one string, and no `body` beside it
 * 3.3.1  created, modified, generated: one at most, xsd:dateTime in UTC written with Z
 * 3.3.2  an agent: no more than one IRI
 * 4      a specific resource: exactly one source
 * 4.2.1  a fragment selector: exactly one type, FragmentSelector; exactly one value; no more than one conformsTo
 * 4.2.7  an SVG selector: exactly one type, SvgSelector; a value, where there is one, that is well-formed SVG, its
 *        canvas in the proportions of the source
 * 5.1    a collection: context, one IRI, the type, labels that are strings, total a whole number from 0, a first page
 *        when it has any annotation
 * 5.2    a page: one IRI, the type, one annotation or more in `items`, startIndex a whole number from 0; a context
 *        unless it is embedded
 */
export function shortcomings(document: unknown): string[] {
  const found: string[] = []
  collection(document, found)
  return found
}

type Thing = Record<string, unknown>

const CONTEXT = 'http://www.w3.org/ns/anno.jsonld'
const isThing = (value: unknown): value is Thing =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
const several = (value: unknown): unknown[] =>
  value === undefined ? [] : Array.isArray(value) ? value : [value]
const wholeFromZero = (value: unknown): boolean => Number.isInteger(value) && Number(value) >= 0

/** RFC 3987: a scheme, a colon, and no space or angle bracket after it. */
const isIri = (value: unknown): boolean =>
  typeof value === 'string' && /^[A-Za-z][A-Za-z0-9+.-]*:[^\s<>"{}|\\^`]+$/.test(value)

function check(found: string[], holds: boolean, what: string): void {
  if (!holds) found.push(what)
}

function context(thing: Thing, section: string, found: string[]): void {
  const value = thing['@context']
  check(found, several(value).includes(CONTEXT), `${section}: no context`)
  check(found, !Array.isArray(value) || value.length > 1, `${section}: a single context is not a string`)
}

function collection(thing: unknown, found: string[]): void {
  if (!isThing(thing)) {
    check(found, false, '5.1: no object')
    return
  }
  context(thing, '5.1', found)
  check(found, isIri(thing['id']), '5.1: no IRI')
  check(found, several(thing['type']).includes('AnnotationCollection'), '5.1: type')
  check(
    found,
    several(thing['label']).every((label) => typeof label === 'string'),
    '5.1: label',
  )
  check(found, wholeFromZero(thing['total']), '5.1: total')
  if (Number(thing['total']) > 0) page(thing['first'], found)
}

function page(thing: unknown, found: string[]): void {
  if (!isThing(thing)) {
    check(found, false, '5.1: no first page')
    return
  }
  check(found, isIri(thing['id']), '5.2: no IRI')
  check(found, several(thing['type']).includes('AnnotationPage'), '5.2: type')
  check(found, !('@context' in thing), '5.2: an embedded page has a context')
  check(found, wholeFromZero(thing['startIndex']), '5.2: startIndex')
  const items = thing['items']
  check(found, Array.isArray(items) && items.length > 0, '5.2: no items')
  for (const item of several(items)) annotation(item, found, true)
}

/** @param embedded in a page, whose context holds for it too */
export function annotation(thing: unknown, found: string[], embedded: boolean): void {
  if (!isThing(thing)) {
    check(found, false, '3.1: no object')
    return
  }
  if (!embedded) context(thing, '3.1', found)
  check(found, isIri(thing['id']), '3.1: not exactly one IRI')
  check(found, several(thing['type']).includes('Annotation'), '3.1: type')
  check(found, several(thing['target']).length > 0, '3.1: no target')
  check(found, !('bodyValue' in thing && 'body' in thing), '3.2.5: a string body beside another')
  for (const moment of ['created', 'modified', 'generated']) {
    const value = thing[moment]
    const utc = typeof value === 'string' && /^-?\d{4,}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/.test(value)
    check(found, value === undefined || utc, `3.3.1: ${moment}`)
  }
  for (const agent of several(thing['creator'])) {
    check(found, isIri(agent) || (isThing(agent) && !Array.isArray(agent['id'])), '3.3.2: agent')
  }
  for (const body of several(thing['body'])) {
    if (isThing(body) && several(body['type']).includes('TextualBody')) {
      check(found, typeof body['value'] === 'string', '3.2.4: value')
    } else check(found, isIri(body) || (isThing(body) && isIri(body['id'])), '3.2.1: body')
  }
  for (const target of several(thing['target'])) specific(target, found)
}

function specific(thing: unknown, found: string[]): void {
  if (typeof thing === 'string') {
    check(found, isIri(thing), '3.2.1: target')
    return
  }
  if (!isThing(thing)) {
    check(found, false, '3.1: target')
    return
  }
  const { source } = thing
  if (source === undefined) {
    check(found, isIri(thing['id']), '3.2.1: target')
    return
  }
  check(found, isIri(source) || (isThing(source) && isIri(source['id'])), '4: not exactly one source')
  for (const one of several(thing['selector'])) selector(one, found)
}

function selector(thing: unknown, found: string[]): void {
  if (!isThing(thing)) {
    check(found, isIri(thing), '4.2: selector')
    return
  }
  const { type, value } = thing
  if (type === 'FragmentSelector') {
    check(found, typeof value === 'string', '4.2.1: value')
    check(found, thing['conformsTo'] === undefined || isIri(thing['conformsTo']), '4.2.1: conformsTo')
  } else if (type === 'SvgSelector') {
    check(
      found,
      typeof value === 'string' && /^<svg [^<>]*><polygon points="[-+\d.e, ]*"\/><\/svg>$/.test(value),
      '4.2.7: value',
    )
  } else check(found, false, '4.2: exactly one type')
  for (const finer of several(thing['refinedBy'])) selector(finer, found)
}
