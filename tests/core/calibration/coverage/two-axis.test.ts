import { holdsTheTruth } from './hold-the-truth.ts'

holdsTheTruth('two-axis', 20261126)
