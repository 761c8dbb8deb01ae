import type { MappingKind } from '../job/model/types.ts'
import { MAPPINGS } from '../mapping/mappings.ts'
import type { Calibration } from './calibrate.ts'
import { CalibrationError } from './calibration-error.ts'
import { solveMapping } from './solve-mapping.ts'

/** A difference of AICc below this is no reason to change a mapping (Burnham & Anderson 2002, section 2.6). */
const WORTH_CHANGING = 2

/**
 * The mapping that AICc prefers over the one in use, when the references are redundant enough to tell.
 * Source: AICc = χ² + 2k + 2k(k + 1)/(n − k − 1) with known variances (Hurvich & Tsai 1989).
 */
export function suggestMapping(calibration: Calibration): { kind: MappingKind; gain: number } | null {
  const { view, used } = calibration
  const own = aicc(calibration, view.mapping.kind)
  if (used.length < 3 || own === null) return null
  let best: { kind: MappingKind; gain: number } | null = null
  for (const kind of Object.keys(MAPPINGS) as MappingKind[]) {
    if (kind === view.mapping.kind) continue
    const other = aicc(calibration, kind)
    if (other === null) continue
    const gain = own - other
    if (gain > Math.max(WORTH_CHANGING, best?.gain ?? 0)) best = { kind, gain }
  }
  return best
}

function aicc({ view, used, dof, closings }: Calibration, kind: MappingKind): number | null {
  const mapping = MAPPINGS[kind]
  const k = mapping.parameters.length
  const n = dof + view.mapping.parameters.length
  if (n - k - 1 <= 0) return null
  try {
    const { chi2 } = solveMapping({ ...view, mapping }, used, undefined, closings)
    return chi2 + 2 * k + (2 * k * (k + 1)) / (n - k - 1)
  } catch (error) {
    if (error instanceof CalibrationError) return null
    throw error
  }
}
