/** Makes the pictures of one dimension from start to end: `node scripts/run-ts.mjs samples/draw/pictures.ts`. */
import { mkdir, readFile } from 'node:fs/promises'
import sharp, { type OverlayOptions, type Sharp } from 'sharp'
import { type Pixel, pixel } from '../../src/core/geometry/frames.ts'
import type { Job, Mark } from '../../src/core/job/model/types.ts'
import { readJob } from '../../src/core/job/read-job.ts'
import { dimensionTable } from '../../src/core/ledger/table/dimension-table.ts'
import type { TableRow } from '../../src/core/ledger/table/table.ts'
import { twoFigures } from '../../src/core/quantity/format/rounding.ts'
import { type Crop, overlay, TINT } from './overlay.ts'
import { lerp, type Pt } from './plane.ts'

const FOLDER = 'samples/deck-ventilator'
const PICTURES = 'docs/pictures'
const DIMENSION = 'hood_od'
const VIEW = 'elevation'

const job = readJob(JSON.parse(await readFile(`${FOLDER}/job.json`, 'utf8')))
const table = dimensionTable(job)
const scan = `${FOLDER}/scans/${job.sheets[0]?.scan.file}`
await mkdir(PICTURES, { recursive: true })
await wholeSheet()
await references()
await picks()
await fitted()

/** 1: the sheet as it came in, with its views outlined. */
async function wholeSheet(): Promise<void> {
  const { width, height } = sheetSize()
  const crop: Crop = { left: 0, top: 0, width, height, zoom: 1400 / width }
  const draw = overlay(crop)
  for (const view of job.views) {
    draw.outline(view.outline ?? [], TINT.reference)
    const [a, b] = view.outline ?? []
    if (a !== undefined && b !== undefined)
      draw.label(lerp(a, b, 0.78), view.name.toUpperCase(), TINT.reference, 11)
  }
  await save('1-sheet.jpg', crop, draw.svg())
}

/** 2: the references of the view, the one that does not fit in another line. */
async function references(): Promise<void> {
  const crop = cropAround(viewOf(job).outline ?? [], 0, 1000)
  const draw = overlay(crop)
  const found = table.views.find(({ id }) => id === VIEW)?.references ?? []
  for (const reference of viewOf(job).references) {
    if (reference.kind !== 'distance') continue
    const [a, b] = reference.marks.map((id) => position(markOf(id)))
    if (a === undefined || b === undefined) continue
    const misfit = found.some(({ id, setAside }) => id === reference.id && setAside === true)
    const colour = misfit ? TINT.doubt : TINT.reference
    draw.line(a, b, colour, 2, misfit)
    draw.cross(a, colour)
    draw.cross(b, colour)
    const text = `${reference.id}: ${reference.size}${misfit ? ' DOES NOT FIT' : ''}`
    draw.label(lerp(a, b, clearOf(a, b)), text, colour, 13)
  }
  await save('2-references.jpg', crop, draw.svg())
}

/** Where along a reference its label stands clear of those that it crosses. */
function clearOf(a: Pt, b: Pt): number {
  const steepness = Math.abs(a[1] - b[1]) / Math.abs(a[0] - b[0])
  if (steepness > 5) return Math.abs(a[1] - b[1]) > 1200 ? 0.3 : 0.12
  if (steepness > 1) return 0.22
  return steepness < 0.2 ? 0.25 : 0.5
}

/** 3: the two points of the dimension, close to, with every pick that was made of them. */
async function picks(): Promise<void> {
  const close = 130
  const zoom = 4.6
  const panels = await Promise.all(
    marksOfDimension().map(async (mark) => {
      const [x, y] = position(mark)
      const crop: Crop = {
        left: Math.round(x - close / 2),
        top: Math.round(y - close / 2),
        width: close,
        height: close,
        zoom,
      }
      const draw = overlay(crop)
      for (const pick of picksOf(mark)) draw.cross(pick, TINT.pick, 11, 1.5)
      const count = picksOf(mark).length
      draw.label([x, crop.top + 14], `${mark.id}: ${(mark.label ?? '').toUpperCase()}`, TINT.reference, 15)
      draw.label([x, crop.top + close - 9], `${count} PICKS`, TINT.pick, 13)
      return await shown(crop, draw.svg()).then((image) => image.png().toBuffer())
    }),
  )
  const side = Math.round(close * zoom)
  const gap = 16
  const composite: OverlayOptions[] = panels.map((input, i) => ({ input, left: i * (side + gap), top: 0 }))
  await sharp({
    create: { width: panels.length * (side + gap) - gap, height: side, channels: 3, background: '#fff' },
  })
    .composite(composite)
    .jpeg({ quality: 82 })
    .toFile(`${PICTURES}/3-picks.jpg`)
}

