import { Parser } from 'htmlparser2'
import type { AnnotationReason } from '../../../../words/annotations.ts'
import { reason } from '../../../../words/core-words.ts'
import { type Affine, compose, IDENTITY } from './affine.ts'
import { parseTransform } from './parse-transform.ts'

/** The attributes of an element, as they are written. */
export type Attributes = Readonly<Record<string, string>>

/** An element that draws something, and how it is moved by itself and by all that it stands in. */
export interface SvgShape {
  name: string
  attributes: Attributes
  transform: Affine
}

/** What an SVG text shows: its canvas, its first shape, and how many there are. */
export interface SvgDrawing {
  canvas: Attributes | null
  first: SvgShape
  shapes: number
}

const SHAPES = new Set(['polygon', 'polyline', 'rect', 'circle', 'ellipse', 'line', 'path'])
/** What stands in these is not shown where it stands. */
const NOT_SHOWN = new Set(['defs', 'style', 'script', 'clipPath', 'mask', 'symbol', 'marker', 'pattern'])
/** Elements nested deeper than any sound drawing has them are not followed. */
const DEEPEST = 256

/** What holds for an element and all in it. */
interface Around {
  shown: boolean
  transform: Affine
  problem: AnnotationReason | null
}

const PAGE: Around = { shown: true, transform: IDENTITY, problem: null }

/** A canvas within the canvas has a size and a place of its own. */
const hasPlace = (attributes: Attributes): boolean =>
  ['x', 'y', 'width', 'height', 'viewBox'].some((name) => Object.hasOwn(attributes, name))

function within(around: Around, name: string, attributes: Attributes, outermost: boolean): Around {
  if (!around.shown || NOT_SHOWN.has(name)) return { ...around, shown: false }
  if (name === 'svg' && !outermost && hasPlace(attributes)) {
    return { ...around, problem: around.problem ?? reason('annotation.inner-canvas') }
  }
  const { transform: written, style = '' } = attributes
  const styled = /(?:^|;)\s*(?:transform|rotate|translate|scale)\s*:/.test(style)
  if (written === undefined && !styled) return around
  const beyond = styled || name === 'svg' || 'transform-origin' in attributes
  const own = beyond ? null : parseTransform(written ?? '')
  if (own === null) return { ...around, problem: around.problem ?? reason('annotation.unknown-transform') }
  return { ...around, transform: compose(around.transform, own) }
}

/**
 * Finds the first shape of an SVG text that is shown. The text is looked through for shapes only: nothing in it is
 * ever run or fetched, and what is not well formed is passed over.
 */
export function findShape(svg: string): SvgDrawing | { problem: AnnotationReason } {
  const open: Around[] = [PAGE]
  let canvas: Attributes | null = null
  let first: SvgShape | { problem: AnnotationReason } | undefined
  let shapes = 0
  let tooDeep = false
  const parser = new Parser(
    {
      onopentag(qualified, attributes) {
        const name = qualified.slice(qualified.indexOf(':') + 1)
        const outermost = name === 'svg' && canvas === null
        if (outermost) canvas = attributes
        const around = within(open.at(-1) ?? PAGE, name, attributes, outermost)
        open.push(around)
        if (open.length > DEEPEST) {
          tooDeep = true
          parser.pause()
        }
        if (!around.shown || !SHAPES.has(name)) return
        shapes++
        const { problem, transform } = around
        first ??= problem === null ? { name, attributes, transform } : { problem }
      },
      onclosetag() {
        open.pop()
      },
    },
    { xmlMode: true },
  )
  parser.end(svg)
  if (tooDeep) return { problem: reason('annotation.nested-too-deep') }
  if (first === undefined) return { problem: reason('annotation.no-shape') }
  return 'problem' in first ? first : { canvas, first, shapes }
}
