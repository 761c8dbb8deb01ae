import { GeometryError } from '../../geometry/geometry-error.ts'
import type { Mark } from '../../job/model/types.ts'
import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import { reason } from '../../words/core-words.ts'
import type { SharedSources } from './shared-sources.ts'

/**
 * The feature of the mark that was found by an id.
 * @throws GeometryError when there is none, or when it determines no feature
 */
export function featureAsked(mark: Mark | undefined, id: string, shared: SharedSources): Feature {
  if (mark === undefined) throw new GeometryError(reason('feature.no-such-mark', { mark: id }))
  return shared.featureOf(mark)
}
