import { type Pixel, pixel } from '../../../../geometry/frames.ts'
import type { AnnotationReason } from '../../../../words/annotations.ts'
import { reason } from '../../../../words/core-words.ts'
import { type SvgElement, svgElements } from './svg-elements.ts'
import { svgPathPoints } from './svg-path-points.ts'

interface Page {
  width: number
  height: number
}

/** A region that was read, and what was not kept of it, a sentence each; or why it can't be read. */
export type ReadOutline = { outline: Pixel[]; remarks: AnnotationReason[] } | { problem: AnnotationReason }

const SHAPES = new Set(['polygon', 'polyline', 'rect', 'circle', 'ellipse', 'line', 'path'])
const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/g

/** Sides of the polygon that stands for a circle. */
const ROUND = 48
/** The sides of a canvas and of the page may differ so much in proportion. */
const ALIKE = 0.02

const numbersIn = (text: string): number[] => (text.match(NUMBER) ?? []).map(Number)

const corners = (x: number, y: number, width: number, height: number): Pixel[] => [
  pixel(x, y),
  pixel(x + width, y),
  pixel(x + width, y + height),
  pixel(x, y + height),
]

function ellipse(cx: number, cy: number, rx: number, ry: number): Pixel[] {
  return Array.from({ length: ROUND }, (_, k): Pixel => {
    const angle = (2 * Math.PI * k) / ROUND
    return pixel(cx + rx * Math.cos(angle), cy + ry * Math.sin(angle))
  })
}

function shapePoints({
  name,
  attributes,
}: SvgElement): { points: Pixel[]; remark?: AnnotationReason } | null {
  const of = (attribute: string): number => Number.parseFloat(attributes.get(attribute) ?? '0')
  switch (name) {
    case 'rect':
      return { points: corners(of('x'), of('y'), of('width'), of('height')) }
    case 'line':
      return {
        points: [pixel(of('x1'), of('y1')), pixel(of('x2'), of('y2'))],
      }
    case 'circle':
    case 'ellipse': {
      const [rx, ry] = name === 'circle' ? [of('r'), of('r')] : [of('rx'), of('ry')]
      return {
        points: ellipse(of('cx'), of('cy'), rx, ry),
        remark: reason('annotation.circle-straightened', { sides: ROUND }),
      }
    }
    case 'path': {
      const path = svgPathPoints(attributes.get('d') ?? '')
      if (path === null) return null
      return path.curved
        ? { points: path.points, remark: reason('annotation.curves-straightened') }
        : { points: path.points }
    }
    default: {
      const numbers = numbersIn(attributes.get('points') ?? '')
      const points: Pixel[] = []
      for (let k = 0; k + 1 < numbers.length; k += 2)
        points.push(pixel(numbers[k] as number, numbers[k + 1] as number))
      return { points }
    }
  }
}

/** Where the canvas lies and how large it is, in its own units; null when the text does not say. */
function canvasOf({ attributes }: SvgElement): [x: number, y: number, width: number, height: number] | null {
  const [x, y, width, height] = numbersIn(attributes.get('viewBox') ?? '')
  if (x !== undefined && y !== undefined && width !== undefined && height !== undefined) {
    return width > 0 && height > 0 ? [x, y, width, height] : null
  }
  const sizes = ['width', 'height'].map((side) => attributes.get(side) ?? '')
  if (sizes.some((size) => !/^\s*[\d.]+(?:px)?\s*$/.test(size))) return null
  const [w = 0, h = 0] = sizes.map((size) => Number.parseFloat(size))
  return w > 0 && h > 0 ? [0, 0, w, h] : null
}

/**
 * The region that an SvgSelector describes, in pixels of a page. Its canvas is laid over the whole page: a canvas of
 * another size, and of the same proportions, is enlarged or reduced to it.
 * Source: Web Annotation Data Model, section 4.2.7.
 */
export function readSvgOutline(svg: string, page: Page): ReadOutline {
  const elements = svgElements(svg)
  if (elements.some(({ attributes }) => attributes.has('transform'))) {
    return { problem: reason('annotation.unknown-transform') }
  }
  const shapes = elements.filter(({ name }) => SHAPES.has(name))
  const [first] = shapes
  if (first === undefined) return { problem: reason('annotation.no-shape') }
  const shape = shapePoints(first)
  if (shape === null || !shape.points.flat().every(Number.isFinite)) {
    return { problem: reason('annotation.malformed-shape') }
  }
  const remarks: AnnotationReason[] = [
    ...(shapes.length > 1 ? [reason('annotation.first-shape', { shapes: shapes.length })] : []),
    ...(shape.remark === undefined ? [] : [shape.remark]),
  ]
  const root = elements.find(({ name }) => name === 'svg')
  const canvas = root === undefined ? null : canvasOf(root)
  if (canvas === null) return { outline: shape.points, remarks }
  const [left, top, width, height] = canvas
  const [across, down] = [page.width / width, page.height / height]
  if (Math.abs(across / down - 1) > ALIKE) {
    remarks.push(reason('annotation.other-proportions'))
    return { outline: shape.points, remarks }
  }
  if (left === 0 && top === 0 && across === 1 && down === 1) return { outline: shape.points, remarks }
  return {
    outline: shape.points.map(([x, y]): Pixel => pixel((x - left) * across, (y - top) * down)),
    remarks,
  }
}
