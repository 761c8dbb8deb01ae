/**
 * Elements of typed arrays in loops whose bounds are the array's own: read without a check, for a check in each costs. One
 * reader for each kind of array, so that an engine compiles it for that kind alone. A file takes those it needs out of the
 * module once (`const { f64 } = elements`), so that its loops call a constant of its own. Elsewhere iterate or destructure.
 *
 * The sums of such a loop are declared one by one: of `let [a, b] = [0, 0]` an engine does not know that they are numbers,
 * and boxes each of them at every step. That was a third of the time of a search for a stroke.
 */

export const f64 = (array: Float64Array, at: number): number => array[at] as number
export const f32 = (array: Float32Array, at: number): number => array[at] as number
export const i32 = (array: Int32Array, at: number): number => array[at] as number
export const u16 = (array: Uint16Array, at: number): number => array[at] as number
/** Of a window of a scan. */
export const grey = (array: Uint8Array | Float32Array, at: number): number => array[at] as number
