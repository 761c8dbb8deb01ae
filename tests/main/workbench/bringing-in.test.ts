import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { LIMITS } from '../../../src/contract/limits.ts'
import { aWorkbench, inChunks } from '../fixtures/a-workbench.ts'
import { folderSnapshot } from '../fixtures/folder-snapshot.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { drawScan, workshopJob } from '../fixtures/workshop-job.ts'

const A_PERSON = { unit: 'in', by: 'A. Rivet' } as const

/** What lies among the temporary files, uploads and all. */
const leftIn = async (folder: string): Promise<string[]> =>
  Object.keys(await folderSnapshot(folder)).filter((name) => !/^bench-[^/]*\/$/.test(name))

describe('a new job', () => {
  test('is made on the shelf of the scans that were handed over, byte for byte, and opened', async () => {
    const { ask, handOver, places, events } = await aWorkbench({
      now: () => new Date('2026-03-01T14:02:00Z'),
    })
    const desk = await temporaryFolder()
    const front = await drawScan(join(desk, 'front view.png'))
    const rear = await drawScan(join(desk, 'rear view.tif'), 90)
    const uploads = [{ upload: await handOver(front) }, { upload: await handOver(rear) }]
    const state = await ask('new-job', { title: 'Feed pump: No. 2', ...A_PERSON, uploads })
    const folder = join(places.shelf, 'Feed pump- No. 2')
    expect(state.opened).toMatchObject({
      writable: true,
      sample: false,
      notices: [],
      job: {
        title: 'Feed pump: No. 2',
        unit: 'in',
        people: [{ id: 'P1', name: 'A. Rivet', by: 'P1', at: '2026-03-01T14:02:00.000Z' }],
        sheets: [
          {
            id: 'S1',
            by: 'P1',
            at: '2026-03-01T14:02:00.000Z',
            title: 'front view',
            scan: { file: 'front view.png', width: 400, height: 300, dpi: 300 },
          },
          { id: 'S2', title: 'rear view' },
        ],
      },
    })
    expect(await readFile(join(folder, 'scans', 'front view.png'))).toEqual(await readFile(front))
    expect(await readFile(join(folder, 'scans', 'rear view.tif'))).toEqual(await readFile(rear))
    expect(state.recent[0]?.title).toBe('Feed pump: No. 2')
    expect(events.at(-1)).toEqual({ kind: 'bench', state })
    expect(await leftIn(places.temporary)).toEqual([])
  })

  test('is refused where its title is taken, by a folder or a file, which stay; another title takes the same scan', async () => {
    const { ask, refused, handOver, places } = await aWorkbench()
    await mkdir(join(places.shelf, 'Pump'), { recursive: true })
    await writeFile(join(places.shelf, 'Pump 2'), "a person's own file")
    const scan = await drawScan(join(await temporaryFolder(), 'pump.png'))
    const uploads = [{ upload: await handOver(scan) }]
    for (const title of ['Pump', 'Pump 2'])
      expect(await refused('new-job', { title, ...A_PERSON, uploads })).toBe(
        `There is a folder "${title}" in ${places.shelf} already: call this job something else, or open that one.`,
      )
    await ask('new-job', { title: 'Pump 3', ...A_PERSON, uploads })
    expect((await readdir(places.shelf)).sort()).toEqual(['Pump', 'Pump 2', 'Pump 3'])
    expect(await readdir(join(places.shelf, 'Pump'))).toEqual([])
  })

  test('tells of a scan given twice and of one that asks to be shown turned', async () => {
    const { ask, handOver } = await aWorkbench()
    const desk = await temporaryFolder()
    const turned = join(desk, 'photo.jpg')
    const create = { width: 40, height: 30, channels: 3 as const, background: '#ddd' }
    await sharp({ create }).withMetadata({ orientation: 6 }).toFile(turned)
    const uploads = [{ upload: await handOver(turned) }, { upload: await handOver(turned, 'copy.jpg') }]
    const { opened } = await ask('new-job', { title: 'Pump', ...A_PERSON, uploads })
    expect(opened?.notices).toEqual([
      'The scan photo.jpg asks to be shown turned, and its pixels are used as they are stored.',
      '"copy.jpg" is a scan that was given before it, and has no second sheet.',
    ])
    expect(opened?.job.sheets).toHaveLength(1)
    expect(opened?.job.sheets[0]?.scan).toMatchObject({ width: 40, height: 30 })
  })

  test('of a damaged scan is not made: no folder is left, the other job stays open, and it can be asked again', async () => {
    const { bench, ask, refused, handOver, places } = await aWorkbench()
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    const desk = await temporaryFolder()
    const whole = await drawScan(join(desk, 'whole.png'))
    const damaged = join(desk, 'damaged.png')
    await writeFile(damaged, (await readFile(whole)).subarray(0, 700))
    const [good, bad] = [{ upload: await handOver(whole) }, { upload: await handOver(damaged) }]
    const sentence = await refused('new-job', { title: 'Pump', ...A_PERSON, uploads: [good, bad] })
    expect(sentence).toContain('damaged.png')
    expect(sentence).not.toContain(places.temporary)
    expect(await readdir(places.shelf)).toEqual([])
    expect((await ask('look', {})).opened).toMatchObject({ place: folder, writable: true })
    expect((await ask('new-job', { title: 'Pump', ...A_PERSON, uploads: [good] })).opened?.job.title).toBe(
      'Pump',
    )
  })
})

