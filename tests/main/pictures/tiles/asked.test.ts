import { describe, expect, test, vi } from 'vitest'
import { Asked } from '../../../../src/main/services/pictures/tiles/asked.ts'

/** A shelf on which things come to lie. */
function shelf(most = 10) {
  const there = new Set<string>()
  const heard: string[][] = []
  const asked = new Asked<string, string>(
    async (name) => (there.has(name) ? `the ${name}` : null),
    (names) => heard.push(names),
    most,
  )
  return { there, heard, asked }
}

describe('what is asked for', () => {
  test('comes at once when it is there, and else as soon as it is', async () => {
    const { there, asked } = shelf()
    there.add('first')
    expect(await asked.ask('first')).toBe('the first')
    const waited = asked.ask('second')
    there.add('second')
    expect(await waited).toBe('the second')
    asked.end()
  })

  test('is told of newest first', async () => {
    const { heard, asked } = shelf()
    const all = ['first', 'second', 'third'].map((name) => asked.ask(name))
    await vi.waitFor(() => expect(heard.at(-1)).toEqual(['third', 'second', 'first']))
    asked.end()
    expect(await Promise.all(all)).toEqual([null, null, null])
  })

  test('is waited for by so many only: whoever has waited longest gets nothing', async () => {
    const { there, asked } = shelf(2)
    const all = ['first', 'second', 'third'].map((name) => asked.ask(name))
    expect(await all[0]).toBeNull()
    for (const name of ['first', 'second', 'third']) there.add(name)
    expect(await Promise.all(all)).toEqual([null, 'the second', 'the third'])
    asked.end()
  })

  test('and not wanted any more is waited for no longer', async () => {
    const { heard, asked } = shelf()
    const control = new AbortController()
    const dropped = asked.ask('first', control.signal)
    const kept = asked.ask('second')
    control.abort()
    expect(await dropped).toBeNull()
    await asked.look()
    expect(heard.at(-1)).toEqual(['second'])
    asked.end()
    expect(await kept).toBeNull()
  })

  test('after the end is not waited for', async () => {
    const { asked } = shelf()
    asked.end()
    expect(await asked.ask('first')).toBeNull()
  })
})
