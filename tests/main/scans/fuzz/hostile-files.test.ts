import { afterAll, describe, expect, test } from 'vitest'
import { LIMITS } from '../../../../src/contract/limits.ts'
import type { ScanLook } from '../../../../src/contract/scan-look.ts'
import { inChunks } from '../../fixtures/a-workbench.ts'
import { folderSnapshot } from '../../fixtures/folder-snapshot.ts'
import { fuzzDesk } from './fuzz-desk.ts'
import { HOSTILE_FILES, widestPage } from './hostile-files.ts'
import { LONGEST, tryCopy } from './try-copy.ts'

/** The least that may be set. */
const SECONDS = 5
/** What hangs is given up after any time: this much is long enough to have hung. */
const OF_WHAT_HANGS = 1

const desk = await fuzzDesk({ ...LIMITS, seconds: SECONDS })
const hurried = await fuzzDesk({ ...LIMITS, seconds: OF_WHAT_HANGS })
afterAll(async () => {
  await desk.close()
  await hurried.close()
})

describe('a file that is made to do harm', () => {
  test.each(HOSTILE_FILES)(
    'is answered or refused in words, in time, without a trace: $name',
    async (hostile) => {
      const { name, file, make, about, hangs } = hostile
      const at = hangs ? hurried : desk
      const folder = await at.newJob()
      const kind = { name, file, format: 'pdf' as const, make: () => ({ bytes: Buffer.alloc(0), pages: [] }) }
      const outcome = await tryCopy(at, folder, { number: 0, kind, way: 'made so', bytes: make() })
      expect(outcome.faults).toEqual([])
      expect(outcome.longest).toBeLessThan(LONGEST)
      if (about !== undefined) expect(outcome.sentence).toMatch(about)
      // The host goes on.
      expect(await at.bench.ask('look', {})).toMatchObject({
        ok: true,
        answer: { opened: { writable: true } },
      })
    },
  )
})

test('the widest page is drawn as fine as the limit of pixels lets it, and no finer', async () => {
  const folder = await desk.newJob()
  const before = await folderSnapshot(folder)
  const upload = await desk.bench.receiveScan('widest.pdf', inChunks(widestPage()))
  const look = await desk.bench.ask('look-into', { upload })
  const [page] = look.ok ? (look.answer as ScanLook).looked : []
  const { width = 0, height = 0 } = page ?? {}
  expect(width * height).toBeGreaterThan(0.9 * LIMITS.pixels)
  expect(width * height).toBeLessThanOrEqual(LIMITS.pixels)
  const reply = await desk.bench.ask('add-sheets', { upload, by: 'AR', pages: [{ page: 1, drawnAt: 400 }] })
  expect(reply).toMatchObject({ ok: false, sentence: expect.stringMatching(/widest\.pdf.* pixels.*\.$/) })
  expect(await folderSnapshot(folder)).toEqual(before)
})
