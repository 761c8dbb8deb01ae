/**
 * Elements of typed arrays in loops whose bounds are the array's own: read without a check, for a check in each costs. One
 * reader for each kind of array, so that an engine compiles it for that kind alone. A file takes those it needs out of the
 * module once (`const { f64 } = elements`), so that its loops call a constant of its own. Elsewhere iterate or destructure.
 */

export const f64 = (array: Float64Array, at: number): number => array[at] as number
export const f32 = (array: Float32Array, at: number): number => array[at] as number
export const i32 = (array: Int32Array, at: number): number => array[at] as number
export const u16 = (array: Uint16Array, at: number): number => array[at] as number
/** Of a window of a scan. */
export const grey = (array: Uint8Array | Float32Array, at: number): number => array[at] as number
