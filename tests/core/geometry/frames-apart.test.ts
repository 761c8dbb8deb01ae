import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { MIXES } from './frames.types.ts'

/** `npm run types` refuses each line below such a directive that does compile: here it is told that they are there. */
const source = readFileSync(new URL('frames.types.ts', import.meta.url), 'utf8')
const lines = source.split('\n').map((line) => line.trim())
const wrong = lines.flatMap((line, i) => (line === '// @ts-expect-error' ? [i] : []))

describe('what must not be mixed does not compile', () => {
  it('is told of at least thirty mixes, each with the right call above the wrong one', () => {
    expect(Object.keys(MIXES).length).toBeGreaterThanOrEqual(30)
    expect(wrong).toHaveLength(Object.keys(MIXES).length)
    for (const i of wrong) {
      expect(lines[i - 1]).toMatch(/^\(\) => .+,$/)
      expect(lines[i + 1]).toMatch(/^\(\) => .+,$/)
      expect(lines[i + 2]).toBe('],')
      expect(lines[i + 1]).not.toBe(lines[i - 1])
    }
  })

  it('is told of nothing else: every error that is expected stands alone on its line', () => {
    expect(source.match(/@ts-/g)).toHaveLength(wrong.length)
  })

  it.each(Object.entries(MIXES))('and the right call does something: not %s', (_, [right]) => {
    expect(right).not.toThrow()
  })
})
