import type { MappingKind } from '../job/model/types.ts'
import { MAPPINGS } from '../mapping/mappings.ts'
import type { Calibration } from './calibrate.ts'
import { CalibrationError } from './calibration-error.ts'
import type { Closing } from './closings.ts'
import type { StatedSize } from './reference.ts'
import { solveMapping } from './solve-mapping.ts'
import { isLength } from './stretch.ts'

/** A difference of AICc below this is no reason to change a mapping (Burnham & Anderson 2002, section 2.6). */
const WORTH_CHANGING = 2

/**
 * The mapping that AICc prefers over the one in use, when the references are redundant enough to tell.
 * @param stretch of the sheet, as its other views know it: a mapping with one scale is to come to it as well
 * Source: AICc = χ² + 2k + 2k(k + 1)/(n − k − 1) with known variances (Hurvich & Tsai 1989).
 */
export function suggestMapping(
  calibration: Calibration,
  stretch?: StatedSize,
): { kind: MappingKind; gain: number } | null {
  const { view } = calibration
  const used = stretch === undefined ? calibration.used : [...calibration.used.filter(isLength), stretch]
  const own = aicc(calibration, used, view.mapping.kind)
  if (used.filter(isLength).length < 3 || own === null) return null
  let best: { kind: MappingKind; gain: number } | null = null
  for (const kind of Object.keys(MAPPINGS) as MappingKind[]) {
    if (kind === view.mapping.kind) continue
    const other = aicc(calibration, used, kind)
    if (other === null) continue
    const gain = own - other
    if (gain > Math.max(WORTH_CHANGING, best?.gain ?? 0)) best = { kind, gain }
  }
  return best
}

function aicc(
  { view, closings }: Calibration,
  used: readonly StatedSize[],
  kind: MappingKind,
): number | null {
  const mapping = MAPPINGS[kind]
  const k = mapping.parameters.length
  const equations = used.reduce((sum, size) => sum + size.equations.length, 0)
  // The stretch of the sheet is to be come to, but lends no length to tell a mapping by.
  const n = equations - used.filter((size) => !isLength(size)).length - closings.length
  if (n - k - 1 <= 0) return null
  try {
    const { chi2 } = solveMapping({ ...view, mapping }, used, undefined, {
      closings: widened(closings, equations),
    })
    return chi2 + 2 * k + (2 * k * (k + 1)) / (n - k - 1)
  } catch (error) {
    if (error instanceof CalibrationError) return null
    throw error
  }
}

/** Closings of fewer equations: what came after them stands in none. */
const widened = (closings: readonly Closing[], equations: number): Closing[] =>
  closings.map((closing) => ({
    ...closing,
    factors: Array.from({ length: equations }, (_, i) => closing.factors[i] ?? 0),
  }))
