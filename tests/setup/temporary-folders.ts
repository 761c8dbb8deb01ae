import { afterAll } from 'vitest'
import { removeTemporaryFolders } from '../main/fixtures/temporary-folder.ts'

// Said here, before any file's own: one that a test asks for while it runs is never called. It comes after the others.
afterAll(removeTemporaryFolders)
