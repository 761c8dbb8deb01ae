/** Draws the sample sheet, scans it and writes the job: `node scripts/run-ts.mjs samples/draw/run.ts`. */
import { createHash } from 'node:crypto'
import { mkdir, writeFile } from 'node:fs/promises'
import sharp from 'sharp'
import { readJob } from '../../src/core/job/read-job.ts'
import { writeJob } from '../../src/core/job/write-job.ts'
import { blemishes } from './blemishes.ts'
import { chance, STREAM } from './chance.ts'
import { drawSheet } from './draw-sheet.ts'
import { inkLayer } from './ink-layer.ts'
import { makeJob, SAMPLE_SEED } from './make-job.ts'
import { scanSheet } from './scan-sheet.ts'
import { DISTORTION } from './sheet-distortion.ts'

const FOLDER = 'samples/deck-ventilator'
const SCAN = `${FOLDER}/scans/sheet-1.jpg`
const TRUTH = 'tests/samples/deck-ventilator.truth.json'

const sheet = drawSheet(SAMPLE_SEED)
const { job } = makeJob(SAMPLE_SEED, undefined, sheet)
// An unsound job is refused before the slow part.
readJob(job)
const paper = chance(SAMPLE_SEED, STREAM.paper)
const ink = await inkLayer(sheet.board, chance(SAMPLE_SEED, STREAM.hand))
const pixels = scanSheet(ink, blemishes(paper, smudgedBox()), paper)
const jpeg = await sharp(pixels, {
  raw: { width: DISTORTION.imageWidth, height: DISTORTION.imageHeight, channels: 3 },
})
  .jpeg({ quality: 85, chromaSubsampling: '4:2:0', optimiseCoding: true })
  .withMetadata({ density: DISTORTION.dpi })
  .toBuffer()

const sha256 = createHash('sha256').update(jpeg).digest('hex')
const made = makeJob(SAMPLE_SEED, sha256, sheet)
const text = writeJob(readJob(made.job))
await mkdir(`${FOLDER}/scans`, { recursive: true })
await mkdir('tests/samples', { recursive: true })
await writeFile(SCAN, jpeg)
await writeFile(`${FOLDER}/job.json`, text)
await writeFile(TRUTH, `${JSON.stringify(made.truth, null, 1)}\n`)
console.log(
  `${SCAN}: ${(jpeg.length / 1e6).toFixed(2)} MB, ${job.marks.length} marks, ${job.dimensions.length} dimensions`,
)

function smudgedBox(): [number, number, number, number] {
  const evidence = job.dimensions.find(({ name }) => name === 'hood_od')?.evidence[0]
  if (evidence?.basis !== 'printed' || evidence.box === undefined)
    throw new Error('The smudged figure has no box.')
  return evidence.box
}
