import { describe, expect, it } from 'vitest'
import { fetchGreys, giveUp } from '../../../src/renderer/strokes/fetch-greys.ts'
import { type FormMaker, KeptPictures } from '../../../src/renderer/tiles/kept-pictures.ts'
import type { PictureForms } from '../../../src/renderer/tiles/picture-forms.ts'
import { PictureLoader } from '../../../src/renderer/tiles/picture-loader.ts'

const settle = () => new Promise((resolve) => setTimeout(resolve, 5))

const unwanted = <F>(): FormMaker<F> => ({
  make: () => Promise.reject(new Error('Only greys are wanted here.')),
  bytes: () => 0,
})

/** Pictures whose bytes are given by hand; each takes 10 bytes, and its grey is the number that it is called by. */
function pictures(limit: number) {
  const kept = new KeptPictures<PictureForms>(limit, {
    image: unwanted(),
    bitmap: unwanted(),
    tone: unwanted(),
    grey: {
      make: async (bytes) => ({ width: 1, height: 1, data: Uint8Array.of(Number(await bytes.text())) }),
      bytes: () => 9,
    },
  })
  const open = new Map<string, () => void>()
  const loader = new PictureLoader<PictureForms>(
    kept,
    (address, signal) =>
      new Promise((resolve, reject) => {
        open.set(address, () => resolve(new Blob([address])))
        signal.addEventListener('abort', () => {
          open.delete(address)
          reject(new Error('abandoned'))
        })
      }),
  )
  const give = async (...addresses: string[]): Promise<void> => {
    for (const address of addresses) open.get(address)?.()
    await settle()
  }
  return { from: { kept, loader }, open, give }
}

const numbers = (greys: Awaited<ReturnType<typeof fetchGreys>>) =>
  greys && Object.fromEntries([...greys].map(([address, { data }]) => [address, data[0]]))

describe('the greys that a search looks at', () => {
  it('are told once all of them are there, whatever came first', async () => {
    const { from, give } = pictures(1000)
    let told = false
    const all = fetchGreys('a search', ['1', '2', '3'], from).then((greys) => {
      told = true
      return greys
    })
    await give('3', '1')
    expect(told).toBe(false)
    await give('2')
    expect(numbers(await all)).toEqual({ 1: 1, 2: 2, 3: 3 })
    expect(numbers(await fetchGreys('another', ['2'], from))).toEqual({ 2: 2 })
  })

  it('are all there though more were asked for than are kept', async () => {
    const { from, give } = pictures(25)
    const all = fetchGreys('a search', ['1', '2', '3', '4'], from)
    await give('1', '2', '3', '4')
    expect(numbers(await all)).toEqual({ 1: 1, 2: 2, 3: 3, 4: 4 })
    expect(from.kept.has('1', 'grey')).toBe(false)
  })

  it('are waited for no longer when the same one asks for others, or gives up', async () => {
    const { from, open, give } = pictures(1000)
    const first = fetchGreys('a search', ['1', '2'], from)
    const second = fetchGreys('a search', ['2', '3'], from)
    expect(await first).toBeNull()
    await settle()
    expect([...open.keys()]).toEqual(['2', '3'])
    await give('2')
    giveUp('a search', from)
    expect(await second).toBeNull()
    await settle()
    expect(open.has('3')).toBe(false)
  })
})
