import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TestProject } from 'vitest/node'

declare module 'vitest' {
  interface ProvidedContext {
    /** The folder where the pictures of scans are kept for one run, empty at its beginning. */
    keptPictures: string
  }
}

/** Gives the tests of a run a folder for the pictures of scans, so that each is cut once and not for every window. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'scantling-pictures-'))
  project.provide('keptPictures', folder)
  return () => rm(folder, { recursive: true, force: true })
}
