import { CoreError } from '../words/core-error.ts'

/** A figure that can't be fitted or measured, or a place that can't be mapped; the reason says why. */
export class GeometryError extends CoreError {
  override name = 'GeometryError'
}
