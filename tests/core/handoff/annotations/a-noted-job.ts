import { pixel } from '../../../../src/core/geometry/frames.ts'
import type { Job, Note, Sheet } from '../../../../src/core/job/model/types.ts'

/** SHA-256 of "Hello World!", the example of RFC 6920 section 8.1. */
export const HELLO = '7f83b1657ff1fc53b92dc18148a1d65dfc2d4b1fa3d677284addd200126d9069'
const OTHER = '9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08'

export const sheet = (id: string, page: number, file = 'valve-chest.tif', sha256 = HELLO): Sheet => ({
  id,
  title: `Valve chest, page ${page}`,
  record: {},
  scan: { file, sha256, page, width: 4000, height: 3000 },
})

export const aNote = (rest: Partial<Note> = {}): Note => ({
  id: 'N1',
  sheet: 'S1',
  outline: [pixel(100, 200), pixel(400.5, 200), pixel(400.5, 320.25), pixel(100, 320.25)],
  text: 'The 3 has been written over: 3/8 or 5/8?',
  by: 'AR',
  at: '2026-03-01T09:30:00.000Z',
  ...rest,
})

/** Two pages of a TIFF and a page of a PDF. */
export const notedJob = (notes: Note[] = [aNote()]): Job => ({
  format: 'scantling-job',
  version: 2,
  title: 'Valve chest',
  unit: 'in',
  people: [
    { id: 'AR', name: 'A. Rivet' },
    { id: 'BS', name: 'B. Stay' },
  ],
  instruments: [],
  sheets: [sheet('S1', 1), sheet('S2', 2), sheet('S3', 1, 'foot-valve.pdf', OTHER)],
  views: [],
  marks: [],
  dimensions: [],
  relations: [],
  notes,
})
