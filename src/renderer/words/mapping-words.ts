import type { MappingKind } from '../../core/job/model/types.ts'
import { MAPPING_NAMES } from '../../core/words/field-words.ts'

/** Each mapping, and when it is right. */
export const MAPPING_WORDS: Readonly<Record<MappingKind, { label: string; when: string }>> = {
  uniform: {
    label: MAPPING_NAMES.uniform,
    when: 'One scale all over, for a sheet that has kept its shape. Needs one known size.',
  },
  'two-axis': {
    label: MAPPING_NAMES['two-axis'],
    when: 'One scale along the sheet and one up it, for paper shrinks more one way. Needs two known sizes, one each way.',
  },
  affine: {
    label: MAPPING_NAMES.affine,
    when: 'Two scales and a skew, for a sheet or copy pulled out of square. Needs three known sizes in three directions.',
  },
  projective: {
    label: MAPPING_NAMES.projective,
    when: 'For a photograph that was not taken square on. Needs five known sizes, best a rectangle and lengths far apart.',
  },
}
