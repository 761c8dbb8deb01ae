import { existsSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import type { ChildProgram } from './child.ts'

/** What runs a source where nothing was built. */
const RUNNER = 'scripts/run-ts.mjs'

/**
 * A program of ours that is run in processes of its own: the built one where there is one, else, in the folder of the
 * project, its source, which begins slowly. It is built beside the program that runs, above its shared parts, or where the
 * build puts it when this is a figure of speed or runs from source.
 * @param built what it is called where it is built
 * @param source from the folder of the project
 * @param from the folder of what runs
 * @returns undefined when neither is there
 */
export function findProgram(built: string, source: string, from: string): ChildProgram | undefined {
  const places = [built, `../${built}`, `../main/${built}`]
  for (const place of places) {
    const path = resolve(from, place)
    if (existsSync(path)) return { path, args: [] }
  }
  for (let folder = from; folder !== dirname(folder); folder = dirname(folder)) {
    const made = join(folder, 'out/main', built)
    if (existsSync(made)) return { path: made, args: [] }
    const [runner, wanted] = [join(folder, RUNNER), join(folder, source)]
    if (existsSync(runner) && existsSync(wanted)) return { path: runner, args: [wanted] }
  }
  return undefined
}
