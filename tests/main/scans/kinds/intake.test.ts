import { createHash } from 'node:crypto'
import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { LIMITS } from '../../../../src/contract/limits.ts'
import { pageFile } from '../../../../src/main/services/scans/kept/page-file.ts'
import { aWorkbench, type BenchUnderTest } from '../../fixtures/a-workbench.ts'
import { temporaryFolder } from '../../fixtures/temporary-folder.ts'
import { workshopJob } from '../../fixtures/workshop-job.ts'
import { ALL_KINDS } from './all-kinds.ts'
import { middleOfInk } from './ink-along.ts'
import { readPicture } from './read-picture.ts'
import type { MadeScan, PageTruth, ScanKind } from './scan-kind.ts'

const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex')

interface Desk extends BenchUnderTest, MadeScan {
  /** The open job. */
  folder: string
  upload: string
}

/** A scan of a kind, handed over to a bench that a job is open on. */
async function handedOver(kind: ScanKind): Promise<Desk> {
  const made = await kind.make()
  const path = join(await temporaryFolder(), kind.file)
  await writeFile(path, made.bytes)
  const under = await aWorkbench()
  const { folder } = await workshopJob()
  await under.bench.openFolder(folder)
  return { ...under, ...made, folder, upload: await under.handOver(path, kind.file) }
}

const keyOf = ({ password }: ScanKind): { password?: string } => (password === undefined ? {} : { password })

/** What is said of a page, as far as the file says it. */
const sizeOf = ({ width, height, orientation }: PageTruth) => ({
  width,
  height,
  ...(orientation === undefined ? {} : { orientation }),
})

function mustHaveDpi(said: { dpi?: number }, { dpi }: PageTruth): void {
  if (dpi === undefined) expect(said).not.toHaveProperty('dpi')
  else expect(Math.abs((said.dpi ?? Number.NaN) - dpi)).toBeLessThan(0.01)
}

async function mustTellOfItsPages({ ask, upload, pages }: Desk, kind: ScanKind): Promise<void> {
  const look = await ask('look-into', { upload, ...keyOf(kind) })
  expect(look).toMatchObject({ name: kind.file, format: kind.format, locked: false, pages: pages.length })
  expect(look.looked).toMatchObject(
    pages.map((page, i) => ({ page: i + 1, made: page.made, ...sizeOf(page) })),
  )
  for (const [i, said] of look.looked.entries()) {
    const page = pages[i]
    if (page === undefined) throw new Error('there are more pages than were made')
    expect(said).not.toHaveProperty('fault')
    expect(said.orientation).toBe(page.orientation)
    if (page.made === 'scanned') mustHaveDpi(said, page)
    else expect(said.drawnAt).toBe(page.dpi)
  }
}

async function mustBecomeSheets({ ask, upload, bytes, pages, folder }: Desk, kind: ScanKind): Promise<void> {
  const wanted = pages.map((_, i) => ({ page: i + 1 }))
  const added = await ask('add-sheets', { upload, pages: wanted, by: 'AR', ...keyOf(kind) })
  const { opened } = await ask('look', {})
  const sheets = opened?.job.sheets.slice(1) ?? []
  expect(sheets).toHaveLength(pages.length)
  expect(added.sheets).toEqual(sheets.map(({ id }) => id))
  const drawn = await temporaryFolder()
  for (const [i, { scan }] of sheets.entries()) {
    const page = pages[i]
    if (page === undefined) throw new Error('there are more sheets than pages')
    expect(scan).toMatchObject({ page: i + 1, sha256: sha256(bytes), ...sizeOf(page) })
    expect(scan.orientation).toBe(page.orientation)
    expect(scan.drawnAt).toBe(page.made === 'drawn' ? page.dpi : undefined)
    mustHaveDpi(scan, page)
    const kept = join(folder, 'scans', scan.file)
    expect((await readFile(kept)).equals(bytes)).toBe(true)
    const place = join(drawn, String(i))
    await mkdir(place)
    const file = await pageFile(kept, scan, {
      folder: place,
      limits: LIMITS,
      signal: new AbortController().signal,
      ...keyOf(kind),
    })
    const seen = await readPicture(file.path, file.page)
    if (page.picture !== undefined) mustMatch(seen, page)
    expect([seen.width, seen.height]).toEqual([page.width, page.height])
    for (const { axis, at, along } of page.lines ?? []) {
      expect(Math.abs(middleOfInk(seen, axis, at, along) - at)).toBeLessThan(0.1)
    }
  }
  await ask('undo', { by: 'AR' })
  expect((await ask('look', {})).opened?.job.sheets).toHaveLength(1)
}

function mustMatch(seen: Awaited<ReturnType<typeof readPicture>>, { picture, within = 0 }: PageTruth): void {
  if (picture === undefined) return
  const { width, height, samples, bits } = seen
  expect({ width, height, samples, bits }).toEqual({
    width: picture.width,
    height: picture.height,
    samples: picture.samples,
    bits: picture.bits,
  })
  let worst = 0
  seen.values.forEach((value, i) => {
    worst = Math.max(worst, Math.abs(value - (picture.values[i] ?? Number.NaN)))
  })
  expect(worst).toBeLessThanOrEqual(within)
}

describe('a scan of each kind', () => {
  test.each(ALL_KINDS)('tells of its pages, which become sheets with its pixels: $name', async (kind) => {
    const desk = await handedOver(kind)
    await mustTellOfItsPages(desk, kind)
    await mustBecomeSheets(desk, kind)
    await desk.bench.close()
  })
})

describe('a locked scan', () => {
  test.each(ALL_KINDS.filter(({ password }) => password !== undefined))(
    'waits for its password, and says when it is the wrong one: $name',
    async (kind) => {
      const { ask, refused, upload } = await handedOver(kind)
      const look = await ask('look-into', { upload })
      expect(look).toMatchObject({ name: kind.file, format: 'pdf', locked: true, looked: [] })
      const sentence = await refused('look-into', { upload, password: 'Piston rod' })
      expect(sentence).toContain(kind.file)
      expect(sentence).toMatch(/password.*\.$/)
      expect(sentence).not.toContain('Piston rod')
      const again = await refused('add-sheets', { upload, by: 'AR' })
      expect(again).toMatch(/password.*\.$/)
    },
  )
})
