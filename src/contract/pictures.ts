import { z } from 'zod'

const sheet = z.string()

/** One step of the pyramid: `level` 0 is the scan as it is, each next one half as large. */
export const pyramidLevelSchema = z.strictObject({
  level: z.int(),
  width: z.int(),
  height: z.int(),
  columns: z.int(),
  rows: z.int(),
})

export type PyramidLevel = z.infer<typeof pyramidLevelSchema>

/** How far the pictures of a sheet are made. */
export const pictureProgressSchema = z.strictObject({
  sheet,
  state: z.enum(['overview', 'tiles', 'ready', 'stopped', 'failed']),
  /** Share of the work that is done, 0 to 1. */
  done: z.number(),
  /** What is being done, or why it stopped: a sentence. */
  sentence: z.string(),
  /** Whether the scan is locked and waits for its password (`unlock`). */
  locked: z.boolean().optional(),
  /** As `SheetPictures` has it; absent as long as it is not known. */
  exact: z.boolean().optional(),
})

export type PictureProgress = z.infer<typeof pictureProgressSchema>

/** What can be shown of a sheet. */
export const sheetPicturesSchema = z.strictObject({
  sheet,
  width: z.int(),
  height: z.int(),
  /** Names this very scan, so that a browser may keep what it fetched. */
  version: z.string(),
  /** Size of the picture of the whole sheet that is there first. */
  overview: z.strictObject({ width: z.int(), height: z.int() }),
  levels: z.array(pyramidLevelSchema),
  /** Whether the tiles of level 0 have the very values of the scan, in grey; else they come near (JPEG of a colour scan). false as well as long as it is not known, which progress tells. */
  exact: z.boolean(),
  progress: pictureProgressSchema,
})

export type SheetPictures = z.infer<typeof sheetPicturesSchema>

/** Tiles are squares of this many pixels, less at the right and lower edges. */
export const TILE = 512

/** The steps of the pyramid of a scan, from full size down to one tile. */
export function pyramidLevels(width: number, height: number): PyramidLevel[] {
  const levels: PyramidLevel[] = []
  for (let level = 0; ; level++) {
    const w = Math.max(1, Math.ceil(width / 2 ** level))
    const h = Math.max(1, Math.ceil(height / 2 ** level))
    levels.push({ level, width: w, height: h, columns: Math.ceil(w / TILE), rows: Math.ceil(h / TILE) })
    if (w <= TILE && h <= TILE) return levels
  }
}

/**
 * A picture that a window may ask for: the sheet whole, its ground (what `lift` divides by), or one tile. A tile that is
 * not made yet is made out of turn, so that what is on screen comes first; the answer may take as long as the scan
 * takes to be read down to there.
 */
export type PictureWanted = { sheet: string; version: string } & (
  | { kind: 'overview' | 'thumbnail' | 'ground' }
  | { kind: 'tile'; level: number; column: number; row: number }
)

/** The small picture of a page of a scan that was handed over. */
export interface PageThumbnailWanted {
  upload: string
  page: number
}

/** The address of a small picture of a page, below the host's own. */
export const pageThumbnailAddress = ({ upload, page }: PageThumbnailWanted): string =>
  `page/${encodeURIComponent(upload)}/${page}`

/** The page that an address names; null when it names none. `address` as `pageThumbnailAddress` gives it. */
export function pageThumbnailAt(address: string): PageThumbnailWanted | null {
  const [kind, encoded = '', page = '', ...rest] = address.split('/')
  if (kind !== 'page' || rest.length > 0 || !/^[1-9]\d{0,5}$/.test(page)) return null
  const upload = decoded(encoded)
  return upload === null ? null : { upload, page: Number(page) }
}

/** The address of a picture, below the host's own. */
export function pictureAddress(wanted: PictureWanted): string {
  const sheet = `picture/${encodeURIComponent(wanted.sheet)}/${encodeURIComponent(wanted.version)}`
  if (wanted.kind !== 'tile') return `${sheet}/${wanted.kind}`
  return `${sheet}/${wanted.level}/${wanted.column}/${wanted.row}`
}

/** The picture that an address names; null when it names none. `address` as `pictureAddress` gives it. */
export function pictureAt(address: string): PictureWanted | null {
  const parts = address.split('/')
  if (parts[0] !== 'picture') return null
  const [, encodedSheet = '', encodedVersion = '', ...rest] = parts
  const sheet = decoded(encodedSheet)
  const version = decoded(encodedVersion)
  if (sheet === null || version === null) return null
  if (rest.length === 1) {
    const [kind] = rest
    if (kind === 'overview' || kind === 'thumbnail' || kind === 'ground') return { sheet, version, kind }
    return null
  }
  if (rest.length !== 3 || !rest.every((part) => /^\d{1,6}$/.test(part))) return null
  const [level, column, row] = rest.map(Number) as [number, number, number]
  return { sheet, version, kind: 'tile', level, column, row }
}

function decoded(part: string): string | null {
  try {
    return part === '' ? null : decodeURIComponent(part)
  } catch {
    return null
  }
}
