import { type Pixel, pixel } from '../../../../geometry/frames.ts'
import type { AnnotationReason } from '../../../../words/annotations.ts'
import { reason } from '../../../../words/core-words.ts'
import { applyAffine, largestStretch } from './affine.ts'
import { type CanvasPlace, canvasOf, layOver } from './canvas.ts'
import { findShape } from './find-shape.ts'
import { shapePoints } from './shape-points.ts'

/** A region in pixels of its page, and what was not kept of it; or why it can't be read. */
export type Region = { outline: Pixel[]; remarks: AnnotationReason[] } | { problem: AnnotationReason }

/** How far a straight side may lie from the curve that it stands for, pixels of the page. */
const STRAIGHT = 0.5

const AS_PIXELS: CanvasPlace = { left: 0, top: 0, across: 1, down: 1 }

/**
 * The region that an SvgSelector describes, in pixels of a page: its first shape, as its transforms place it, on a
 * canvas that is laid over the whole page.
 * Source: Web Annotation Data Model, section 4.2.7.
 */
export function readSvgOutline(svg: string, page: { width: number; height: number }): Region {
  const drawing = findShape(svg)
  if ('problem' in drawing) return drawing
  const { first, shapes } = drawing
  const canvas = drawing.canvas === null ? null : canvasOf(drawing.canvas)
  const fitted = canvas === null ? AS_PIXELS : layOver(canvas, page)
  const { left, top, across, down } = fitted ?? AS_PIXELS
  const stretch = largestStretch(first.transform) * Math.max(across, down)
  const shape = shapePoints(first, STRAIGHT / stretch, canvas ?? page)
  if ('problem' in shape) return shape
  const outline = shape.points.map((point): Pixel => {
    const [x, y] = applyAffine(first.transform, point)
    return pixel((x - left) * across, (y - top) * down)
  })
  if (!outline.every(([x, y]) => Number.isFinite(x) && Number.isFinite(y))) {
    return { problem: reason('annotation.malformed-shape') }
  }
  const remarks: AnnotationReason[] = []
  if (shapes > 1) remarks.push(reason('annotation.first-shape', { shapes }))
  if (shape.remark !== undefined) remarks.push(shape.remark)
  if (fitted === null) remarks.push(reason('annotation.other-proportions'))
  return { outline, remarks }
}
