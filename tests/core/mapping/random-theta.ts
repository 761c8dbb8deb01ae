import type { MappingKind } from '../../../src/core/job/model/types.ts'
import type { RandomStream } from '../../../src/core/uncertainty/random.ts'

/** Parameters of a view with some distortion of each kind; mm per pixel near 0.2. */
export function randomTheta(kind: MappingKind, r: RandomStream): number[] {
  const s = 0.2 * (1 + 0.1 * r.normal())
  switch (kind) {
    case 'uniform':
      return [s]
    case 'two-axis':
      return [s, s * (1 + 0.03 * r.normal())]
    case 'affine':
      return [s, 0.01 * s * r.normal(), s * (1 + 0.03 * r.normal())]
    case 'projective':
      return [s, 0.01 * s * r.normal(), s * (1 + 0.03 * r.normal()), 0.05 * r.normal(), 0.05 * r.normal()]
  }
}
