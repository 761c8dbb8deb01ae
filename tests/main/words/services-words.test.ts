import { readdir, readFile } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import { reason as coreReason } from '../../../src/core/words/core-words.ts'
import { inWords, reason } from '../../../src/main/services/words/services-words.ts'

const SRC = resolve(import.meta.dirname, '../../../src')

/** The codes of each room in a folder of words, by the room's file. */
async function rooms(folder: string): Promise<[file: string, codes: string[]][]> {
  const found: [string, string[]][] = []
  for (const name of await readdir(join(SRC, folder))) {
    const exported: Record<string, unknown> = await import(join(SRC, folder, name))
    for (const [key, value] of Object.entries(exported)) {
      if (key.endsWith('_WORDS')) found.push([`${folder}/${name}`, Object.keys(value as object)])
    }
  }
  return found
}

describe('what services say', () => {
  test('has a code of its own for each sentence: no room takes one of another, nor of core', async () => {
    const all = [...(await rooms('core/words')), ...(await rooms('main/services/words'))]
    expect(all.length).toBeGreaterThan(9)
    const owner = new Map<string, string>()
    const twice: string[] = []
    for (const [file, codes] of all) {
      for (const code of codes) {
        const first = owner.get(code)
        if (first === undefined) owner.set(code, file)
        else if (first !== file) twice.push(`${code}: ${first} and ${file}`)
      }
    }
    expect(twice).toEqual([])
  })

  test('is said by somebody, each sentence of it', async () => {
    const words = join(SRC, 'main/services/words')
    const texts: string[] = []
    for (const entry of await readdir(join(SRC, 'main'), { recursive: true, withFileTypes: true })) {
      if (!entry.isFile() || entry.parentPath === words) continue
      texts.push(await readFile(join(entry.parentPath, entry.name), 'utf8'))
    }
    const all = (await rooms('main/services/words')).flatMap(([, codes]) => codes)
    expect(all.length).toBeGreaterThan(100)
    expect(all.filter((code) => !texts.some((text) => text.includes(`'${code}'`)))).toEqual([])
  })

  test('may hold what the layer below says, and says that in its words', () => {
    const cause = reason('system.refused', { error: 'ENOSPC' })
    const problem = coreReason('job.not-a-job')
    expect(inWords(reason('job-file.not-written', { path: '/a/job.json', cause }))).toBe(
      '/a/job.json could not be written because the disk is full; every edit is safe in the history beside it.',
    )
    expect(inWords(reason('job-file.unsound', { path: '/a/job.json', problem }))).toBe(
      `/a/job.json: ${inWords(problem)}`,
    )
    expect(inWords(reason('system.refused', { error: 'EXDEV' }))).toBe('the system reports EXDEV')
  })

  test('is a fault of the program where nobody has words for it', () => {
    expect(() => inWords({ code: 'nobody.knows', parts: {} })).toThrow(RangeError)
  })
})
