/** A job on one very large sheet, drawn and filled in only to be moved about on the screen. */
import { createHash } from 'node:crypto'
import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import sharp from 'sharp'
import { type Pixel, pixel } from '../../src/core/geometry/frames.ts'
import type { Dimension, Job, Mark, Measure, Reference } from '../../src/core/job/model/types.ts'
import { writeJob } from '../../src/core/job/write-job.ts'

export const WIDTH = 13_600
export const HEIGHT = 17_600

const PAPER = 226
const INK = 48
const MM_PER_PX = 0.17

/** Paper with grain, ruled with lines of all thicknesses and with circles, as a drawing is full of them. */
function drawnSheet(): Uint8Array {
  const grey = new Uint8Array(WIDTH * HEIGHT)
  let noise = 1
  for (let i = 0; i < grey.length; i++) {
    noise = (Math.imul(noise, 1664525) + 1013904223) >>> 0
    grey[i] = PAPER + (noise >>> 28)
  }
  const ink = (x: number, y: number): void => {
    if (x >= 0 && y >= 0 && x < WIDTH && y < HEIGHT) grey[y * WIDTH + x] = INK
  }
  for (let k = 0; k < 60; k++) {
    const pen = 2 + (k % 5)
    for (let y = 0; y < HEIGHT; y++) {
      for (let p = 0; p < pen; p++) ink(200 + 220 * k + p + Math.round(y / (40 + 7 * k)), y)
    }
    for (let x = 0; x < WIDTH; x++) for (let p = 0; p < pen; p++) ink(x, 180 + 290 * k + p)
    const [cx, cy, radius] = [1000 + 210 * k, 1200 + 260 * k, 120 + 20 * k]
    const steps = Math.ceil(8 * radius)
    for (let s = 0; s < steps; s++) {
      const angle = (2 * Math.PI * s) / steps
      for (let p = 0; p < pen; p++) {
        ink(Math.round(cx + (radius + p) * Math.cos(angle)), Math.round(cy + (radius + p) * Math.sin(angle)))
      }
    }
  }
  return grey
}

const written = (pixels: number): string => `${(pixels * MM_PER_PX).toFixed(1)} mm`

/** Some forty sizes in one view that fills the sheet: distances, spacings, circles, angles, paths, and references. */
function largeSheetJob(file: string, sha256: string): Job {
  const marks: Mark[] = []
  const add = (
    mark: { kind: 'point'; pixel: Pixel } | { kind: 'line' | 'circle' | 'path'; pixels: Pixel[] },
  ) => {
    const id = `M${marks.length + 1}`
    marks.push({ id, sheet: 'S1', how: 'hand', sigma: 1, ...mark })
    return id
  }
  const point = (x: number, y: number): string => add({ kind: 'point', pixel: pixel(x, y) })
  const line = (x: number, y: number, dx: number, dy: number): string =>
    add({ kind: 'line', pixels: [0, 1, 2, 3].map((i): Pixel => pixel(x + (i * dx) / 3, y + (i * dy) / 3)) })
  const circle = (x: number, y: number, r: number): string =>
    add({
      kind: 'circle',
      pixels: [0, 1, 2, 3, 4, 5].map((i): Pixel => pixel(x + r * Math.cos(i), y + r * Math.sin(i))),
    })
  const references = [0, 1, 2, 3, 4, 5].map((k): Reference => {
    const [x, y, half] = [6000 + 100 * k, 8000 + 150 * k, 2500 + 200 * k]
    const [dx, dy] = [half * Math.cos(k / 2), half * Math.sin(k / 2)]
    const ends: [string, string] = [point(x - dx, y - dy), point(x + dx, y + dy)]
    return { id: `R${k + 1}`, kind: 'distance', marks: ends, size: written(2 * half) }
  })
  const made: Record<string, (x: number, y: number, size: number) => string[]> = {
    distance: (x, y, size) => [point(x, y), point(x + size, y + size / 3)],
    spacing: (x, y, size) => [line(x, y, size, 0), line(x, y + size, size, 0)],
    diameter: (x, y, size) => [circle(x, y, size / 2)],
    radius: (x, y, size) => [circle(x, y, size / 3)],
    centres: (x, y, size) => [circle(x, y, size / 6), circle(x + size, y, size / 6)],
    angle: (x, y, size) => [line(x, y, size, 0), line(x, y, size / 2, size)],
    run: (x, y, size) => [
      add({
        kind: 'path',
        pixels: [0, 1, 2, 3].map((i): Pixel => pixel(x + (i * size) / 3, y + (i % 2) * 200)),
      }),
    ],
  }
  const measures = Object.keys(made) as Measure[]
  const dimensions = Array.from({ length: 42 }, (_, i): Dimension => {
    const measure = measures[i % measures.length] ?? 'distance'
    const [x, y] = [900 + 2000 * (i % 6), 1200 + 2200 * Math.floor(i / 6)]
    const size = 700 + 40 * i
    const own = made[measure]?.(x, y, size) ?? []
    const printed: Dimension['evidence'] =
      i % 3 === 0 && measure === 'distance'
        ? [{ id: 'p1', basis: 'printed', text: written(1.054 * size) }]
        : []
    return {
      name: `size_${i + 1}`,
      label: `Size ${i + 1}`,
      kind: measure === 'angle' ? 'angle' : 'length',
      evidence: [{ id: 's1', basis: 'scaled', view: 'V1', measure, marks: own }, ...printed],
    }
  })
  return {
    format: 'scantling-job',
    version: 1,
    title: 'A very large sheet',
    unit: 'in',
    people: [],
    instruments: [],
    sheets: [
      {
        id: 'S1',
        title: 'Large sheet',
        record: {},
        scan: { file, sha256, page: 1, width: WIDTH, height: HEIGHT, dpi: 400 },
      },
    ],
    views: [
      {
        id: 'V1',
        sheet: 'S1',
        name: 'General arrangement',
        outline: [pixel(300, 300), pixel(13_300, 300), pixel(13_300, 17_000), pixel(300, 17_000)],
        mapping: 'two-axis',
        references,
      },
    ],
    marks,
    dimensions,
    relations: [],
    notes: [],
  }
}

/** Makes the job in an empty folder. @returns where its scan is */
export async function makeLargeSheet(folder: string): Promise<string> {
  const scans = join(folder, 'scans')
  const scan = join(scans, 'large.jpg')
  await mkdir(scans, { recursive: true })
  await sharp(drawnSheet(), { raw: { width: WIDTH, height: HEIGHT, channels: 1 }, limitInputPixels: false })
    .toColourspace('srgb')
    .jpeg({ quality: 90 })
    .toFile(scan)
  const sha256 = createHash('sha256')
    .update(await readFile(scan))
    .digest('hex')
  await writeFile(join(folder, 'job.json'), writeJob(largeSheetJob('large.jpg', sha256)))
  return scan
}
