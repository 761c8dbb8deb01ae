import { describe, expect, it } from 'vitest'
import { KeptPictures } from '../../../src/renderer/tiles/kept-pictures.ts'
import { PictureLoader } from '../../../src/renderer/tiles/picture-loader.ts'

const settle = () => new Promise((resolve) => setTimeout(resolve, 0))

interface Forms {
  plate: string
  proof: string
}

/** Fetches that are answered by hand. */
function desk(most: number, lane?: (form: keyof Forms) => string) {
  const made: string[] = []
  const maker = (form: string) => ({
    make: async (bytes: Blob) => {
      made.push(`${form} of ${await bytes.text()}`)
      return form
    },
    bytes: () => 400,
  })
  const kept = new KeptPictures<Forms>(1e6, { plate: maker('plate'), proof: maker('proof') })
  const open = new Map<string, { give: () => void; fail: () => void; signal: AbortSignal }>()
  const asked: string[] = []
  let now = 0
  const loader = new PictureLoader<Forms>(
    kept,
    (address, signal) =>
      new Promise((resolve, reject) => {
        asked.push(address)
        open.set(address, {
          give: () => resolve(new Blob([address])),
          fail: () => reject(new Error('no')),
          signal,
        })
        signal.addEventListener('abort', () => reject(new Error('abandoned')))
      }),
    { most, now: () => now, ...(lane === undefined ? {} : { lane }) },
  )
  return { kept, open, asked, made, loader, wait: (ms: number) => (now += ms) }
}

describe('fetching pictures', () => {
  it('is a few at a time, dearest first', async () => {
    const { loader, open, asked } = desk(2)
    loader.want('sight', 1, 'plate', ['a', 'b', 'c'])
    expect(asked).toEqual(['a', 'b'])
    open.get('a')?.give()
    await settle()
    expect(asked).toEqual(['a', 'b', 'c'])
  })

  it('takes the lens before the rest, whoever asked first', async () => {
    const { loader, open, asked } = desk(1)
    loader.want('sight', 1, 'plate', ['a', 'b'])
    loader.want('lens', 0, 'plate', ['z'])
    open.get('a')?.give()
    await settle()
    expect(asked).toEqual(['a', 'z'])
  })

  it('abandons what nobody wants any more', async () => {
    const { loader, open, kept } = desk(2)
    loader.want('sight', 1, 'plate', ['a', 'b'])
    loader.want('sight', 1, 'plate', ['b', 'c'])
    expect(open.get('a')?.signal.aborted).toBe(true)
    await settle()
    expect(open.has('c')).toBe(true)
    expect(kept.has('a', 'plate')).toBe(false)
  })

  it('asks again for what was abandoned when it is wanted anew, at once', async () => {
    const { loader, asked } = desk(2)
    loader.want('sight', 1, 'plate', ['a'])
    loader.want('sight', 1, 'plate', [])
    await settle()
    loader.want('sight', 1, 'plate', ['a'])
    expect(asked).toEqual(['a', 'a'])
  })

  it('asks for a picture that failed only after a while', async () => {
    const { loader, open, asked, wait } = desk(2)
    loader.want('sight', 1, 'plate', ['a'])
    open.get('a')?.fail()
    await settle()
    loader.want('sight', 1, 'plate', ['a'])
    expect(asked).toEqual(['a'])
    wait(6000)
    loader.want('sight', 1, 'plate', ['a'])
    expect(asked).toEqual(['a', 'a'])
  })

  it('tells that a picture has come when it is there', async () => {
    const { loader, open, kept } = desk(2)
    let seen = false
    loader.listen(() => {
      seen = kept.has('a', 'plate')
    })
    loader.want('sight', 1, 'plate', ['a'])
    open.get('a')?.give()
    await settle()
    expect(seen).toBe(true)
  })

  it('fetches a picture once, whoever wants it and in however many forms', async () => {
    const { loader, open, asked, made, kept } = desk(2)
    const came: string[] = []
    loader.listen((address, form) => came.push(`${form} of ${address}`))
    loader.want('sight', 1, 'plate', ['a'])
    loader.want('search', 0, 'proof', ['a'])
    open.get('a')?.give()
    await settle()
    loader.want('crop', 2, 'plate', ['a'])
    await settle()
    expect(asked).toEqual(['a'])
    expect(made).toEqual(['proof of a', 'plate of a'])
    expect(came).toEqual(made)
    expect(kept.has('a', 'plate') && kept.has('a', 'proof')).toBe(true)
  })

  it('makes another form of what is there without fetching it again', async () => {
    const { loader, open, asked, kept } = desk(2)
    loader.want('sight', 1, 'plate', ['a'])
    open.get('a')?.give()
    await settle()
    loader.want('search', 0, 'proof', ['a'])
    await settle()
    expect(asked).toEqual(['a'])
    expect(kept.has('a', 'proof')).toBe(true)
  })

  it('holds up nothing in one lane for what waits in another', () => {
    const { loader, asked } = desk(1, (form) => (form === 'proof' ? 'search' : 'screen'))
    loader.want('sight', 1, 'plate', ['a', 'b'])
    loader.want('search', 0, 'proof', ['b', 'c'])
    expect(asked).toEqual(['a', 'b'])
    loader.want('ring', 3, 'plate', ['d'])
    expect(asked).toEqual(['a', 'b'])
  })
})
