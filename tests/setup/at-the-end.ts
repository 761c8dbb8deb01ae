import { afterAll } from 'vitest'
import { doAtTheEnd } from '../main/fixtures/at-the-end.ts'

// Said here, before any file's own, so that it comes after the others.
afterAll(doAtTheEnd)
