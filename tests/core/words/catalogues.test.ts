import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import type { Catalogue } from '../../../src/core/words/reason.ts'

const SOURCE = fileURLToPath(new URL('../../../src', import.meta.url))
const WORDS = join(SOURCE, 'core/words')

const isCatalogue = (value: unknown): value is Catalogue =>
  typeof value === 'object' &&
  value !== null &&
  Object.entries(value).every(([code, words]) => code.includes('.') && typeof words === 'function')

/** The codes of every file of words. */
async function codes(): Promise<Map<string, string[]>> {
  const found = new Map<string, string[]>()
  for (const file of readdirSync(WORDS)) {
    if (file === 'core-words.ts') continue
    const exported: unknown[] = Object.values(await import(join(WORDS, file)))
    for (const catalogue of exported.filter(isCatalogue)) {
      for (const code of Object.keys(catalogue)) found.set(code, [...(found.get(code) ?? []), file])
    }
  }
  return found
}

const sources = readdirSync(SOURCE, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name) && entry.parentPath !== WORDS)
  .map((entry) => readFileSync(join(entry.parentPath, entry.name), 'utf8'))

it('every code has its sentence in one place', async () => {
  const twice = [...(await codes())].filter(([, files]) => files.length > 1)
  expect(twice).toEqual([])
})

it('every sentence is said by somebody', async () => {
  const all = [...(await codes()).keys()]
  expect(all.length).toBeGreaterThan(60)
  const unsaid = all.filter((code) => !sources.some((text) => text.includes(`'${code}'`)))
  expect(unsaid).toEqual([])
})
