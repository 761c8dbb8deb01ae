/** An element of an SVG text: its name without prefix, and its attributes as they are written. */
export interface SvgElement {
  name: string
  attributes: ReadonlyMap<string, string>
}

const LEAVE_OUT = [
  ['<!--', '-->'],
  ['<![CDATA[', ']]>'],
  ['<defs', '</defs'],
  ['<style', '</style'],
  ['<script', '</script'],
  ['<clipPath', '</clipPath'],
  ['<mask', '</mask'],
] as const

const NAME = /[A-Za-z][\w.-]*(?::[A-Za-z][\w.-]*)?/y
const ATTRIBUTE = /\s+([A-Za-z_][\w.:-]*)\s*=\s*(?:"([^"]*)"|'([^']*)')/y

/** Without what is no shape of the region: comments, styles, scripts, definitions. */
function shapesOnly(text: string): string {
  let rest = text
  for (const [begin, end] of LEAVE_OUT) {
    let kept = ''
    let at = 0
    for (let from = rest.indexOf(begin); from >= 0; from = rest.indexOf(begin, at)) {
      kept += rest.slice(at, from)
      const to = rest.indexOf(end, from + begin.length)
      at = to < 0 ? rest.length : to + end.length
    }
    rest = kept + rest.slice(at)
  }
  return rest
}

/**
 * The elements of an SVG text in the order that they begin. It is looked through for shapes only: nothing in it is
 * ever shown, run or fetched, and what is not well formed is passed over.
 */
export function svgElements(text: string): SvgElement[] {
  const svg = shapesOnly(text)
  const elements: SvgElement[] = []
  for (let at = svg.indexOf('<'); at >= 0; at = svg.indexOf('<', at)) {
    at++
    NAME.lastIndex = at
    const [qualified] = NAME.exec(svg) ?? []
    if (qualified === undefined) continue
    at += qualified.length
    const attributes = new Map<string, string>()
    for (;;) {
      ATTRIBUTE.lastIndex = at
      const found = ATTRIBUTE.exec(svg)
      if (found === null) break
      attributes.set(found[1] ?? '', found[2] ?? found[3] ?? '')
      at = ATTRIBUTE.lastIndex
    }
    elements.push({ name: qualified.slice(qualified.indexOf(':') + 1), attributes })
  }
  return elements
}
