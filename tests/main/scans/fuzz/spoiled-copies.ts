import { ALL_KINDS, PDF_KINDS } from '../kinds/all-kinds.ts'
import { WEBP_KINDS } from '../kinds/jpeg-kinds.ts'
import { PNG_KINDS } from '../kinds/png-kinds.ts'
import type { ScanKind } from '../kinds/scan-kind.ts'
import { type Chance, chanceOf } from './chance.ts'
import { lieInJpeg } from './lie-in-jpeg.ts'
import { lieInPdf } from './lie-in-pdf.ts'
import { lieInPng } from './lie-in-png.ts'
import { lieInTiff } from './lie-in-tiff.ts'
import { lieInWebp } from './lie-in-webp.ts'
import { cutOut, cutShort, flipBytes, flipHead } from './spoil-bytes.ts'

type Spoil = (whole: Buffer, chance: Chance) => Buffer

const LIES: Record<ScanKind['format'], Spoil> = {
  tiff: lieInTiff,
  png: lieInPng,
  jpeg: lieInJpeg,
  webp: lieInWebp,
  pdf: lieInPdf,
}

const waysOf = ({ format }: ScanKind): [string, Spoil][] => [
  ['bytes flipped', flipBytes],
  ['bytes of its head flipped', flipHead],
  ['cut short', cutShort],
  ['a stretch cut out', cutOut],
  ['lies in its fields', LIES[format]],
  ['lies in its fields', LIES[format]],
  ['lies in its fields', LIES[format]],
]

export interface SpoiledCopy {
  number: number
  kind: ScanKind
  way: string
  bytes: Buffer
}

const SET = 'spoiled copies'

/** Each kind at least once; those that few kinds stand for, or whose reader is the youngest, more often. */
const ROUND: readonly ScanKind[] = [
  ...ALL_KINDS,
  ...PNG_KINDS,
  ...WEBP_KINDS,
  ...WEBP_KINDS,
  ...WEBP_KINDS,
  ...PDF_KINDS,
]

const made = new Map<ScanKind, Promise<Buffer>>()

/** A whole file of a kind, made once. */
function wholeOf(kind: ScanKind): Promise<Buffer> {
  const known = made.get(kind) ?? Promise.resolve(kind.make()).then(({ bytes }) => bytes)
  made.set(kind, known)
  return known
}

/** Copy `number` of the set, from 0: the kinds in turn, each spoiled one way or another. */
export async function spoiledCopy(number: number): Promise<SpoiledCopy> {
  const kind = ROUND[number % ROUND.length]
  if (kind === undefined) throw new Error('there are no kinds')
  const chance = chanceOf(`${SET} ${number}`)
  const [way, spoil] = chance.of(waysOf(kind)) ?? ['cut short', cutShort]
  return { number, kind, way, bytes: spoil(await wholeOf(kind), chance) }
}
