import { called } from '../../core/job/ids/label.ts'
import type { MarkNeed } from '../../core/job/model/mark-needs.ts'
import type { Job, Mark } from '../../core/job/model/types.ts'
import { lastPixel, type Picks, wanted } from './picks.ts'
import { isSlot, isThroughHoles, type Tool } from './tool.ts'

const ORDINALS = ['First', 'Second', 'Third', 'Fourth']
const ordinal = (i: number): string => ORDINALS[i] ?? `${i + 1}th`

/** What each thing that a tool asks for is called, in its order. */
function partNames(tool: Tool): string[] {
  switch (tool.kind) {
    case 'look':
      return []
    case 'outline':
    case 'note':
    case 'figure':
      return ['First corner', 'Opposite corner']
    case 'straighten':
      return ['Line to square up by']
    case 'common':
      return ['Place on both pictures']
    case 'repeat':
      return ['Once more']
    case 'reference':
      if (tool.reference === 'distance') return ['First end', 'Second end']
      if (tool.reference === 'diameter') return ['Circle']
      return ['First corner', 'Second corner', 'Third corner', 'Fourth corner']
    case 'measure':
      if (isSlot(tool)) return ['First end', 'Second end']
      switch (tool.measure) {
        case 'distance':
          return ['First end', 'Second end']
        case 'spacing':
        case 'angle':
          return ['First line', 'Second line']
        case 'centres':
          return ['First circle', 'Second circle']
        case 'diameter':
        case 'radius':
          return ['Circle']
        case 'run':
          return ['Path']
        case 'area':
          return ['Outline']
      }
  }
}

/** What a thing is called that a tool asks for, by its place from 0. */
export const partName = (tool: Tool, part: number): string =>
  isThroughHoles(tool) ? `${ordinal(part)} hole` : (partNames(tool)[part] ?? ordinal(part))

/** What one pick of a part is called: `First end`, `Circle, second point`. */
function pickName(tool: Tool, part: number, need: MarkNeed, pick: number): string {
  const name = partName(tool, part)
  const isOne = need === 'point' || (isSlot(tool) && pick === 0)
  return isOne ? name : `${name}, ${ordinal(pick).toLowerCase()} point`
}

/** What the next pick is; null when nothing is wanted. */
export function nextPickName(picks: Picks): string | null {
  const need = wanted(picks)
  if (need === null) return null
  const current = picks.features.at(-1)
  const open = current !== undefined && !current.done && 'pixels' in current
  const part = open ? picks.features.length - 1 : picks.features.length
  return pickName(picks.tool, part, need, open ? current.pixels.length : 0)
}

/** What a mark of a job is called: `circle 12`, `mark M12`. */
export const markCalled = (id: string, marks: readonly Mark[]): string =>
  called('mark', marks.find((mark) => mark.id === id) ?? { id })

/** A mark with what rests on it, so that a person knows it: `circle 12 of “Drum, bore”`. */
export function markWithUse(id: string, job: Job | undefined): string {
  const rests = job?.dimensions.find(({ evidence }) =>
    evidence.some((piece) => piece.basis === 'scaled' && piece.marks.includes(id)),
  )
  const called = markCalled(id, job?.marks ?? [])
  return rests === undefined ? called : `${called} of “${rests.label || rests.name}”`
}

/**
 * The newest pick and where it is, `First end at 1204.3, 880.1`; empty when nothing is picked.
 * @param marks of the job
 */
export function lastPickInWords(picks: Picks, marks: readonly Mark[]): string {
  const current = picks.features.at(-1)
  if (current === undefined) return ''
  const part = picks.features.length - 1
  if ('mark' in current) {
    return `${partName(picks.tool, part)}: ${markCalled(current.mark, marks)}`
  }
  const at = lastPixel(picks)
  const name = pickName(picks.tool, part, current.need, current.pixels.length - 1)
  return at === null ? name : `${name} at ${placeInWords(at)}`
}

/** A place on the scan to a tenth of a pixel. */
export const placeInWords = ([x, y]: readonly [number, number]): string => `${x.toFixed(1)}, ${y.toFixed(1)}`

/** What the tool in hand is called. */
export function toolName(tool: Tool): string {
  switch (tool.kind) {
    case 'look':
      return 'looking'
    case 'outline':
      return 'outline of a view'
    case 'note':
      return 'region of a note'
    case 'figure':
      return 'box round a figure'
    case 'straighten':
      return 'square up the sheet'
    case 'common':
      return 'places on both pictures'
    case 'repeat':
      return `${tool.called} once more`
    case 'reference':
      return tool.reference === 'distance'
        ? 'figured size between two points'
        : tool.reference === 'diameter'
          ? 'figured size across a circle'
          : 'figured rectangle'
    case 'measure':
      if (isSlot(tool)) return 'measure: slot'
      return isThroughHoles(tool) ? 'measure: bolt circle' : `measure: ${tool.measure}`
  }
}
