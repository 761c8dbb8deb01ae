import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { GreyWindow } from '../../../src/core/imaging/index.ts'
import type { FromSearcher, NotFound, ToSearcher } from '../../../src/renderer/strokes/messages.ts'
import type { SearchWish } from '../../../src/renderer/strokes/search-wish.ts'
import { Searcher } from '../../../src/renderer/strokes/searcher.ts'
import { reason } from '../../../src/renderer/words/window-words.ts'

const sent: ToSearcher[] = []
let answer: (data: FromSearcher) => void = () => undefined
let stop: () => void = () => undefined
let begun = 0
let ended = 0
vi.stubGlobal(
  'Worker',
  class {
    constructor() {
      begun++
    }
    addEventListener(kind: string, heard: (event?: { data: FromSearcher }) => void): void {
      if (kind === 'message') answer = (data) => heard({ data })
      else stop = () => heard()
    }
    postMessage(message: ToSearcher): void {
      sent.push(message)
    }
    terminate(): void {
      ended++
    }
  },
)

const window: GreyWindow = { left: 0, top: 0, width: 1, height: 1, data: new Uint8Array(1) }
const wish: SearchWish = { as: 'point', reach: 8, reading: 'centre', either: true }
const asked = (): unknown[] => sent.map(({ rough }) => rough[0]?.[0])
const NONE: NotFound = { kind: 'none', because: reason('search.nothing-pointed-at') }
const none = (ask: number): FromSearcher => ({ ask, found: NONE })

beforeEach(() => {
  vi.useFakeTimers()
  sent.length = 0
  begun = 0
  ended = 0
})
afterEach(() => {
  vi.runAllTimers()
  vi.useRealTimers()
})

it('A worker that has had nothing to look for is ended with its memory, and another begun when it is wanted', async () => {
  const searcher = new Searcher()
  const first = searcher.pick([window], [pixel(1, 0)], wish)
  answer(none(1))
  expect(await first).toEqual(NONE)
  vi.advanceTimersByTime(9000)
  const second = searcher.pick([window], [pixel(2, 0)], wish)
  vi.advanceTimersByTime(60_000)
  // However long it looks, it is not ended under its work.
  expect([begun, ended]).toEqual([1, 0])
  answer(none(2))
  expect(await second).toEqual(NONE)
  vi.advanceTimersByTime(11_000)
  expect([begun, ended]).toEqual([1, 1])
  const third = searcher.pick([window], [pixel(3, 0)], wish)
  expect([begun, ended]).toEqual([2, 1])
  answer(none(3))
  expect(await third).toEqual(NONE)
})

it('Of what follows the pointer only the newest is looked at, and what was picked goes before it', async () => {
  const searcher = new Searcher()
  const first = searcher.glance([window], [pixel(1, 0)], wish)
  const second = searcher.glance([window], [pixel(2, 0)], wish)
  const third = searcher.glance([window], [pixel(3, 0)], wish)
  const pick = searcher.pick([window], [pixel(4, 0)], wish)
  answer(none(1))
  answer(none(4))
  answer(none(3))
  expect(asked()).toEqual([1, 4, 3])
  expect(await second).toBeNull()
  for (const one of [first, third, pick]) expect(await one).toEqual(NONE)
})

it('When the worker has stopped every search is answered with what happened', async () => {
  const searcher = new Searcher()
  const before = [
    searcher.pick([window], [pixel(1, 0)], wish),
    searcher.glance([window], [pixel(2, 0)], wish),
  ]
  stop()
  for (const one of [...before, searcher.pick([window], [pixel(3, 0)], wish)]) {
    expect(await one).toEqual({ kind: 'none', because: { code: 'search.stopped', parts: {} } })
  }
})
