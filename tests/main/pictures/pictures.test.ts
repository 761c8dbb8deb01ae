import { spawnSync } from 'node:child_process'
import { copyFile, mkdir, readdir, readFile, rename, rm, stat, symlink, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import sharp from 'sharp'
import { beforeAll, describe, expect, test } from 'vitest'
import type { HostEvent } from '../../../src/contract/host-event.ts'
import { pictureAddress } from '../../../src/contract/picture-addresses.ts'
import { pyramidLevels, TILE } from '../../../src/contract/picture-pyramid.ts'
import type { SheetPictures } from '../../../src/contract/pictures.ts'
import type { Job } from '../../../src/core/job/model/types.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import { ownMark } from '../../../src/main/services/pictures/cache/half-made.ts'
import { pyramidProgram } from '../../../src/main/services/pictures/process/pyramid-program.ts'
import { aWorkbench } from '../fixtures/a-workbench.ts'
import { type BenchWithScan, benchWithScan, progressOf } from '../fixtures/bench-with-scan.ts'
import { drawSlope } from '../fixtures/draw-slope.ts'
import { folderSnapshot } from '../fixtures/folder-snapshot.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'

/** As it was built before the tests began. */
const PROGRAM = pyramidProgram()

/** On a busy machine a process is slow to begin. */
const PATIENT = { timeout: 60_000 }

const WIDTH = 1300
const HEIGHT = 1100

/** Large and full of noise, so that cutting it takes a while: long enough to be stopped, */
const drawLarge = (path: string): Promise<unknown> => copyFile(large, path)
/** and long enough to be told of many times. */
const drawLargest = (path: string): Promise<unknown> => drawNoise(path, 7000, 6000)
let large: string
beforeAll(async () => {
  large = join(await temporaryFolder(), 'large.jpg')
  await drawNoise(large, 5000, 4200)
})

async function drawNoise(path: string, width: number, height: number): Promise<void> {
  const noise = { type: 'gaussian' as const, mean: 200, sigma: 25 }
  const patch = sharp({ create: { width: 500, height: 500, channels: 3, background: '#fff', noise } })
  const input = await patch.png().toBuffer()
  await sharp({ create: { width, height, channels: 3, background: '#fff' } })
    .composite([{ input, tile: true }])
    .jpeg({ quality: 80 })
    .toFile(path)
}

const onBench = (
  draw: (path: string) => Promise<unknown> = drawSlope,
  name = 'plan.png',
  change?: (job: Job) => Job,
): Promise<BenchWithScan> => benchWithScan(draw, name, {}, change)

async function picture(
  { bench }: BenchWithScan,
  { sheet, version }: SheetPictures,
  kind: 'overview' | 'thumbnail' | 'ground',
) {
  const found = await bench.picture(pictureAddress({ sheet, version, kind }))
  if (found === null) throw new Error(`no ${kind}`)
  return found
}

async function tile(
  { bench }: BenchWithScan,
  { sheet, version }: SheetPictures,
  level: number,
  column: number,
  row: number,
) {
  const found = await bench.picture(pictureAddress({ sheet, version, kind: 'tile', level, column, row }))
  if (found === null) throw new Error(`no tile ${level}/${column}/${row}`)
  return found.bytes
}

/** What is in a folder, whenever it was written. */
async function contents(folder: string): Promise<Record<string, string>> {
  const found = await folderSnapshot(folder)
  return Object.fromEntries(Object.entries(found).map(([name, what]) => [name, what.split(' ')[0] ?? '']))
}

describe('the pictures of a sheet', () => {
  test('are told of to a window that comes later, after how things stand', async () => {
    const bench = await onBench()
    const heard = async (): Promise<HostEvent[]> => {
      const events: HostEvent[] = []
      await bench.bench.greet((event) => events.push(event))
      return events
    }
    expect(await heard()).toMatchObject([{ kind: 'bench', state: { opened: null } }])
    await bench.open()
    const { progress } = await bench.shown()
    expect(await heard()).toEqual([
      { kind: 'bench', state: await bench.ask('look', {}) },
      { kind: 'pictures', progress },
    ])
  })

  test('come in order: the whole, the tiles, ready, with the share that is done never falling', async () => {
    const bench = await onBench()
    await bench.open()
    const first = await bench.ask('show-sheet', { sheet: 'S1' })
    expect(first).toMatchObject({
      sheet: 'S1',
      width: WIDTH,
      height: HEIGHT,
      overview: { width: WIDTH, height: HEIGHT },
      levels: pyramidLevels(WIDTH, HEIGHT),
      progress: { sheet: 'S1', state: 'overview', done: 0 },
    })
    expect(first.version).toMatch(/^[0-9a-f]{16}-1-v2$/)
    expect((await bench.shown()).progress).toMatchObject({ state: 'ready', done: 1 })
    const told = progressOf(bench.events)
    expect([...new Set(told.map(({ state }) => state))]).toEqual(['overview', 'tiles', 'ready'])
    const shares = told.map(({ done }) => done)
    expect(shares).toEqual([...shares].sort((a, b) => a - b))
    for (const { sentence } of told) expect(sentence).toMatch(/^[A-Z].*\.$/)
  })

  test('have every tile of every level, of the size that its place asks for', async () => {
    const bench = await onBench()
    await bench.open()
    const shown = await bench.shown()
    expect(shown.levels.map(({ width, height }) => [width, height])).toEqual([
      [1300, 1100],
      [650, 550],
      [325, 275],
    ])
    for (const { level, width, height, columns, rows } of shown.levels) {
      for (let row = 0; row < rows; row++) {
        for (let column = 0; column < columns; column++) {
          const size = await sharp(await tile(bench, shown, level, column, row)).metadata()
          expect([level, column, row, size.width, size.height, size.chromaSubsampling]).toEqual([
            level,
            column,
            row,
            Math.min(TILE, width - column * TILE),
            Math.min(TILE, height - row * TILE),
            '4:4:4',
          ])
        }
      }
    }
    expect((await readdir(join(bench.cache, 'tiles'))).sort()).toEqual(['0', '1', '2'])
    expect((await readdir(bench.cache)).sort()).toEqual([
      'ground.png',
      'manifest.json',
      'overview.jpg',
      'thumbnail.jpg',
      'tiles',
    ])
  })
})

describe('pictures that are there', () => {
  test('are used again, at once, without being made', async () => {
    const bench = await onBench()
    await bench.open()
    await bench.shown()
    await bench.ask('close-job', {})
    const before = await folderSnapshot(bench.cache)
    bench.events.length = 0
    await bench.open()
    const shown = await bench.ask('show-sheet', { sheet: 'S1' })
    expect(shown.progress).toMatchObject({ state: 'ready', done: 1 })
    expect(progressOf(bench.events).map(({ state }) => state)).toEqual(['ready'])
    await tile(bench, shown, 0, 2, 2)
    expect(await folderSnapshot(bench.cache)).toEqual(before)
  })

  test('in part only, or left half-made by a process that died, are never used but made anew', async () => {
    const bench = await onBench()
    await bench.open()
    await bench.shown()
    await bench.ask('close-job', {})
    const [gone, hollow] = [
      join(bench.cache, 'tiles', '0', '1_1.jpeg'),
      join(bench.cache, 'tiles', '1', '0_0.jpeg'),
    ]
    const whole = await readFile(gone)
    await rm(gone)
    await writeFile(hollow, '')
    const [machine, , run] = ownMark().split('-')
    const dead = `${machine}-${spawnSync(process.execPath, ['--version']).pid}-${run}-0123456789abcdef.tmp`
    await mkdir(join(bench.cache, `tiles.${dead}`, 'cut_files'), { recursive: true })
    await writeFile(join(bench.cache, `overview.jpg.${dead}`), 'half')
    await bench.open()
    const shown = await bench.shown()
    expect(shown.progress.state).toBe('ready')
    expect(await readFile(gone)).toEqual(whole)
    expect((await stat(hollow)).size).toBeGreaterThan(0)
    expect((await readdir(bench.cache)).sort()).toEqual([
      'ground.png',
      'manifest.json',
      'overview.jpg',
      'thumbnail.jpg',
      'tiles',
    ])
  })

  test('and taken away while the job is open are made again when the sheet is shown', async () => {
    const bench = await onBench()
    await bench.open()
    const { sheet, version } = await bench.shown()
    await rm(join(bench.folder, '.cache'), { recursive: true })
    expect(await bench.bench.picture(pictureAddress({ sheet, version, kind: 'overview' }))).toBeNull()
    expect((await bench.shown()).progress.state).toBe('ready')
    await picture(bench, await bench.shown(), 'overview')
  })
})

describe('making pictures', () => {
  test('can be stopped: what is whole stays, nothing half-made does, and showing the sheet goes on', async () => {
    const bench = await onBench(drawLarge, 'large.jpg')
    await bench.open()
    const cutting = bench.progress(({ state, done }) => state === 'tiles' && done > 0)
    const shown = await bench.ask('show-sheet', { sheet: 'S1' })
    expect((await cutting).sentence).toMatch(/^Cutting the sheet into tiles: \d+ of 129\.$/)
    expect(await bench.ask('stop-pictures', { sheet: 'S1' })).toBeNull()
    expect(progressOf(bench.events).at(-1)).toMatchObject({ state: 'stopped' })
    await picture(bench, shown, 'overview')
    const tile0 = pictureAddress({
      sheet: 'S1',
      version: shown.version,
      kind: 'tile',
      level: 0,
      column: 0,
      row: 0,
    })
    expect(await bench.bench.picture(tile0)).toBeNull()
    while ((await readdir(bench.cache)).length > 3) await new Promise((resolve) => setTimeout(resolve, 20))
    expect((await readdir(bench.cache)).sort()).toEqual(['ground.png', 'overview.jpg', 'thumbnail.jpg'])

    const told = bench.events.length
    expect((await bench.shown()).progress.state).toBe('ready')
    expect(await bench.bench.picture(tile0)).not.toBeNull()
    const since = progressOf(bench.events.slice(told))
    const counts = since.filter(({ state, done }) => state === 'tiles' && done > 0)
    expect(counts.length).toBeGreaterThan(0)
  })

  test('stopped and begun again in one breath is carried to its end', async () => {
    const bench = await onBench(drawLarge, 'large.jpg')
    await bench.open()
    const cutting = bench.progress(({ state, done }) => state === 'tiles' && done > 0)
    await bench.ask('show-sheet', { sheet: 'S1' })
    await cutting
    const ready = bench.progress(({ state }) => state === 'ready')
    await bench.ask('stop-pictures', { sheet: 'S1' })
    expect((await bench.ask('show-sheet', { sheet: 'S1' })).progress.state).not.toBe('stopped')
    await ready
  })

  test('stopped and begun again in one breath answers whoever asks then with what is made from now on', async () => {
    const bench = await onBench(drawLarge, 'large.jpg')
    await bench.open()
    // Once in the middle of the whole, once while tiles are cut.
    for (const state of ['overview', 'tiles'] as const) {
      await bench.ask('show-sheet', { sheet: 'S1' })
      const isReached = () => progressOf(bench.events).some((one) => one.state === state)
      await expect.poll(isReached, PATIENT).toBe(true)
      await bench.ask('stop-pictures', { sheet: 'S1' })
      const again = bench.ask('show-sheet', { sheet: 'S1' })
      const wanted = [
        bench.bench.picture(pictureAddress({ ...(await again), kind: 'overview' })),
        bench.bench.picture(pictureAddress({ ...(await again), kind: 'tile', level: 0, column: 0, row: 0 })),
      ]
      expect((await Promise.all(wanted)).map((one) => one?.type)).toEqual(['image/jpeg', 'image/jpeg'])
    }
  })

  test('stopped twice while it comes to its end lets nobody wait for ever', async () => {
    const bench = await onBench(drawLarge, 'large.jpg')
    await bench.open()
    const cutting = bench.progress(({ state, done }) => state === 'tiles' && done > 0)
    await bench.ask('show-sheet', { sheet: 'S1' })
    await cutting
    const shown: Promise<SheetPictures>[] = []
    for (let i = 0; i < 3; i++) {
      await bench.ask('stop-pictures', { sheet: 'S1' })
      shown.push(bench.ask('show-sheet', { sheet: 'S1' }))
    }
    await bench.ask('stop-pictures', { sheet: 'S1' })
    for (const { progress } of await Promise.all(shown)) expect(progress.state).toBe('stopped')
    expect((await bench.shown()).progress.state).toBe('ready')
  })

  test('of one sheet is stopped at once while it waits for another one’s turn, which goes on', async () => {
    const both = (job: Job): Job => ({
      ...job,
      sheets: job.sheets.flatMap((one) => [one, { ...one, id: 'S2', scan: { ...one.scan, page: 2 } }]),
    })
    const pages = async (path: string): Promise<void> => {
      await drawSlope(`${path}.png`)
      const inputs = [`${path}.png`, `${path}.png`]
      await sharp(inputs, { join: { animated: true } })
        .tiff({ compression: 'lzw' })
        .toFile(path)
    }
    const path = join(await temporaryFolder(), 'pyramid.mjs')
    const goOn = `${path}.go`
    // The first page is not cut before it is told to.
    await writeFile(
      path,
      `import { existsSync } from 'node:fs'
      process.on('disconnect', () => process.exit())
      process.send({ kind: 'ready' })
      process.once('message', async (message) => {
        const { order } = message
        const waits = order.make === 'tiles' && order.wanted.file.page === 1
        while (waits && !existsSync(${JSON.stringify(goOn)})) await new Promise((resolve) => setTimeout(resolve, 20))
        await import(${JSON.stringify(PROGRAM)})
        process.emit('message', message)
      })`,
    )
    const bench = await benchWithScan(pages, 'two.tif', { pyramidProgram: path }, both)
    await bench.open()
    const cutting = (id: string) => bench.progress(({ sheet, state }) => sheet === id && state === 'tiles')
    for (const sheet of ['S1', 'S2']) {
      const begun = cutting(sheet)
      await bench.ask('show-sheet', { sheet })
      await begun
    }
    const readyOf = (id: string) => bench.progress(({ sheet, state }) => sheet === id && state === 'ready')
    const ready = ['S1', 'S2'].map(readyOf)
    await bench.ask('stop-pictures', { sheet: 'S2' })
    // Answered once the new making has begun, which comes after the end of the one that was stopped.
    const again = await bench.ask('show-sheet', { sheet: 'S2' })
    expect(again.progress.state).not.toBe('stopped')
    expect(progressOf(bench.events).filter(({ state }) => state === 'ready')).toEqual([])
    await writeFile(goOn, '')
    await Promise.all(ready)
  })

  test.each(['killed', 'stopped'])(
    'that is %s while a picture is being written leaves no half of it',
    async (how) => {
      const program = join(await temporaryFolder(), 'pyramid.mjs')
      await writeFile(
        program,
        `import { writeFileSync } from 'node:fs'
        process.on('disconnect', () => process.exit())
        process.send({ kind: 'ready' })
        process.once('message', ({ order: { wanted: { folder, mark } } }) => {
          writeFileSync(folder + '/overview.jpg.' + mark + '-0badcafe.tmp', 'half')
          if (${how === 'killed'}) process.kill(process.pid, 'SIGKILL')
          else setInterval(() => undefined, 1000)
        })`,
      )
      const bench = await benchWithScan(drawSlope, 'plan.png', { pyramidProgram: program })
      await bench.open()
      const ended = bench.progress(({ state }) => state === 'failed' || state === 'stopped')
      const shown = bench.ask('show-sheet', { sheet: 'S1' })
      if (how === 'stopped') {
        await expect.poll(() => readdir(bench.cache).catch(() => []), PATIENT).toHaveLength(1)
        await bench.ask('stop-pictures', { sheet: 'S1' })
      }
      expect((await ended).state).toBe(how === 'killed' ? 'failed' : 'stopped')
      await shown
      await expect.poll(() => readdir(bench.cache), PATIENT).toEqual([])
    },
  )

  test('ends with the job: closing leaves nothing running and nothing half-made', async () => {
    const bench = await onBench(drawLarge, 'large.jpg')
    await bench.open()
    const cutting = bench.progress(({ state, done }) => state === 'tiles' && done > 0)
    await bench.ask('show-sheet', { sheet: 'S1' })
    await cutting
    await bench.ask('close-job', {})
    expect((await readdir(bench.cache)).sort()).toEqual(['ground.png', 'overview.jpg', 'thumbnail.jpg'])
    const told = bench.events.length
    await new Promise((resolve) => setTimeout(resolve, 500))
    expect(bench.events).toHaveLength(told)
  })

  test('is told at most five times a second while tiles are cut', async () => {
    const bench = await onBench(drawLargest, 'large.jpg')
    await bench.open()
    const times: number[] = []
    bench.bench.listen((event) => {
      if (event.kind === 'pictures' && event.progress.state === 'tiles') times.push(performance.now())
    })
    await bench.shown()
    for (let i = 6; i < times.length; i++) expect((times[i] ?? 0) - (times[i - 6] ?? 0)).toBeGreaterThan(1000)
    expect(times.length).toBeGreaterThan(1)
  })

  test('for two sheets on one scan is done once, and both are told', async () => {
    const double = (job: Job): Job => ({
      ...job,
      sheets: job.sheets.flatMap((one) => [one, { ...one, id: 'S2' }]),
    })
    const bench = await onBench(drawSlope, 'plan.png', double)
    await bench.open()
    const [one, two] = await Promise.all([bench.shown('S1'), bench.shown('S2')])
    expect([one.progress, two.progress]).toMatchObject([
      { sheet: 'S1', state: 'ready' },
      { sheet: 'S2', state: 'ready' },
    ])
    expect(await readdir(join(bench.folder, '.cache'))).toHaveLength(1)
    await tile(bench, two, 0, 0, 0)
  })

  test('for two sheets on one scan tells both at once how exact their tiles are, and so does what is told later', async () => {
    const double = (job: Job): Job => ({
      ...job,
      sheets: job.sheets.flatMap((one) => [one, { ...one, id: 'S2' }]),
    })
    const drawGrey = (path: string): Promise<unknown> =>
      sharp({ create: { width: 900, height: 700, channels: 3, background: '#ddd' } })
        .toColourspace('b-w')
        .toFile(path)
    const bench = await onBench(drawGrey, 'grey.png', double)
    await bench.open()
    const ready = bench.progress(({ sheet, state }) => sheet === 'S2' && state === 'ready')
    const [one, two] = await Promise.all(['S1', 'S2'].map((sheet) => bench.ask('show-sheet', { sheet })))
    expect([one?.exact, two?.exact]).toEqual([true, true])
    expect((await ready).exact).toBe(true)
  })

  test('that the tile program is not fit for fails in a sentence, keeps the whole, and can be tried again', async () => {
    const broken = join(await temporaryFolder(), 'pyramid.js')
    // Makes the pictures of the whole, and ends when it is to cut.
    await writeFile(
      broken,
      `import { existsSync } from 'node:fs'
      process.on('disconnect', () => process.exit())
      process.send({ kind: 'ready' })
      process.once('message', async (message) => {
        const { order } = message
        if (order.make === 'tiles' && !existsSync(${JSON.stringify(`${broken}.mended`)})) process.exit(3)
        await import(${JSON.stringify(PROGRAM)})
        process.emit('message', message)
      })`,
    )
    await writeFile(join(broken, '..', 'package.json'), '{"type":"module"}')
    const bench = await benchWithScan(drawSlope, 'plan.png', { pyramidProgram: broken })
    await bench.open()
    const shown = await bench.shown()
    expect(shown.progress).toMatchObject({
      state: 'failed',
      sentence: 'The pictures could not be made because the process that makes pictures ended early (3).',
    })
    await picture(bench, shown, 'overview')
    await writeFile(`${broken}.mended`, '')
    expect((await bench.shown()).progress.state).toBe('ready')
  })
})

describe('a tile that is asked for while pictures are made', () => {
  test('comes before its turn, from the lower end of the scan, and is the one that is there in the end', async () => {
    const bench = await onBench(drawLarge, 'large.jpg')
    await bench.open()
    const ready = bench.progress(({ state }) => state === 'ready')
    const shown = await bench.ask('show-sheet', { sheet: 'S1' })
    const [level] = shown.levels
    if (level === undefined) throw new Error('no levels')
    const [column, row] = [level.columns - 1, level.rows - 1]
    const early = await tile(bench, shown, 0, column, row)
    const coarse = await tile(bench, shown, shown.levels.length - 1, 0, 0)
    await ready
    expect(await tile(bench, shown, 0, column, row)).toEqual(early)
    expect(await tile(bench, shown, shown.levels.length - 1, 0, 0)).toEqual(coarse)
    expect(await readFile(join(bench.cache, 'tiles', '0', `${column}_${row}.jpeg`))).toEqual(early)
  })

  test('comes as soon as it is cut, while others still are', async () => {
    const path = join(await temporaryFolder(), 'pyramid.mjs')
    const [bytes, goOn] = [`${path}.jpeg`, `${path}.go`]
    const mark = { create: { width: TILE, height: TILE, channels: 3 as const, background: '#123456' } }
    await sharp(mark).jpeg().toFile(bytes)
    // Cuts one tile of the second row, waits, and then cuts the sheet anew; makes nothing out of turn.
    await writeFile(
      path,
      `import { copyFileSync, existsSync, mkdirSync, rmSync } from 'node:fs'
      process.on('disconnect', () => process.exit())
      process.send({ kind: 'ready' })
      process.once('message', async (message) => {
        const { make, wanted: { folder, size } } = message.order
        if (make === 'block') return setInterval(() => undefined, 1000)
        if (make === 'tiles') {
          const level = folder + '/cut_files/' + Math.ceil(Math.log2(Math.max(size.width, size.height) / ${TILE}))
          mkdirSync(level, { recursive: true })
          copyFileSync(${JSON.stringify(bytes)}, level + '/1_1.jpeg')
          while (!existsSync(${JSON.stringify(goOn)})) await new Promise((resolve) => setTimeout(resolve, 20))
          rmSync(folder + '/cut_files', { recursive: true })
        }
        await import(${JSON.stringify(PROGRAM)})
        process.emit('message', message)
      })`,
    )
    const bench = await benchWithScan(drawSlope, 'plan.png', { pyramidProgram: path })
    await bench.open()
    const shown = await bench.ask('show-sheet', { sheet: 'S1' })
    const ready = bench.progress(({ state }) => state === 'ready')
    expect(await tile(bench, shown, 0, 1, 1)).toEqual(await readFile(bytes))
    expect(progressOf(bench.events).some(({ state }) => state === 'ready')).toBe(false)
    await writeFile(goOn, '')
    await ready
    expect(await tile(bench, shown, 0, 1, 1)).not.toEqual(await readFile(bytes))
  })

  test('is not waited for when the making is stopped, nor beyond the edge of the sheet', async () => {
    const bench = await onBench(drawLarge, 'large.jpg')
    await bench.open()
    const shown = await bench.ask('show-sheet', { sheet: 'S1' })
    const address = (column: number, row: number): string =>
      pictureAddress({ sheet: 'S1', version: shown.version, kind: 'tile', level: 0, column, row })
    expect(await bench.bench.picture(address(99, 0))).toBeNull()
    const cutting = bench.progress(({ state, done }) => state === 'tiles' && done > 0)
    await cutting
    const coarsest = { kind: 'tile' as const, level: shown.levels.length - 1, column: 0, row: 0 }
    const waiting = bench.bench.picture(pictureAddress({ sheet: 'S1', version: shown.version, ...coarsest }))
    await bench.ask('stop-pictures', { sheet: 'S1' })
    expect(await waiting).toBeNull()
    expect(await bench.bench.picture(address(0, 0))).toBeNull()
  })
})

describe('making that is interrupted', () => {
  test('at any moment leaves nothing behind but what is whole, and is carried to the same end', async () => {
    const bench = await onBench((path) => drawSlope(path, 3000, 2500))
    await bench.open()
    const began = performance.now()
    await bench.shown()
    const took = performance.now() - began
    const expected = await contents(bench.cache)
    const random = randomStream(7)
    for (let round = 0; round < 6; round++) {
      await rm(join(bench.folder, '.cache'), { recursive: true })
      await bench.open()
      void bench.ask('show-sheet', { sheet: 'S1' }).catch(() => undefined)
      await new Promise((resolve) => setTimeout(resolve, took * random.uniform()))
      if (round % 2 === 0) await bench.ask('stop-pictures', { sheet: 'S1' })
      await bench.ask('close-job', {})
      const left: string[] = await readdir(bench.cache).catch(() => [])
      expect(left.filter((name) => name.endsWith('.tmp'))).toEqual([])
      expect(left.includes('tiles')).toBe(left.includes('manifest.json'))
      await bench.open()
      expect((await bench.shown()).progress.state).toBe('ready')
      expect(await contents(bench.cache)).toEqual(expected)
      await bench.ask('close-job', {})
    }
  })
})

describe('where pictures are kept', () => {
  test('is a temporary folder when the job’s own can’t be written, removed in the end', async () => {
    const bench = await onBench()
    await rm(join(bench.folder, '.cache'), { recursive: true })
    await writeFile(join(bench.folder, '.cache'), 'a file where the folder should be')
    await bench.open()
    const shown = await bench.shown()
    expect(shown.progress.state).toBe('ready')
    await tile(bench, shown, 0, 0, 0)
    expect(await readFile(join(bench.folder, '.cache'), 'utf8')).toBe('a file where the folder should be')
    await bench.bench.close()
    expect(await readdir(bench.places.temporary)).toEqual([])
  })

  test('is never a place outside the job that a link leads to', async () => {
    const bench = await onBench()
    const outside = await temporaryFolder()
    await rm(join(bench.folder, '.cache'), { recursive: true })
    await symlink(outside, join(bench.folder, '.cache'))
    await bench.open()
    expect((await bench.shown()).progress.state).toBe('ready')
    expect(Object.keys(await folderSnapshot(outside)).filter((name) => !name.endsWith('/'))).toEqual([])
  })

  test('is not the folder of a job that somebody else holds, unless all its pictures are there', async () => {
    const bench = await onBench()
    const holder = await openJob(bench.folder, { mode: 'write' })
    const before = await folderSnapshot(bench.folder)
    await bench.open()
    expect((await bench.shown()).progress.state).toBe('ready')
    expect(await folderSnapshot(bench.folder)).toEqual(before)
    await holder.close()
    await bench.open()
    await bench.shown()

    const other = await aWorkbench()
    expect((await other.bench.openFolder(bench.folder)).opened?.writable).toBe(false)
    expect((await other.ask('show-sheet', { sheet: 'S1' })).progress.state).toBe('ready')
    await expect(readdir(other.places.temporary)).rejects.toThrow('ENOENT')
  })
})

describe('a scan that can’t be shown', () => {
  test('because it is missing or another file is told of in the sentence of the scan, with no pictures', async () => {
    const bench = await onBench()
    await bench.open()
    const { version } = await bench.shown()
    await bench.ask('close-job', {})
    const scan = join(bench.folder, 'scans', 'plan.png')
    await rename(scan, `${scan}-away`)
    for (const state of ['missing', 'changed']) {
      if (state === 'changed') await drawSlope(scan, 900, 700)
      await bench.open()
      const found = (await bench.ask('look', {})).opened?.scans[0]
      expect(found?.state).toBe(state)
      const { progress } = await bench.ask('show-sheet', { sheet: 'S1' })
      expect(progress).toEqual({ sheet: 'S1', state: 'failed', done: 0, sentence: found?.sentence })
      expect(await bench.bench.picture(pictureAddress({ sheet: 'S1', version, kind: 'overview' }))).toBeNull()
      await bench.ask('close-job', {})
    }
  })

  test('because the job says another size is told so, so that no mark is shown where it was not picked', async () => {
    const sizes = (job: Job): Job => ({
      ...job,
      sheets: job.sheets.map((one) => ({ ...one, scan: { ...one.scan, width: 1301 } })),
    })
    const bench = await onBench(drawSlope, 'plan.png', sizes)
    await bench.open()
    expect((await bench.shown()).progress).toMatchObject({
      state: 'failed',
      sentence: expect.stringContaining('has 1300 × 1100 pixels, and the job says 1301 × 1100'),
    })
  })

  test('because it has more than a thousand million pixels is told so', async () => {
    const sizes = (job: Job): Job => ({
      ...job,
      sheets: job.sheets.map((one) => ({ ...one, scan: { ...one.scan, width: 40_000, height: 30_000 } })),
    })
    const bench = await onBench(drawSlope, 'plan.png', sizes)
    await bench.open()
    const { progress } = await bench.ask('show-sheet', { sheet: 'S1' })
    expect(progress.state).toBe('failed')
    expect(progress.sentence).toContain(
      '40,000 × 30,000 pixels, more than the 1,000,000,000 that are taken in',
    )
  })
})
