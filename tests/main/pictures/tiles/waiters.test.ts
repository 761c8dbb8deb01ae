import { describe, expect, test, vi } from 'vitest'
import { Waiters } from '../../../../src/main/services/pictures/tiles/waiters.ts'

/** A shelf on which things come to lie. */
function shelf(most = 10) {
  const there = new Set<string>()
  const heard: string[][] = []
  const waiters = new Waiters<string, string>(
    async (name) => (there.has(name) ? `the ${name}` : null),
    (names) => heard.push(names),
    most,
  )
  return { there, heard, waiters }
}

describe('what is asked for', () => {
  test('comes at once when it is there, and else as soon as it is', async () => {
    const { there, waiters } = shelf()
    there.add('first')
    expect(await waiters.ask('first')).toBe('the first')
    const waited = waiters.ask('second')
    there.add('second')
    expect(await waited).toBe('the second')
    waiters.end()
  })

  test('is told of newest first', async () => {
    const { heard, waiters } = shelf()
    const all = ['first', 'second', 'third'].map((name) => waiters.ask(name))
    await vi.waitFor(() => expect(heard.at(-1)).toEqual(['third', 'second', 'first']))
    waiters.end()
    expect(await Promise.all(all)).toEqual([null, null, null])
  })

  test('is waited for by so many only: whoever has waited longest gets nothing', async () => {
    const { there, waiters } = shelf(2)
    const all = ['first', 'second', 'third'].map((name) => waiters.ask(name))
    expect(await all[0]).toBeNull()
    for (const name of ['first', 'second', 'third']) there.add(name)
    expect(await Promise.all(all)).toEqual([null, 'the second', 'the third'])
    waiters.end()
  })

  test('and not wanted any more is waited for no longer', async () => {
    const { heard, waiters } = shelf()
    const control = new AbortController()
    const dropped = waiters.ask('first', control.signal)
    const kept = waiters.ask('second')
    control.abort()
    expect(await dropped).toBeNull()
    await waiters.look()
    expect(heard.at(-1)).toEqual(['second'])
    waiters.end()
    expect(await kept).toBeNull()
  })

  test('after the end is not waited for', async () => {
    const { waiters } = shelf()
    waiters.end()
    expect(await waiters.ask('first')).toBeNull()
  })
})