/** 4: the dimension line with the value the table gives. */
async function fitted(): Promise<void> {
  const [left, right] = marksOfDimension().map(position)
  const row = table.rows.find(({ name }) => name === DIMENSION)
  if (left === undefined || right === undefined || row === undefined) throw new Error(`No ${DIMENSION}.`)
  const crop = cropAround(
    [pixel(left[0] - 260, left[1] - 560), pixel(right[0] + 260, right[1] + 330)],
    0,
    1100,
  )
  const draw = overlay(crop)
  draw.cross(left, TINT.pick)
  draw.cross(right, TINT.pick)
  draw.dimension(left, right, 75, figureOf(row), TINT.pick)
  await save('4-dimension.jpg', crop, draw.svg())
}

function figureOf({ written, U }: TableRow): string {
  const mark = job.unit === 'in' ? '"' : ' MM'
  // The alphabet has one dash for minus and for the rest.
  return `${written} ± ${twoFigures(U)}${mark}`.replaceAll('−', '-')
}

function viewOf({ views }: Job) {
  const view = views.find(({ id }) => id === VIEW)
  if (view === undefined) throw new Error(`The job has no view ${VIEW}.`)
  return view
}

function markOf(id: string): Mark {
  const mark = job.marks.find((m) => m.id === id)
  if (mark === undefined) throw new Error(`The job has no mark ${id}.`)
  return mark
}

function marksOfDimension(): Mark[] {
  const evidence = job.dimensions
    .find(({ name }) => name === DIMENSION)
    ?.evidence.find(({ basis }) => basis === 'scaled')
  if (evidence?.basis !== 'scaled') throw new Error(`${DIMENSION} is not scaled.`)
  return evidence.marks.map(markOf)
}

function picksOf(mark: Mark): Pixel[] {
  return mark.kind === 'point' ? [mark.pixel, ...(mark.repeats ?? [])] : mark.pixels
}

function position(mark: Mark): Pt {
  const all = picksOf(mark)
  return [all.reduce((s, p) => s + p[0] / all.length, 0), all.reduce((s, p) => s + p[1] / all.length, 0)]
}

function sheetSize() {
  const sheet = job.sheets[0]
  if (sheet === undefined) throw new Error('The job has no sheet.')
  return sheet.scan
}

function cropAround(points: readonly Pixel[], margin: number, width: number): Crop {
  const xs = points.map((p) => p[0])
  const ys = points.map((p) => p[1])
  const left = Math.max(0, Math.round(Math.min(...xs) - margin))
  const top = Math.max(0, Math.round(Math.min(...ys) - margin))
  const across = Math.round(Math.max(...xs) + margin) - left
  return {
    left,
    top,
    width: across,
    height: Math.round(Math.max(...ys) + margin) - top,
    zoom: width / across,
  }
}

async function shown(crop: Crop, drawing: Buffer): Promise<Sharp> {
  const { left, top, width, height, zoom } = crop
  const size = { width: Math.round(width * zoom), height: Math.round(height * zoom) }
  const part = await sharp(scan)
    .extract({ left, top, width, height })
    .resize({ ...size, fit: 'fill' })
    .toBuffer()
  return sharp(part).composite([{ input: drawing, left: 0, top: 0 }])
}

async function save(name: string, crop: Crop, drawing: Buffer): Promise<void> {
  await (await shown(crop, drawing)).jpeg({ quality: 82 }).toFile(`${PICTURES}/${name}`)
}
