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

/** The small picture of a sheet of a job, which need not be open nor its other pictures made. */
export interface FrontWanted {
  /** The id that a window was told the job by. */
  job: string
  sheet: string
  /** Names this very scan, as `scanVersion` does. */
  version: string
}

/** What tells one page of one scan from another. */
export const scanVersion = ({
  sha256,
  page,
  drawnAt,
}: {
  sha256: string
  page: number
  drawnAt?: number | undefined
}): string => `${sha256.toLowerCase().slice(0, 16)}-${page}${drawnAt === undefined ? '' : `-${drawnAt}`}`

/** The address of such a picture, below the host's own. */
export const frontAddress = ({ job, sheet, version }: FrontWanted): string =>
  `front/${[job, sheet, version].map(encodeURIComponent).join('/')}`

/** The sheet whose small picture an address names; null when it names none. `address` as `frontAddress` gives it. */
export function frontAt(address: string): FrontWanted | null {
  const [kind, ...parts] = address.split('/')
  const [job = null, sheet = null, version = null, ...rest] = parts.map(decoded)
  if (kind !== 'front' || rest.length > 0 || job === null || sheet === null || version === null) return null
  return { job, sheet, version }
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
