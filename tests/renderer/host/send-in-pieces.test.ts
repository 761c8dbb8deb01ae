import { afterEach, expect, it, vi } from 'vitest'
import { sendInPieces } from '../../../src/renderer/host/send-in-pieces.ts'

afterEach(() => vi.unstubAllGlobals())

it('A scan that the desktop host refuses comes with its reason, and the host need not wait for the rest', async () => {
  const methods: (string | undefined)[] = []
  vi.stubGlobal('fetch', async (_: string, request: RequestInit) => {
    methods.push(request.method)
    return Response.json({
      ok: false,
      reason: { code: 'full', parts: { free: 12 } },
      sentence: 'The disk is full.',
    })
  })
  const sent = sendInPieces(new File(['scan'], 'plan.tif'), () => undefined, new AbortController().signal)
  await expect(sent).rejects.toMatchObject({
    reason: { code: 'full', parts: { free: 12 } },
    message: 'The disk is full.',
  })
  expect(methods).toEqual(['POST', 'DELETE'])
})
