import { readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { pageThumbnailAddress } from '../../../src/contract/picture-addresses.ts'
import { aWorkbench, type BenchUnderTest } from '../fixtures/a-workbench.ts'
import { folderSnapshot } from '../fixtures/folder-snapshot.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'
import { ALL_KINDS } from '../scans/kinds/all-kinds.ts'

/** A file of the set of all kinds. */
async function aFile(file: string): Promise<string> {
  const kind = ALL_KINDS.find((one) => one.file === file)
  if (kind === undefined) throw new Error(`${file} is not among the kinds`)
  const path = join(await temporaryFolder(), file)
  await writeFile(path, (await kind.make()).bytes)
  return path
}

async function aBench(): Promise<BenchUnderTest & { folder: string }> {
  const under = await aWorkbench()
  const { folder } = await workshopJob()
  await under.bench.openFolder(folder)
  return { ...under, folder }
}

const THREE = 'three pages II.tif'
const LOCKED = 'locked by AES of 256 bits.pdf'
const PASSWORD = 'Valve gear 7'

describe('pages of one scan', () => {
  test('become sheets by one edit, named in words, and one file in the job', async () => {
    const { ask, handOver, folder } = await aBench()
    const path = await aFile(THREE)
    const upload = await handOver(path, THREE)
    expect(await ask('look-into', { upload })).toMatchObject({
      upload,
      name: THREE,
      format: 'tiff',
      pages: 3,
    })
    const added = await ask('add-sheets', { upload, pages: [{ page: 1 }, { page: 3, dpi: 250 }], by: 'AR' })
    expect(added).toMatchObject({ name: 'add 2 sheets, sheet 2 to sheet 3' })
    const { opened } = await ask('look', {})
    const [first, second] = added.sheets
    expect(opened?.job.sheets.slice(1)).toMatchObject([
      {
        id: first,
        number: 2,
        title: 'three pages II, page 1',
        scan: { page: 1, width: 97, height: 61, dpi: 300 },
      },
      {
        id: second,
        number: 3,
        title: 'three pages II, page 3',
        scan: { page: 3, width: 113, height: 41, dpi: 250 },
      },
    ])
    expect(await readdir(join(folder, 'scans'))).toEqual(['drum.png', THREE])
    expect((await readFile(join(folder, 'scans', THREE))).equals(await readFile(path))).toBe(true)
    await ask('undo', { by: 'AR' })
    expect((await ask('look', {})).opened?.job.sheets).toHaveLength(1)
  })

  test('of which one is not there are not taken at all, and can be chosen anew', async () => {
    const { ask, refused, handOver, folder } = await aBench()
    const upload = await handOver(await aFile(THREE), THREE)
    await ask('look-into', { upload })
    const before = await folderSnapshot(folder)
    expect(await refused('add-sheets', { upload, pages: [{ page: 2 }, { page: 4 }], by: 'AR' })).toBe(
      `The scan ${THREE} has 3 pages, and no page 4.`,
    )
    expect(await folderSnapshot(folder)).toEqual(before)
    expect((await ask('add-sheets', { upload, pages: [{ page: 2 }], by: 'AR' })).name).toBe(
      'add sheet “three pages II, page 2”',
    )
    expect(await refused('look-into', { upload })).toContain('hand it over again')
  })

  test('of which none was chosen give the first, and the person is told', async () => {
    const { ask, handOver } = await aWorkbench()
    const uploads = [{ upload: await handOver(await aFile(THREE), THREE) }]
    const { opened } = await ask('new-job', { title: 'Pump', unit: 'in', by: 'A. Rivet', uploads })
    expect(opened?.job.sheets).toHaveLength(1)
    expect(opened?.notices).toEqual([`The scan ${THREE} has 3 pages, and only page 1 has a sheet.`])
  })

  test('are told of from the one on that is asked for', async () => {
    const { ask, handOver } = await aBench()
    const upload = await handOver(await aFile(THREE), THREE)
    const { looked } = await ask('look-into', { upload, from: 3 })
    expect(looked).toMatchObject([{ page: 3, width: 113, height: 41 }])
  })

  test('that are drawn have as many pixels as a person likes', async () => {
    const { ask, handOver } = await aBench()
    const upload = await handOver(await aFile('drawn lines.pdf'), 'drawn lines.pdf')
    const { edits } = await ask('add-sheets', { upload, pages: [{ page: 1, drawnAt: 600 }], by: 'AR' })
    // The paper is 180 by 117 points, so 2.5 by 1.625 inches.
    expect(edits[0]?.edit).toMatchObject({
      item: { title: 'drawn lines', scan: { width: 1500, height: 975, drawnAt: 600, dpi: 600 } },
    })
  })
})

describe('the small picture of a page', () => {
  test('is at most 240 pixels long, and shows the page turned as its file asks', async () => {
    const { bench, handOver } = await aBench()
    const turned = join(await temporaryFolder(), 'photo.jpg')
    await sharp({ create: { width: 600, height: 300, channels: 3, background: '#ddd' } })
      .withMetadata({ orientation: 6 })
      .toFile(turned)
    const upload = await handOver(turned, 'photo.jpg')
    const picture = await bench.picture(pageThumbnailAddress({ upload, page: 1 }))
    expect(picture?.type).toBe('image/jpeg')
    const { width, height } = await sharp(Buffer.from(picture?.bytes ?? [])).metadata()
    expect([width, height]).toEqual([120, 240])
    expect(await bench.picture(pageThumbnailAddress({ upload, page: 2 }))).toBeNull()
    expect(await bench.picture(pageThumbnailAddress({ upload: 'nobody', page: 1 }))).toBeNull()
  })

  test('that nobody waits for any more is not begun, and is made when it is asked for again', async () => {
    const { bench, handOver } = await aBench()
    const upload = await handOver(await aFile(THREE), THREE)
    const at = (page: number) => pageThumbnailAddress({ upload, page })
    const [one, other] = [new AbortController(), new AbortController()]
    const begun = bench.picture(at(1), one.signal)
    const dropped = bench.picture(at(2), one.signal)
    const both = [bench.picture(at(3), one.signal), bench.picture(at(3), other.signal)]
    one.abort()
    expect(await begun).not.toBeNull()
    expect(await dropped).toBeNull()
    expect(await both[1]).not.toBeNull()
    expect(await bench.picture(at(2), other.signal)).not.toBeNull()
  })

  test('is there of a drawn page, and not any more when the scan was given back', async () => {
    const { bench, ask, handOver, places } = await aBench()
    const upload = await handOver(await aFile('drawn lines.pdf'), 'drawn lines.pdf')
    const address = pageThumbnailAddress({ upload, page: 1 })
    const { data, info } = await sharp(Buffer.from((await bench.picture(address))?.bytes ?? []))
      .greyscale()
      .raw()
      .toBuffer({ resolveWithObject: true })
    expect([info.width, info.height]).toEqual([240, 156])
    expect(Math.min(...data)).toBeLessThan(128)
    await ask('drop-upload', { upload })
    expect(await bench.picture(address)).toBeNull()
    const left = Object.keys(await folderSnapshot(places.temporary)).filter((name) => name.includes('drawn'))
    expect(left).toEqual([])
  })
})

describe('a locked scan', () => {
  test('opens with its password, which is written nowhere', async () => {
    const { ask, refused, handOver, folder, places, log } = await aBench()
    const upload = await handOver(await aFile(LOCKED), LOCKED)
    expect(await ask('look-into', { upload })).toMatchObject({ locked: true, looked: [] })
    expect(await refused('look-into', { upload, password: 'brass' })).toContain('does not open')
    expect(await ask('look-into', { upload, password: PASSWORD })).toMatchObject({ locked: false, pages: 1 })
    const [sheet = ''] = (await ask('add-sheets', { upload, by: 'AR' })).sheets
    const files = { ...(await folderSnapshot(folder)), ...(await folderSnapshot(places.settings)) }
    expect(JSON.stringify(files)).not.toContain(PASSWORD)
    expect(log.join('\n')).not.toMatch(/Valve gear|brass/)
    expect((await ask('show-sheet', { sheet })).progress.locked).toBeUndefined()
  })

  test('of a job that was opened anew waits for its password, and is shown once it is unlocked', async () => {
    const first = await aBench()
    const upload = await first.handOver(await aFile(LOCKED), LOCKED)
    const [sheet = ''] = (await first.ask('add-sheets', { upload, password: PASSWORD, by: 'AR' })).sheets
    await first.bench.close()
    const { bench, ask, refused, events } = await aWorkbench()
    await bench.openFolder(first.folder)
    await ask('show-sheet', { sheet })
    const locked = () => events.some((event) => event.kind === 'pictures' && event.progress.locked === true)
    await expect.poll(locked, { timeout: 30_000 }).toBe(true)
    expect(await refused('unlock', { sheet, password: 'brass' })).toContain('does not open')
    await ask('unlock', { sheet, password: PASSWORD })
    const state = () => {
      const last = events.filter((event) => event.kind === 'pictures').at(-1)
      return last?.kind === 'pictures' ? last.progress.locked === true : undefined
    }
    await expect.poll(state, { timeout: 30_000 }).toBe(false)
  })
})
