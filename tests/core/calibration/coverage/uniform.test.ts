import { holdsTheTruth } from './hold-the-truth.ts'

holdsTheTruth('uniform', 20261125)
