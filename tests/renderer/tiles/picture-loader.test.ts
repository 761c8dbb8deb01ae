import { describe, expect, it } from 'vitest'
import { PictureCache } from '../../../src/renderer/tiles/picture-cache.ts'
import { PictureLoader } from '../../../src/renderer/tiles/picture-loader.ts'

class Plate {
  closed = false
  readonly width: number
  readonly height: number
  constructor(width = 10, height = 10) {
    this.width = width
    this.height = height
  }
  close(): void {
    this.closed = true
  }
}

const settle = () => new Promise((resolve) => setTimeout(resolve, 0))

/** Fetches that are answered by hand. */
function desk(most: number) {
  const cache = new PictureCache<Plate>(1e6)
  const open = new Map<string, { give: () => void; fail: () => void; signal: AbortSignal }>()
  const asked: string[] = []
  let now = 0
  const loader = new PictureLoader<Plate>(
    cache,
    (address, signal) =>
      new Promise((resolve, reject) => {
        asked.push(address)
        open.set(address, { give: () => resolve(new Plate()), fail: () => reject(new Error('no')), signal })
        signal.addEventListener('abort', () => reject(new Error('abandoned')))
      }),
    most,
    () => now,
  )
  return { cache, open, asked, loader, wait: (ms: number) => (now += ms) }
}

describe('pictures that are kept', () => {
  it('stay within their bytes: what was not looked at for longest goes, and is closed', () => {
    const cache = new PictureCache<Plate>(3 * 400)
    const plates = ['a', 'b', 'c', 'd'].map((name) => [name, new Plate()] as const)
    for (const [name, plate] of plates.slice(0, 3)) cache.put(name, plate)
    cache.get('a')
    cache.put('d', plates[3]?.[1] ?? new Plate())
    expect(['a', 'b', 'c', 'd'].filter((name) => cache.has(name))).toEqual(['a', 'c', 'd'])
    expect(plates[1]?.[1].closed).toBe(true)
    expect(cache.bytes).toBe(1200)
  })

  it('keep the newest even when it alone is more than the bytes allow', () => {
    const cache = new PictureCache<Plate>(100)
    cache.put('large', new Plate(100, 100))
    expect(cache.has('large')).toBe(true)
  })

  it('count a picture once that is put twice', () => {
    const cache = new PictureCache<Plate>(1e6)
    cache.put('a', new Plate())
    cache.put('a', new Plate())
    expect(cache.bytes).toBe(400)
  })
})

describe('fetching pictures', () => {
  it('is a few at a time, dearest first', async () => {
    const { loader, open, asked } = desk(2)
    loader.want('sight', 1, ['a', 'b', 'c'])
    expect(asked).toEqual(['a', 'b'])
    open.get('a')?.give()
    await settle()
    expect(asked).toEqual(['a', 'b', 'c'])
  })

  it('takes the lens before the rest, whoever asked first', async () => {
    const { loader, open, asked } = desk(1)
    loader.want('sight', 1, ['a', 'b'])
    loader.want('lens', 0, ['z'])
    open.get('a')?.give()
    await settle()
    expect(asked).toEqual(['a', 'z'])
  })

  it('abandons what nobody wants any more', async () => {
    const { loader, open, cache } = desk(2)
    loader.want('sight', 1, ['a', 'b'])
    loader.want('sight', 1, ['b', 'c'])
    expect(open.get('a')?.signal.aborted).toBe(true)
    await settle()
    expect(open.has('c')).toBe(true)
    expect(cache.has('a')).toBe(false)
  })

  it('asks again for what was abandoned when it is wanted anew, at once', async () => {
    const { loader, asked } = desk(2)
    loader.want('sight', 1, ['a'])
    loader.want('sight', 1, [])
    await settle()
    loader.want('sight', 1, ['a'])
    expect(asked).toEqual(['a', 'a'])
  })

  it('asks for a picture that failed only after a while', async () => {
    const { loader, open, asked, wait } = desk(2)
    loader.want('sight', 1, ['a'])
    open.get('a')?.fail()
    await settle()
    loader.want('sight', 1, ['a'])
    expect(asked).toEqual(['a'])
    wait(6000)
    loader.want('sight', 1, ['a'])
    expect(asked).toEqual(['a', 'a'])
  })

  it('tells that a picture has come when it is there', async () => {
    const { loader, open, cache } = desk(2)
    let seen = false
    loader.listen(() => {
      seen = cache.has('a')
    })
    loader.want('sight', 1, ['a'])
    open.get('a')?.give()
    await settle()
    expect(seen).toBe(true)
  })
})