describe('a sheet that is brought into the open job', () => {
  test('is one more edit, with an id of its own, and is named after its file', async () => {
    const { bench, ask, handOver, events, places } = await aWorkbench()
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    const rim = await drawScan(join(await temporaryFolder(), 'rim.png'), 90)
    const added = await ask('add-sheets', { upload: await handOver(rim), by: 'AR' })
    expect(added).toMatchObject({
      remarks: [],
      name: 'add sheet “rim”',
      undoName: 'add sheet “rim”',
    })
    const [sheet] = added.sheets
    expect(added.scans).toContainEqual({ sheet, state: 'ok', sentence: '' })
    expect(added.edits[0]?.edit).toMatchObject({ do: 'add-sheet', item: { id: sheet, title: 'rim' } })
    expect(await readFile(join(folder, 'scans', 'rim.png'))).toEqual(await readFile(rim))
    expect(events.at(-1)).toMatchObject({ kind: 'committed', committed: { name: 'add sheet “rim”' } })
    await ask('undo', { by: 'AR' })
    await ask('redo', { by: 'AR' })
    expect((await ask('look', {})).opened?.job.sheets.map(({ id }) => id)).toEqual(['S1', sheet])
    expect(await leftIn(places.temporary)).toEqual([])
  })

  test('is told to be a scan that the job has already', async () => {
    const { bench, ask, handOver } = await aWorkbench()
    const { folder, scan } = await workshopJob()
    await bench.openFolder(folder)
    const { remarks } = await ask('add-sheets', { upload: await handOver(scan), by: 'AR' })
    expect(remarks).toEqual(['The scan drum.png is the same as that of sheet S1 (Drum).'])
    expect(await readdir(join(folder, 'scans'))).toEqual(['drum.png'])
  })

  test('each gets its own id when two are brought in at once', async () => {
    const { bench, ask, handOver } = await aWorkbench()
    const { folder, scan } = await workshopJob()
    await bench.openFolder(folder)
    const uploads = [await handOver(scan, 'a.png'), await handOver(scan, 'b.png')]
    const added = await Promise.all(uploads.map((upload) => ask('add-sheets', { upload, by: 'AR' })))
    expect(added.map(({ name }) => name)).toEqual(['add sheet “a”', 'add sheet “b”'])
    expect(new Set(added.flatMap(({ sheets }) => sheets)).size).toBe(2)
  })

  test('of no picture is refused, and leaves no trace in the job or among the temporary files', async () => {
    const { bench, refused, handOver, places, log } = await aWorkbench()
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    const before = await folderSnapshot(folder)
    const letter = join(await temporaryFolder(), 'letter.txt')
    await writeFile(letter, 'Dear sir')
    const upload = await handOver(letter)
    expect(await refused('add-sheets', { upload, by: 'AR' })).toBe(
      'The scan letter.txt is not a picture that can be read: give a PNG, JPEG, TIFF, WebP or PDF file.',
    )
    expect(log).toHaveLength(1)
    expect(await folderSnapshot(folder)).toEqual(before)
    expect(await leftIn(places.temporary)).toEqual([])
    expect(await refused('add-sheets', { upload, by: 'AR' })).toContain('hand it over again')
  })

  test("whose edit can't be kept takes its scan out of the job again", async () => {
    const { bench, refused, handOver } = await aWorkbench()
    const { folder } = await workshopJob()
    await bench.openFolder(folder)
    await rm(join(folder, 'history.ndjson'))
    const rim = await drawScan(join(await temporaryFolder(), 'rim.png'), 90)
    expect(await refused('add-sheets', { upload: await handOver(rim), by: 'AR' })).toContain(
      'was changed, replaced or removed by another program',
    )
    expect(await readdir(join(folder, 'scans'))).toEqual(['drum.png'])
  })
})

