import { readdir } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { isBelow } from '../files/is-below.ts'
import { jobIdIn } from './job-id.ts'

/** Common practice, no source: a home folder with more than this is no place to look for one folder in. */
const MOST_FOLDERS = 20_000
const DEEPEST = 8
const WITHIN = 4000

/**
 * Where a job is by now that is not any more where it was: first beside there, then below the home folder, the nearer
 * folders first. Hidden folders and links are passed over.
 * @param from the folder that it was in
 * @returns undefined where it was not found in bounded time
 */
export async function findMoved(id: string, from: string, home: string): Promise<string | undefined> {
  const until = performance.now() + WITHIN
  let left = MOST_FOLDERS
  const seen = new Set<string>()
  const near = isBelow(dirname(from), home) ? [dirname(from)] : []
  for (const [start, depth] of [...near.map((one) => [one, 2] as const), [home, DEEPEST] as const]) {
    let level = [start]
    for (let k = 0; k < depth && level.length > 0; k++) {
      const next: string[] = []
      for (const folder of level) {
        for (const inside of await foldersIn(folder)) {
          if (--left < 0 || performance.now() > until) return undefined
          if (!seen.has(inside) && (await jobIdIn(inside)) === id) return inside
          seen.add(inside)
          next.push(inside)
        }
      }
      level = next
    }
  }
  return undefined
}

async function foldersIn(folder: string): Promise<string[]> {
  try {
    const entries = await readdir(folder, { withFileTypes: true })
    return entries
      .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.') && entry.name !== 'node_modules')
      .map(({ name }) => join(folder, name))
  } catch {
    return []
  }
}
