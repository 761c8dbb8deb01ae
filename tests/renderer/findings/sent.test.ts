import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { listOf, runsFrom } from '../../../src/renderer/findings/difference.ts'
import { Receiver, Sender, type Sent } from '../../../src/renderer/findings/sent.ts'

interface Thing {
  title?: string
  items: { id: number }[]
  words: string[]
  more?: unknown[] | string
}

/** As it comes out at the other end of a line. */
const across = <T>(sent: T): T => structuredClone(sent)

const POOL = Array.from({ length: 12 }, (_, id) => ({ id }))
const some = fc.uniqueArray(fc.constantFrom(...POOL), { maxLength: 12 })
const things = fc.record(
  { title: fc.string(), items: some, words: fc.array(fc.constantFrom('a', 'b', 'c')), more: fc.option(some) },
  { requiredKeys: ['items', 'words'] },
)

describe('versions of something, sent one after another', () => {
  it('come out as they were, and what was in the one before is the same one', () => {
    fc.assert(
      fc.property(fc.array(things, { minLength: 1, maxLength: 8 }), (versions) => {
        const [sender, receiver] = [new Sender<object>(), new Receiver<object>()]
        const came = new Map<{ id: number }, { id: number }>()
        for (const [i, version] of versions.entries()) {
          if (i === 5) sender.anew()
          const got = receiver.receive(across(sender.send(version))) as Thing
          expect(got).toEqual(version)
          if (i === 5) came.clear()
          for (const [k, item] of version.items.entries()) {
            const before = versions[i - 1]?.items.includes(item) === true && i !== 5
            if (before) expect(got.items[k]).toBe(came.get(item))
            came.set(item, got.items[k] as { id: number })
          }
        }
      }),
      { numRuns: 500 },
    )
  })

  it('cost what has changed in them', () => {
    const items = Array.from({ length: 10_000 }, (_, id) => ({ id, text: 'riveted all round' }))
    const sender = new Sender<object>()
    sender.send({ title: 'Hopper', items })
    const next = sender.send({ title: 'Hopper', items: items.with(4711, { id: 1, text: 'cast' }) })
    expect(JSON.stringify(next).length).toBeLessThan(200)
    expect(JSON.stringify(sender.send({ title: 'Hopper', items })).length).toBeLessThan(250)
  })

  it('that were never begun are refused', () => {
    const change: Sent<object> = { change: { set: {}, lists: {}, gone: [] } }
    expect(() => new Receiver<object>().receive(change)).toThrow(RangeError)
  })

  it('come through with numbers that are no numbers', () => {
    expect(listOf([1, Number.NaN], runsFrom([1, Number.NaN], [Number.NaN, 1]))).toEqual([Number.NaN, 1])
  })

  it('of what stands twice in a list come out twice', () => {
    const [before, after] = [
      ['a', 'b', 'a', 'c'],
      ['a', 'a', 'c', 'a', 'b', 'd', 'd'],
    ]
    expect(listOf(before, runsFrom(before, after))).toEqual(after)
  })
})
