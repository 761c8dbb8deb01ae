import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { LIMITS } from '../../../src/contract/limits.ts'
import { givenScans } from '../../../src/main/cli/arguments/given-scans.ts'
import { aWorkbench } from '../fixtures/a-workbench.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'
import { greyDrawing } from './kinds/drawing.ts'
import { partOf } from './kinds/picture.ts'
import { type TiffPage, tiffFile } from './kinds/tiff/tiff-file.ts'

const grey = greyDrawing()
const page = (more: Partial<TiffPage> = {}): TiffPage => ({
  picture: grey,
  photometric: 'black is zero',
  ...more,
})
const small = partOf(grey, 0, 0, 40, 30)
const reduced = page({ picture: small, subfile: 1 })
const mask = page({ picture: small, subfile: 4 })

const NAME = 'plan.tif'

async function file(...pages: TiffPage[]): Promise<string> {
  const path = join(await temporaryFolder(), NAME)
  await writeFile(path, tiffFile(pages))
  return path
}

/** A file handed over to a bench that a job is open on. */
async function handedOver(...pages: TiffPage[]) {
  const under = await aWorkbench()
  const { folder } = await workshopJob()
  await under.bench.openFolder(folder)
  const upload = await under.handOver(await file(...pages), NAME)
  const sheets = async () => (await under.ask('look', {})).opened?.job.sheets.slice(1) ?? []
  return { ...under, upload, sheets }
}

describe('a TIFF file that holds reduced copies of its pages, or masks', () => {
  test('offers only what are pages of their own, by their numbers in the file', async () => {
    const { ask, upload } = await handedOver(page(), reduced, mask, page({ subfile: 2 }))
    const look = await ask('look-into', { upload })
    expect(look).toMatchObject({ pages: 4, leftOut: [2, 3] })
    expect(look.looked.map((one) => [one.page, one.width])).toEqual([
      [1, grey.width],
      [4, grey.width],
    ])
    expect((await ask('look-into', { upload, from: 2 })).looked.map((one) => one.page)).toEqual([4])
  })

  test('gives its first page of its own a sheet, wherever that stands, and says of how many', async () => {
    const { ask, upload, sheets } = await handedOver(reduced, page(), page())
    const { remarks } = await ask('add-sheets', { upload, by: 'AR' })
    expect((await sheets()).map(({ scan, title }) => [scan.page, scan.width, title])).toEqual([
      [2, grey.width, 'plan, page 2'],
    ])
    expect(remarks).toContain('The scan plan.tif has 2 pages, and only page 2 has a sheet.')
  })

  test('is a scan of one page where but one is of its own', async () => {
    const { ask, upload, sheets } = await handedOver(page(), reduced, page({ picture: small, oldSubfile: 2 }))
    expect(await ask('look-into', { upload })).toMatchObject({ pages: 3, leftOut: [2, 3] })
    const { remarks } = await ask('add-sheets', { upload, by: 'AR' })
    expect(remarks).toEqual([])
    expect((await sheets()).map(({ title }) => title)).toEqual(['plan'])
  })

  test.each([
    [2, 'reduced copy'],
    [3, 'mask'],
  ])('gives up page %i when it is named, and says that it is a %s', async (number, what) => {
    const { ask, upload, sheets } = await handedOver(page(), reduced, mask)
    const { remarks } = await ask('add-sheets', { upload, pages: [{ page: number }], by: 'AR' })
    expect(remarks).toEqual([
      `Page ${number} of plan.tif is, as the file says, a ${what} of another page: bring that one in, unless this one ` +
        'is meant.',
    ])
    expect((await sheets()).map(({ scan }) => [scan.page, scan.width])).toEqual([[number, small.width]])
  })

  test('that says so of all its pages has them all', async () => {
    const { ask, upload } = await handedOver(reduced, reduced)
    const look = await ask('look-into', { upload })
    expect(look).not.toHaveProperty('leftOut')
    expect(look.looked).toHaveLength(2)
  })

  test('gives every page of its own a sheet when all are wanted on the command line', async () => {
    const [scan] = await givenScans([await file(page(), reduced, page())], { allPages: true }, LIMITS)
    expect(scan?.pages?.map((one) => one.page)).toEqual([1, 3])
  })
})
