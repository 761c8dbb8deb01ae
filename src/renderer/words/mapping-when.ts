import type { MappingKind } from '../../core/job/model/types.ts'

/** When each mapping is right. */
export const MAPPING_WHEN: Readonly<Record<MappingKind, string>> = {
  uniform: 'One scale all over, for a sheet that has kept its shape. Needs one figured size.',
  'two-axis':
    'One scale along the sheet and one up it, for paper shrinks more one way. Needs two figured sizes, one each way.',
  affine:
    'Two scales and a skew, for a sheet or copy pulled out of square. Needs three figured sizes in three directions.',
  projective:
    'For a photograph that was not taken square on. Needs five figured sizes, best a rectangle and lengths far apart.',
}
