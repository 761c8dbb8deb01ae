import { mkdir, readdir, readFile, symlink, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { LIMITS } from '../../../src/contract/limits.ts'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import { relinkSheet } from '../../../src/main/services/job-folder/relink-sheet.ts'
import { addScan } from '../../../src/main/services/scans/intake/add-scan.ts'
import { hashFile } from '../../../src/main/services/scans/kept/hash-file.ts'
import { confineScanName, resolveScan } from '../../../src/main/services/scans/kept/scan-path.ts'
import { verifyScans } from '../../../src/main/services/scans/kept/verify-scans.ts'
import { mustDecode } from '../../../src/main/services/scans/raster/must-decode.ts'
import { readPage } from '../../../src/main/services/scans/reader/read-scan.ts'
import { ServiceError } from '../../../src/main/services/service-error.ts'
import { inWords } from '../../../src/main/services/words/services-words.ts'
import { folderSnapshot } from '../fixtures/folder-snapshot.ts'
import { point } from '../fixtures/picked-point.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { drawScan, workshopJob } from '../fixtures/workshop-job.ts'

test('the SHA-256 of a file is that of FIPS 180-4, example "abc"', async () => {
  const path = join(await temporaryFolder(), 'abc')
  await writeFile(path, 'abc')
  // NIST, Cryptographic Standards and Guidelines, example values, SHA-256, one-block message; from memory.
  expect(await hashFile(path)).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
})

const readFirst = (path: string) => readPage({ path, called: path }, 1, undefined, { limits: LIMITS })

describe('what a scan says of itself', () => {
  const blank = { create: { width: 40, height: 30, channels: 3 as const, background: '#ddd' } }

  test.each(['png', 'jpeg', 'tiff', 'webp'] as const)('is read from %s: pixels and pages', async (format) => {
    const path = join(await temporaryFolder(), 'scan')
    await sharp(blank).withMetadata({ density: 600 }).toFormat(format).toFile(path)
    const { facts, ...file } = await readFirst(path)
    expect(file).toMatchObject({ format, pages: 1 })
    expect(facts).toMatchObject({ made: 'scanned', width: 40, height: 30 })
    if (format !== 'webp') expect(facts.dpi).toBeCloseTo(600, 2)
  })

  test.each(['png', 'jpeg', 'tiff', 'webp'] as const)(
    'of %s is not enough when the picture is cut short',
    async (format) => {
      const folder = await temporaryFolder()
      const noise = {
        width: 300,
        height: 300,
        channels: 3 as const,
        noise: { type: 'gaussian' as const, mean: 128, sigma: 40 },
      }
      const whole = await sharp({ create: { ...noise, background: '#888' } })
        .toFormat(format)
        .toBuffer()
      const path = join(folder, `scan.${format}`)
      await writeFile(path, whole)
      await mustDecode(path)
      for (const part of [0.9, 0.5]) {
        await writeFile(path, whole.subarray(0, Math.floor(whole.length * part)))
        await expect(readFirst(path)).rejects.toThrow(ServiceError)
        await expect(addScan(folder, path)).rejects.toThrow(path)
      }
    },
  )

  test('gives pixels as they are stored, and reports that a camera wants them turned', async () => {
    const path = join(await temporaryFolder(), 'photo.jpg')
    await sharp(blank).withMetadata({ orientation: 6 }).jpeg().toFile(path)
    expect((await readFirst(path)).facts).toMatchObject({ width: 40, height: 30, orientation: 6 })
  })
})

describe('a scan that is added', () => {
  test('is kept byte for byte, and never over a different file of its name', async () => {
    const folder = await temporaryFolder()
    const other = await temporaryFolder()
    const first = await drawScan(join(folder, 'plan.v1.png'), 10)
    const second = await drawScan(join(other, 'plan.v1.png'), 20)
    const job = join(folder, 'job')
    expect((await addScan(job, first)).scan.file).toBe('plan.v1.png')
    expect((await addScan(job, second)).scan.file).toBe('plan.v1-2.png')
    expect((await addScan(job, first)).scan.file).toBe('plan.v1.png')
    expect((await addScan(job, second)).scan.file).toBe('plan.v1-2.png')
    expect((await readdir(join(job, 'scans'))).sort()).toEqual(['plan.v1-2.png', 'plan.v1.png'])
    expect(await readFile(join(job, 'scans', 'plan.v1-2.png'))).toEqual(await readFile(second))
  })

  test('gets a name that every system takes', async () => {
    const folder = await temporaryFolder()
    const path = await drawScan(join(folder, '..sheet 1: "front".png'))
    expect((await addScan(folder, path)).scan.file).toBe('sheet 1- -front-.png')
  })

  test('and is no picture leaves nothing behind', async () => {
    const folder = await temporaryFolder()
    await mkdir(join(folder, 'scans'))
    const path = join(folder, 'notes.png')
    await writeFile(path, 'not a picture')
    await expect(addScan(folder, path)).rejects.toThrow(`${path} is not a picture`)
    expect(await readdir(join(folder, 'scans'))).toEqual([])
  })
})

describe('the name of a scan', () => {
  test.each([
    '../x.png',
    '/etc/x.png',
    'a/../../x.png',
    'a\\..\\x.png',
    'C:x.png',
    '',
    '.',
    'a//b',
    'a\0b',
    '..',
  ])('%j leads out of scans/ and is refused', (name) => {
    expect(() => confineScanName(name, { id: 'S1' })).toThrow('sheet S1')
  })

  test.each(['x.png', 'box 3/x.png', '..x.png', 'Ø 7½.tif'])('%j stays inside', (name) => {
    expect(confineScanName(name, { id: 'S1' })).toBe(name)
  })

  test('a link inside scans/ is followed, one that leads out is refused', async () => {
    const folder = await temporaryFolder()
    await mkdir(join(folder, 'scans'))
    await drawScan(join(folder, 'scans', 'plan.png'))
    await drawScan(join(folder, 'secret.png'))
    await symlink('plan.png', join(folder, 'scans', 'alias.png'))
    await symlink('../secret.png', join(folder, 'scans', 'out.png'))
    expect(await resolveScan(folder, 'alias.png', { id: 'S1' })).toBe(join(folder, 'scans', 'plan.png'))
    await expect(resolveScan(folder, 'out.png', { id: 'S1' })).rejects.toThrow('leads out of')
  })
})

describe('a scan that is no longer the file picked on', () => {
  const pick = (id: string) => ({ do: 'add-mark' as const, item: point(id, 5, 6) })

  test('is told from one that is missing and one that is right', async () => {
    const { folder, job, scan } = await workshopJob()
    expect(await verifyScans(job, folder)).toEqual([
      { sheet: 'S1', file: 'drum.png', state: 'ok', problem: null },
    ])
    await drawScan(scan, 90)
    const [changed] = await verifyScans(job, folder)
    expect(changed?.state).toBe('changed')
    expect(changed?.problem && inWords(changed.problem)).toMatch(
      /^The scan drum\.png of sheet S1 is no longer the file that was picked on .+: put the old file back and open the job again, or bring this one in as a new sheet; .+"scantling accept-scan /,
    )
    const elsewhere = job.sheets.map((sheet) => ({ ...sheet, scan: { ...sheet.scan, file: 'rim.png' } }))
    const [missing] = await verifyScans({ ...job, sheets: elsewhere }, folder)
    expect(missing).toMatchObject({ state: 'missing', file: 'rim.png' })
  })

  test('opens with a warning and takes no picks, but other edits, until the sheet is re-linked', async () => {
    const { folder, scan, job } = await workshopJob()
    await drawScan(scan, 90)
    const session = await openJob(folder, { mode: 'write' })
    expect(session.notices).toHaveLength(1)
    expect(session.scans[0]?.state).toBe('changed')
    const refusal =
      /^Nothing is picked on sheet S1 for now, because the scan drum\.png of sheet S1 is no longer/
    await expect(session.edit(pick('M5'), 'AR')).rejects.toThrow(refusal)
    await expect(session.edit({ do: 'repeat-pick', mark: 'M1', pixel: pixel(1, 2) }, 'AR')).rejects.toThrow(
      refusal,
    )
    await expect(
      session.edit({ do: 'several', name: 'picks', edits: [pick('M5'), pick('M6')] }, 'AR'),
    ).rejects.toThrow(refusal)
    await expect(session.edit({ do: 'remove-reference', view: 'V1', id: 'R2' }, 'AR')).rejects.toThrow(
      refusal,
    )
    await session.edit({ do: 'adopt', dimension: 'drum_length', adopt: 'scaled' }, 'AR')
    await session.edit({ do: 'change-sheet', id: 'S1', set: { title: 'Drum, front' } }, 'AR')

    expect((await relinkSheet(session, 'S1', 'AR')).n).toBe(3)
    expect(session.scans[0]?.state).toBe('ok')
    expect(session.job.sheets[0]?.scan.sha256).toBe(await hashFile(scan))
    await session.edit(pick('M5'), 'AR')

    await session.undo('AR')
    await session.undo('AR')
    expect(session.job.sheets[0]?.scan.sha256).toBe(job.sheets[0]?.scan.sha256)
    expect(session.scans[0]?.state).toBe('changed')
    await expect(session.edit(pick('M5'), 'AR')).rejects.toThrow(refusal)
    await session.close()
  })

  test('a sheet takes no scan that is not there, nor to one whose SHA-256 differs', async () => {
    const { folder, job } = await workshopJob()
    const session = await openJob(folder, { mode: 'write' })
    const before = await folderSnapshot(folder)
    const scan = job.sheets[0]?.scan
    if (scan === undefined) throw new Error('no sheet')
    const link = (change: object) =>
      session.edit({ do: 'change-sheet', id: 'S1', set: { scan: { ...scan, ...change } } }, 'AR')
    await expect(link({ file: 'rim.png' })).rejects.toThrow('rim.png')
    await expect(link({ sha256: 'f'.repeat(64) })).rejects.toThrow('SHA-256')
    await expect(link({ file: '../drum.png' })).rejects.toThrow('scan')
    await expect(relinkSheet(session, 'S1', 'AR', 'rim.png')).rejects.toThrow('rim.png')
    await expect(relinkSheet(session, 'S9', 'AR')).rejects.toThrow('no sheet S9')
    expect(await folderSnapshot(folder)).toEqual(before)
    await session.close()
  })
})