describe('a scan that is handed over', () => {
  test.each([
    ['nothing', new Uint8Array(0), 'The scan "plan.png" is empty: scan or copy it again.'],
    [
      'more than is taken in',
      new Uint8Array(1_000_001),
      /^The scan "plan\.png" is larger than 1,000,000 bytes, the most/,
    ],
  ])('with %s in it is refused, and nothing of it is kept', async (_, bytes, sentence) => {
    const { bench, places, ask } = await aWorkbench()
    await ask('set-limits', { limits: { ...LIMITS, bytes: 1_000_000 } })
    await expect(bench.receiveScan('plan.png', inChunks(bytes, 100_000))).rejects.toThrow(sentence)
    expect(await leftIn(places.temporary)).toEqual([])
  })

  test.each([
    ['ECONNRESET', 'The scan "plan.png" did not arrive whole: hand it over again.'],
    [
      'ENOSPC',
      'The scan "plan.png" could not be kept because the disk is full: make room and hand it over again.',
    ],
  ])('that breaks off with %s is told as what it is, and nothing of it is kept', async (code, sentence) => {
    const { bench, places } = await aWorkbench()
    async function* breaking(): AsyncGenerator<Uint8Array> {
      yield new Uint8Array(3000)
      throw Object.assign(new Error('broken off'), { code })
    }
    await expect(bench.receiveScan('plan.png', breaking())).rejects.toThrow(sentence)
    expect(await leftIn(places.temporary)).toEqual([])
  })

  test('keeps only the last part of its name', async () => {
    const { bench, ask } = await aWorkbench()
    const { scan } = await workshopJob()
    const bytes = await readFile(scan)
    const names = ['../../../outside.png', 'C:\\scans\\plan.png', '/etc/passwd', 'nul\u0000l.png']
    const uploads: { upload: string }[] = []
    for (const [number, name] of names.entries()) {
      const grey = await sharp(bytes).linear(1, -number).png().toBuffer()
      uploads.push({ upload: await bench.receiveScan(name, inChunks(grey)) })
    }
    const { opened } = await ask('new-job', { title: 'Pump', ...A_PERSON, uploads })
    expect(opened?.job.sheets.map(({ scan: { file } }) => file)).toEqual([
      'outside.png',
      'plan.png',
      'passwd',
      'nul-l.png',
    ])
  })

  test('waits among no more than a hundred', async () => {
    const { bench } = await aWorkbench()
    const one = new Uint8Array(1)
    for (let number = 0; number < 100; number++) await bench.receiveScan(`${number}.png`, inChunks(one))
    await expect(bench.receiveScan('one more.png', inChunks(one))).rejects.toThrow('100 scans wait')
  })
})
