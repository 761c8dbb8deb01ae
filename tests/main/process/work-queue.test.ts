import { describe, expect, test } from 'vitest'
import { WorkQueue } from '../../../src/main/services/process/work-queue.ts'

/** Work that ends when it is told to, and notes that it was begun. */
function aDesk(queue: WorkQueue) {
  const begun: string[] = []
  const ends = new Map<string, () => void>()
  const doing = (name: string, signal?: AbortSignal): Promise<string> =>
    queue.do(() => {
      begun.push(name)
      return new Promise((resolve) => ends.set(name, () => resolve(name)))
    }, signal)
  const end = async (name: string): Promise<void> => {
    await expect.poll(() => ends.has(name)).toBe(true)
    ends.get(name)?.()
  }
  return { begun, doing, end }
}

describe('work that waits its turn', () => {
  test.each([
    [false, ['first', 'second', 'third']],
    [true, ['first', 'third', 'second']],
  ])('is done one at a time; the newest first where that is wanted: %s', async (newestFirst, order) => {
    const { begun, doing, end } = aDesk(new WorkQueue({ newestFirst }))
    const all = ['first', 'second', 'third'].map((name) => doing(name))
    for (const [i, name] of order.entries()) {
      await end(name)
      expect(begun).toEqual(order.slice(0, i + 1))
    }
    expect(await Promise.all(all)).toEqual(['first', 'second', 'third'])
  })

  test('is done as many at a time as is wanted', async () => {
    const { begun, doing, end } = aDesk(new WorkQueue({ most: 2 }))
    const all = ['first', 'second', 'third'].map((name) => doing(name))
    await end('second')
    await end('third')
    expect(begun).toEqual(['first', 'second', 'third'])
    await end('first')
    await Promise.all(all)
  })

  test('is waited for no longer than is wanted, while other work is still at it', async () => {
    const { begun, doing, end } = aDesk(new WorkQueue({ newestFirst: true }))
    const stop = new AbortController()
    const [first, stays, left] = [doing('first'), doing('stays'), doing('left', stop.signal)]
    const refused = expect(left).rejects.toThrow('aborted')
    stop.abort()
    await refused
    await end('first')
    await end('stays')
    expect(await Promise.all([first, stays])).toEqual(['first', 'stays'])
    expect(begun).toEqual(['first', 'stays'])
  })

  test('that is not wanted any more when it is asked for is not begun', async () => {
    const { begun, doing, end } = aDesk(new WorkQueue())
    await expect(doing('late', AbortSignal.abort())).rejects.toThrow('aborted')
    const other = doing('other')
    await end('other')
    expect(await other).toBe('other')
    expect(begun).toEqual(['other'])
  })

  test('that fails makes room for the next', async () => {
    const queue = new WorkQueue()
    const fails = queue.do(() => Promise.reject(new Error('no')))
    const next = queue.do(() => Promise.resolve('done'))
    await expect(fails).rejects.toThrow('no')
    expect(await next).toBe('done')
  })
})
