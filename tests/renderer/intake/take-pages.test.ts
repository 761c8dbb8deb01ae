import { beforeEach, describe, expect, it } from 'vitest'
import type { Reply } from '../../../src/contract/reply.ts'
import type { RequestAnswer, RequestName } from '../../../src/contract/requests.ts'
import type { ScanLook } from '../../../src/contract/scan-look.ts'
import { useBench } from '../../../src/renderer/bench/bench-store.ts'
import { setHost } from '../../../src/renderer/bench/the-host.ts'
import type { Host } from '../../../src/renderer/host/host.ts'
import { type ChosenPages, usePagesAsked } from '../../../src/renderer/intake/choose-pages.ts'
import { takePages } from '../../../src/renderer/intake/take-pages.ts'

const look = (pages: number): ScanLook => ({
  upload: 'u1',
  name: 'valve-chest.tif',
  format: 'tiff',
  locked: false,
  pages,
  looked: [{ page: 1, made: 'scanned', width: 10, height: 10 }],
})

let dropped: string[] = []

/** A host that says what a scan holds, and nothing else. */
function hostWith(answer: Reply<'look-into'>): void {
  const host: Host = {
    ask: async <N extends RequestName>(name: N, args: object): Promise<Reply<N>> => {
      if (name === 'drop-upload') {
        dropped.push((args as { upload: string }).upload)
        return { ok: true, answer: null as RequestAnswer<N> }
      }
      return answer as Reply<N>
    },
    listen: () => () => undefined,
    pictureUrl: (address) => address,
    sendScan: async () => 'u1',
  }
  setHost(host)
}

/** The dialog, once it is there. */
async function asked() {
  for (let k = 0; k < 20 && usePagesAsked.getState().asked === null; k++) await Promise.resolve()
  const { asked: dialog } = usePagesAsked.getState()
  if (dialog === null) throw new Error('Nobody was asked.')
  return dialog
}

beforeEach(() => {
  dropped = []
  useBench.setState({ notices: [], work: [] })
  usePagesAsked.setState({ asked: null })
})

describe('A scan that was handed over', () => {
  it('goes straight in when it is one plain page', async () => {
    hostWith({ ok: true, answer: look(1) })
    const taken: ChosenPages[] = []
    const take = async (chosen: ChosenPages) => {
      taken.push(chosen)
      return null
    }
    expect(await takePages('u1', 'valve-chest.tif', take)).toBe('taken')
    expect({ taken, dropped }).toEqual({ taken: [{}], dropped: [] })
  })

  it('is given back, and a person is told, when it can’t be read', async () => {
    hostWith({ ok: false, reason: { code: 'scan.torn', parts: {} }, sentence: 'This file is cut short.' })
    expect(await takePages('u1', 'valve-chest.tif', async () => null)).toBe('refused')
    expect(dropped).toEqual(['u1'])
    expect(useBench.getState().notices.map(({ sentence }) => sentence)).toEqual(['This file is cut short.'])
    expect(useBench.getState().work).toEqual([])
  })

  it('has its pages chosen, and is given back when a person leaves it', async () => {
    hostWith({ ok: true, answer: look(3) })
    const left = takePages('u1', 'valve-chest.tif', async () => null)
    ;(await asked()).done(false)
    expect(await left).toBe('left')
    expect(dropped).toEqual(['u1'])

    const taken = takePages('u1', 'valve-chest.tif', async () => null)
    const dialog = await asked()
    expect(await dialog.take({ pages: [{ page: 2 }] })).toBeNull()
    dialog.done(true)
    expect(await taken).toBe('taken')
    expect(dropped).toEqual(['u1'])
  })

  it('waits for the one before it', async () => {
    hostWith({ ok: true, answer: look(3) })
    const first = takePages('u1', 'one.tif', async () => null)
    const second = takePages('u2', 'two.tif', async () => null)
    ;(await asked()).done(true)
    expect(await first).toBe('taken')
    ;(await asked()).done(false)
    expect(await second).toBe('left')
  })
})
