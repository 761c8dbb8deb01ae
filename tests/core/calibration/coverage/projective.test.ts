import { holdsTheTruth } from './hold-the-truth.ts'

holdsTheTruth('projective', 20261128)
