import { afterEach, describe, expect, it } from 'vitest'
import type { OpenedJob } from '../../../src/contract/bench-state.ts'
import type { PictureProgress, SheetPictures } from '../../../src/contract/pictures.ts'
import { useBench } from '../../../src/renderer/bench/bench-store.ts'
import { getPictures, heardOfPictures } from '../../../src/renderer/bench/get-pictures.ts'
import { setHost } from '../../../src/renderer/bench/the-host.ts'

const told = (state: PictureProgress['state'], done: number): PictureProgress => ({
  sheet: 'S1',
  state,
  done,
  sentence: state,
})

const pictures = (progress: PictureProgress): SheetPictures => ({
  sheet: 'S1',
  width: 100,
  height: 80,
  version: 'v',
  overview: { width: 100, height: 80 },
  levels: [],
  exact: true,
  progress,
})

/** A host that answers when it is let. */
function aHost() {
  const waiting: ((pictures: SheetPictures) => void)[] = []
  setHost({
    ask: (() => new Promise((resolve) => waiting.push((answer) => resolve({ ok: true, answer })))) as never,
    listen: () => () => undefined,
    pictureUrl: (address) => address,
    sendScan: () => Promise.reject(new Error('none')),
  })
  return waiting
}

const shown = () => useBench.getState().pictures['S1']?.progress.state

afterEach(() => useBench.setState({ pictures: {}, opened: null }))

describe('the pictures of a sheet', () => {
  it('are asked for once by all who want them', async () => {
    const waiting = aHost()
    const both = [getPictures('S1'), getPictures('S1')]
    expect(waiting).toHaveLength(1)
    waiting[0]?.(pictures(told('overview', 0)))
    await Promise.all(both)
    expect(shown()).toBe('overview')
  })

  it('are asked for anew of another job, whose sheet is called the same', async () => {
    const waiting = aHost()
    useBench.setState({ opened: { id: 'first' } as OpenedJob })
    const late = getPictures('S1')
    useBench.setState({ opened: { id: 'second' } as OpenedJob })
    const answered = getPictures('S1')
    expect(waiting).toHaveLength(2)
    waiting[1]?.(pictures(told('tiles', 0.5)))
    waiting[0]?.(pictures(told('ready', 1)))
    await Promise.all([late, answered])
    expect(shown()).toBe('tiles')
  })

  it('are ready when that was told before the older answer came', async () => {
    const [waiting, answered] = [aHost(), getPictures('S1')]
    heardOfPictures(told('ready', 1))
    waiting[0]?.(pictures(told('overview', 0)))
    await answered
    expect(shown()).toBe('ready')
  })

  it('are ready when the answer says so and an older event came before it', async () => {
    const [waiting, answered] = [aHost(), getPictures('S1')]
    heardOfPictures(told('tiles', 0.5))
    waiting[0]?.(pictures(told('ready', 1)))
    await answered
    expect(shown()).toBe('ready')
  })

  it('go on from what is told afterwards', async () => {
    const [waiting, answered] = [aHost(), getPictures('S1')]
    waiting[0]?.(pictures(told('tiles', 0.2)))
    await answered
    heardOfPictures(told('stopped', 0.4))
    expect(shown()).toBe('stopped')
  })

  it.each([
    ['before the answer came, which could not know', true],
    ['after it', false],
  ])('are as exact as is told %s, without being asked for again', async (_, early) => {
    const [waiting, answered] = [aHost(), getPictures('S1')]
    const ready = { ...told('ready', 1), exact: true }
    if (early) heardOfPictures(ready)
    waiting[0]?.({ ...pictures(told('overview', 0)), exact: false })
    await answered
    if (!early) heardOfPictures(ready)
    expect(useBench.getState().pictures['S1']).toMatchObject({ exact: true, progress: { state: 'ready' } })
    expect(waiting).toHaveLength(1)
  })

  it('stay as exact as the answer said when what is told says nothing of it', async () => {
    const [waiting, answered] = [aHost(), getPictures('S1')]
    waiting[0]?.(pictures(told('tiles', 0.5)))
    await answered
    heardOfPictures(told('ready', 1))
    expect(useBench.getState().pictures['S1']?.exact).toBe(true)
  })
})
