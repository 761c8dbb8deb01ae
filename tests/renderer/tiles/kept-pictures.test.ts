import { describe, expect, it } from 'vitest'
import { KeptPictures } from '../../../src/renderer/tiles/kept-pictures.ts'

const HUNDRED = new Blob(['x'.repeat(100)])

/** Pictures with a form that takes 300 bytes and is closed, and one that takes nothing. */
function shelf(limit: number) {
  const closed: string[] = []
  let made = 0
  const kept = new KeptPictures<{ plate: string; dark: boolean }>(limit, {
    plate: {
      make: async () => `plate ${++made}`,
      bytes: () => 300,
      close: (plate) => closed.push(plate),
    },
    dark: { make: async () => false, bytes: () => 0 },
  })
  const add = async (address: string, form: 'plate' | 'dark'): Promise<void> =>
    kept.keep(address, HUNDRED, form, await kept.make(HUNDRED, form))
  return { kept, closed, add }
}

describe('pictures that are kept', () => {
  it('stay within their bytes: what was not looked at for longest goes, and is closed', async () => {
    const { kept, closed, add } = shelf(1200)
    for (const name of ['a', 'b', 'c']) await add(name, 'plate')
    expect(kept.bytes).toBe(1200)
    kept.get('a', 'plate')
    await add('d', 'plate')
    expect(['a', 'b', 'c', 'd'].filter((name) => kept.has(name, 'plate'))).toEqual(['a', 'c', 'd'])
    expect(closed).toEqual(['plate 2'])
    expect(kept.bytes).toBe(1200)
  })

  it('have each form that was made of them, and what was fetched, counted once', async () => {
    const { kept, closed, add } = shelf(1200)
    await add('a', 'dark')
    expect(kept.bytes).toBe(100)
    await add('a', 'plate')
    expect(kept.get('a', 'dark')).toBe(false)
    expect(kept.get('a', 'plate')).toBe('plate 1')
    expect(kept.fetched('a')).toBe(HUNDRED)
    expect(kept.bytes).toBe(400)
    expect(closed).toEqual([])
  })

  it('close a form in whose place another comes', async () => {
    const { kept, closed, add } = shelf(1200)
    await add('a', 'plate')
    await add('a', 'plate')
    expect(kept.get('a', 'plate')).toBe('plate 2')
    expect(closed).toEqual(['plate 1'])
    expect(kept.bytes).toBe(400)
  })

  it('are not looked at by whoever asks only whether they are there', async () => {
    const { kept, add } = shelf(800)
    await add('a', 'plate')
    await add('b', 'plate')
    expect(kept.has('a', 'plate')).toBe(true)
    await add('c', 'plate')
    expect(kept.has('a', 'plate')).toBe(false)
  })
})
