/**
 * Points carry their frame in their type, so that a pixel can't be passed where a true size is wanted.
 */

/**
 * [x, y] in pixels of the page: x right, y down, origin at the outer top-left corner,
 * so the centre of the first pixel is (0.5, 0.5).
 */
export type Pixel = [x: number, y: number]

declare const frame: unique symbol

/** [x, y] in true size of the part, millimetres, up to a rigid motion of the view. */
export type True = readonly [x: number, y: number] & { readonly [frame]: 'true' }

/** [x, y] on paper, millimetres. */
export type Paper = readonly [x: number, y: number] & { readonly [frame]: 'paper' }

/** Any planar point; for geometry that does not care about the frame. */
export type Point = readonly [x: number, y: number]

export const asTrue = (x: number, y: number): True => [x, y] as unknown as True
