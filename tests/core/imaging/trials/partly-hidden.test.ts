import { describe } from 'vitest'
import { trials } from '../judge/trials.ts'

describe('in white noise', () =>
  trials('noise', { pointsPartlyHidden: 200, linesPartlyHidden: 60, circlesPartlyHidden: 50 }))

describe('blurred', () => trials('blur', { circlesPartlyHidden: 50 }))

describe('through JPEG at quality 70', () => trials('JPEG', { pointsPartlyHidden: 200 }))
