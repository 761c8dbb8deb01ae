import { existsSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'

/**
 * Beside the program that runs, above its shared parts, or where the build puts it when this is a figure of speed or runs
 * from source.
 */
const BUILT = ['reader.js', '../reader.js', '../main/reader.js', '../../../../../out/main/reader.js']

/** In the folder of the project where nothing was built: the source, and what runs it, which begins slowly. */
const SOURCE = 'src/main/services/scans/reader/reader-process.ts'
const RUNNER = 'scripts/run-ts.mjs'

export interface ReaderProgram {
  path: string
  args: string[]
}

/** The program that reads scans: the built one where there is one, else from source; undefined when neither is there. */
export function readerProgram(from: string = import.meta.dirname): ReaderProgram | undefined {
  const built = BUILT.map((place) => resolve(from, place)).find((path) => existsSync(path))
  if (built !== undefined) return { path: built, args: [] }
  for (let folder = from; folder !== dirname(folder); folder = dirname(folder)) {
    const [runner, source] = [join(folder, RUNNER), join(folder, SOURCE)]
    if (existsSync(runner) && existsSync(source)) return { path: runner, args: [source] }
  }
  return undefined
}
