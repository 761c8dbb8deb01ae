import type { MappingKind } from '../job/model/types.ts'
import { affine } from './affine.ts'
import type { Mapping } from './mapping.ts'
import { projective } from './projective.ts'
import { twoAxis } from './two-axis.ts'
import { uniform } from './uniform.ts'

/** Every mapping by its kind, from the simplest to the richest. */
export const MAPPINGS: Readonly<Record<MappingKind, Mapping>> = {
  uniform,
  'two-axis': twoAxis,
  affine,
  projective,
}
