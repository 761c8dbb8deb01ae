import { type Degrees, degrees } from '../../core/geometry/angle-units.ts'
import type { Sheet } from '../../core/job/model/types.ts'
import { type Aids, PLAIN } from './aids.ts'

/**
 * How a scan lies by the Exif orientation that its file gives: mirrored left for right, then turned clockwise.
 * Exif 3.0, 4.6.5.1, tag Orientation.
 */
const LIES: Readonly<Record<number, { mirror: boolean; turn: Degrees }>> = {
  2: { mirror: true, turn: degrees(0) },
  3: { mirror: false, turn: degrees(180) },
  4: { mirror: true, turn: degrees(180) },
  5: { mirror: true, turn: degrees(-90) },
  6: { mirror: false, turn: degrees(90) },
  7: { mirror: true, turn: degrees(90) },
  8: { mirror: false, turn: degrees(-90) },
}

const known = new WeakMap<Sheet, Aids>()

/** How a sheet is looked at before anybody asks for anything else: as its file says that it lies, and straightened. */
export function startingAids(sheet: Sheet): Aids {
  const before = known.get(sheet)
  if (before !== undefined) return before
  const lies = LIES[sheet.scan.orientation ?? 1] ?? { mirror: false, turn: degrees(0) }
  const turn = sheet.straight === undefined ? lies.turn : turnFor(sheet.straight, lies.mirror)
  const aids = turn === 0 && !lies.mirror ? PLAIN : { ...PLAIN, turn, mirror: lies.mirror }
  known.set(sheet, aids)
  return aids
}

/**
 * The turn, clockwise, that makes level what has a direction on the scan.
 * @param straight as `Sheet.straight`
 */
export const turnFor = (straight: Degrees, mirror: boolean): Degrees =>
  degrees((mirror ? straight : -straight) || 0)

export const sameAids = (a: Aids, b: Aids): boolean =>
  a.turn === b.turn &&
  a.mirror === b.mirror &&
  a.negative === b.negative &&
  a.contrast === b.contrast &&
  a.lift === b.lift
