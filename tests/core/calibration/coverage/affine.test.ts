import { holdsTheTruth } from './hold-the-truth.ts'

holdsTheTruth('affine', 20261127)
