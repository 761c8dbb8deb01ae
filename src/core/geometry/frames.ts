/**
 * Points carry their frame in their type, so that a pixel can't be passed where a true size is wanted.
 * Functions over points are generic in the frame and give back what they were given.
 */

declare const frame: unique symbol

/** Two coordinates in the frame F. Nothing but the makers below gives one. */
export type Framed<F extends string> = readonly [x: number, y: number] & { readonly [frame]: F }

/**
 * [x, y] in pixels of the page: x right, y down, origin at the outer top-left corner,
 * so the centre of the first pixel is (0.5, 0.5).
 */
export type Pixel = Framed<'pixel'>

/** [x, y] on paper, millimetres. */
export type Paper = Framed<'paper'>

/** [x, y] in true size of the part, millimetres, up to a rigid motion of the view. */
export type True = Framed<'true'>

/** [x, y] in CSS pixels of the box that a sheet is shown in: x right, y down, origin at its top-left corner. */
export type Screen = Framed<'screen'>

/** A point of any frame. */
export type Point = Framed<string>

/** A way from one point to another in the frame of points P. */
export type Vector<P extends Point> = P extends Framed<infer F> ? Framed<`way in ${F}`> : never

type IsUnion<T, U = T> = T extends unknown ? ([U] extends [T] ? false : true) : never

/** A list of points in one frame: points of several frames in one list do not compile. */
export type PointsOf<P extends Point> = readonly P[] &
  (true extends IsUnion<P> ? { readonly frames: 'all in one frame' } : unknown)

/** A place on the page, pixels: see `Pixel` for where they are counted from. */
export const pixel = (x: number, y: number): Pixel => [x, y] as unknown as Pixel
/** A place on paper, millimetres. */
export const paper = (x: number, y: number): Paper => [x, y] as unknown as Paper
/** A place in true size, millimetres. */
export const truePoint = (x: number, y: number): True => [x, y] as unknown as True
/** A place on the screen, CSS pixels: see `Screen` for where they are counted from. */
export const screen = (x: number, y: number): Screen => [x, y] as unknown as Screen

/** A point in the frame of another. */
export const pointLike = <P extends Point>(_: P, x: number, y: number): P => [x, y] as unknown as P

/** A way in the frame of a point. */
export const vectorLike = <P extends Point>(_: P, x: number, y: number): Vector<P> =>
  [x, y] as unknown as Vector<P>
