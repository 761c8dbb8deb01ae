import { beforeEach, expect, it, vi } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { GreyWindow } from '../../../src/core/imaging/index.ts'
import type { FromSearcher, ToSearcher } from '../../../src/renderer/strokes/messages.ts'
import type { Search } from '../../../src/renderer/strokes/search.ts'
import { Searcher } from '../../../src/renderer/strokes/searcher.ts'

const sent: ToSearcher[] = []
let answer: (data: FromSearcher) => void = () => undefined
let stop: () => void = () => undefined
vi.stubGlobal(
  'Worker',
  class {
    addEventListener(kind: string, heard: (event?: { data: FromSearcher }) => void): void {
      if (kind === 'message') answer = (data) => heard({ data })
      else stop = () => heard()
    }
    postMessage(message: ToSearcher): void {
      sent.push(message)
    }
  },
)

const window: GreyWindow = { left: 0, top: 0, width: 1, height: 1, data: new Uint8Array(1) }
const at = (x: number): Search => ({
  as: 'point',
  rough: [pixel(x, 0)],
  reach: 8,
  wanted: 'centre',
  either: true,
})
const asked = (): unknown[] => sent.map(({ search }) => search.rough[0]?.[0])
const none = (ask: number): FromSearcher => ({ ask, result: { found: { kind: 'none', because: 'No.' } } })

beforeEach(() => {
  sent.length = 0
})

it('Of what follows the pointer only the newest is looked at, and what was picked goes before it', async () => {
  const searcher = new Searcher()
  const first = searcher.glance(window, at(1))
  const second = searcher.glance(window, at(2))
  const third = searcher.glance(window, at(3))
  const pick = searcher.pick(window, at(4))
  answer(none(1))
  answer(none(4))
  answer(none(3))
  expect(asked()).toEqual([1, 4, 3])
  expect(await second).toBeNull()
  for (const one of [first, third, pick]) expect(await one).toMatchObject({ found: { kind: 'none' } })
})

it('When the worker has stopped every search is answered with what happened', async () => {
  const searcher = new Searcher()
  const before = [searcher.pick(window, at(1)), searcher.glance(window, at(2))]
  stop()
  for (const one of [...before, searcher.pick(window, at(3))]) {
    expect(await one).toMatchObject({
      found: { because: expect.stringMatching(/has stopped: pick by hand/) },
    })
  }
})
