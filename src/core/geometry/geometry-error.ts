import { ScantlingError } from '../words/scantling-error.ts'

/** A figure that can't be fitted or measured; the message says why. */
export class GeometryError extends ScantlingError {
  override name = 'GeometryError'
}
