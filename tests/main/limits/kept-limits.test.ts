import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { KeptLimits, LIMITS, limitsFile } from '../../../src/main/services/limits/kept-limits.ts'
import { inWords } from '../../../src/main/services/words/services-words.ts'
import { aWorkbench } from '../fixtures/a-workbench.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

describe('the limits of what is taken in', () => {
  test('are the usual ones until they are set, and then stay as set', async () => {
    const settings = join(await temporaryFolder(), 'settings')
    const kept = new KeptLimits(settings)
    expect(await kept.read()).toEqual(LIMITS)
    await kept.set({ ...LIMITS, pixels: 5_000_000 })
    expect(kept.now.pixels).toBe(5_000_000)
    expect(await new KeptLimits(settings).read()).toEqual({ ...LIMITS, pixels: 5_000_000 })
  })

  test.each([
    [
      'not JSON',
      '{ pixels',
      /^The limits in .+limits\.json can't be read because they are not JSON, so the defaults/,
    ],
    [
      'out of bounds',
      JSON.stringify({ ...LIMITS, seconds: 0 }),
      /are not sound \("seconds": .+\), so the defaults hold/,
    ],
    ['of other names', '{"pixles":1}', /are not sound/],
  ])(
    'in a file that is %s are told of and not used, and the file is left as it is',
    async (_, text, sentence) => {
      const settings = await temporaryFolder()
      await writeFile(limitsFile(settings), text)
      const kept = new KeptLimits(settings)
      expect(await kept.read()).toEqual(LIMITS)
      expect(kept.trouble && inWords(kept.trouble)).toMatch(sentence)
      expect(await readFile(limitsFile(settings), 'utf8')).toBe(text)
      await kept.set(LIMITS)
      expect(kept.trouble).toBeUndefined()
    },
  )

  test('that are out of bounds are refused, and the old ones hold', async () => {
    const kept = new KeptLimits(await temporaryFolder())
    await expect(kept.set({ ...LIMITS, pages: 0 })).rejects.toThrow(
      /^The limits were not set: "pages": .+\.$/,
    )
    expect(kept.now).toEqual(LIMITS)
  })

  test('are told to a person who opens a job while they are broken', async () => {
    const { bench, places } = await aWorkbench()
    await mkdir(places.settings, { recursive: true })
    await writeFile(limitsFile(places.settings), 'x')
    const { opened } = await bench.openFolder((await workshopJob()).folder)
    expect(opened?.notices.join(' ')).toContain("can't be read because they are not JSON")
  })

  test('keep a scan out that has more pixels, and say how to raise them; then it is taken in', async () => {
    const { bench, ask, refused, handOver } = await aWorkbench()
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    await ask('set-limits', { limits: { ...LIMITS, pixels: 1_000_000 } })
    const large = join(await temporaryFolder(), 'large.png')
    await sharp({ create: { width: 1001, height: 1000, channels: 3, background: '#ddd' } }).toFile(large)
    expect(await refused('add-sheets', { upload: await handOver(large, 'large.png'), by: 'AR' })).toBe(
      'The scan large.png has 1,001 × 1,000 pixels, more than the 1,000,000 that are taken in: scan it with fewer dots to the ' +
        'inch, or set the limit "pixels" higher under "Size limits", at the Sheet station, or with ' +
        '"scantling limits --set pixels=NUMBER".',
    )
    await ask('set-limits', { limits: LIMITS })
    expect((await ask('add-sheets', { upload: await handOver(large), by: 'AR' })).sheets).toHaveLength(1)
  })

  test('keep a scan out that has more bytes', async () => {
    const { ask, bench } = await aWorkbench()
    await ask('set-limits', { limits: { ...LIMITS, bytes: 1_000_000 } })
    async function* bytes(): AsyncGenerator<Uint8Array> {
      yield new Uint8Array(1_000_001)
    }
    await expect(bench.receiveScan('plan.tif', bytes())).rejects.toThrow(
      /^The scan "plan\.tif" is larger than 1,000,000 bytes, .+"bytes" higher/,
    )
  })
})
