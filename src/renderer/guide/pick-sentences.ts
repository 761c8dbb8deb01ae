import type { MarkNeed } from '../../core/job/model/mark-needs.ts'
import { capital } from '../../core/words/capital.ts'
import { isComplete, needsOf, type Picks, wanted } from '../picking/picks.ts'
import { isSlot, isThroughHoles, type Tool, type ToolMeasure } from '../picking/tool.ts'

/** What each measure is called, and what to pick for it. */
export const MEASURE_WORDS: Readonly<Record<ToolMeasure, { label: string; what: string }>> = {
  distance: { label: 'Between points', what: 'Pick one end, then the other, or drag from end to end.' },
  spacing: {
    label: 'Between lines',
    what: 'Square across from one line to another: drag along each, or pick two points on it.',
  },
  diameter: {
    label: 'Diameter',
    what: 'Of a circle: drag across it from rim to rim, or pick three points on it.',
  },
  radius: { label: 'Radius', what: 'Of a circle or an arc: pick three points on it, well apart.' },
  centres: {
    label: 'Between centres',
    what: 'Of two circles: pick three points on the rim of each.',
  },
  angle: {
    label: 'Angle',
    what: 'Between two lines: pick each from where they meet outwards, two points on each.',
  },
  run: { label: 'Length along', what: 'Of a path of straight pieces: pick every bend, then press Enter.' },
  area: { label: 'Area', what: 'Of an outline: pick its corners going round, then press Enter.' },
}

export const HOLES_WORDS = {
  label: 'Bolt circle',
  what: 'Through the middles of three holes or more: pick three points on the rim of each, then press Enter.',
}

export const SLOT_WORDS = {
  label: 'Slot',
  what: 'Its width, its length and between its centres, all at once: pick one round end at its top, then the other, or drag from end to end.',
}

/** What is measured with a tool is called, and what to pick for it. */
export function measureWords(tool: Extract<Tool, { kind: 'measure' }>): { label: string; what: string } {
  if (isSlot(tool)) return SLOT_WORDS
  return isThroughHoles(tool) ? HOLES_WORDS : MEASURE_WORDS[tool.measure]
}

const CORNERS = [
  'Pick a corner of the rectangle.',
  'Go along its width: pick the next corner.',
  'Go on round: pick the third corner.',
  'Pick the last corner.',
]

const onRim = (k: number): string =>
  [
    'Pick a point on the rim',
    'Pick a second point on the rim, well away from it',
    'Pick a third point on the rim',
  ][k] ?? 'Pick a point on the rim'

/** One pick finds a round end; one that was not found so, or is picked by hand, takes two more. */
function endSentence(end: number, picked: number): string {
  if (picked > 0) return `${end === 0 ? 'First end' : 'Second end'}: ${onRim(picked).replace(/^P/, 'p')}.`
  return end === 0
    ? 'Pick one round end, at its top, or drag from end to end.'
    : 'Pick the other round end, at its top.'
}

const onLine = (k: number): string => (k === 0 ? 'pick a point on it' : 'pick another point on it, well away')

/** How many picks the feature that is being picked has so far. */
function picksOfCurrent(picks: Picks): number {
  const current = picks.features.at(-1)
  return current === undefined || current.done || !('pixels' in current) ? 0 : current.pixels.length
}

const AGAIN: Readonly<Record<MarkNeed, readonly string[]>> = {
  point: ['find it again and pick it'],
  line: ['find it again and pick a point on it', 'pick another point on it, well away'],
  circle: [
    'find it again and pick a point on its rim',
    'pick a second point on the rim',
    'pick a third point on the rim',
  ],
  path: ['find it again and pick where it begins', 'pick the next bend, and press Enter at its end'],
  'closed path': [
    'find it again and pick a corner',
    'go round by the same corners, and press Enter at the last',
  ],
}

function againSentence(called: string, need: MarkNeed, current: number): string {
  const sentences = AGAIN[need]
  return `${capital(called)} once more: ${sentences[Math.min(current, sentences.length - 1)]}.`
}

/** What to pick now, in a sentence; empty when nothing is asked for or all is picked. */
export function pickSentence(picks: Picks): string {
  const { tool } = picks
  const need = wanted(picks)
  if (need === null || tool.kind === 'look') return ''
  const current = picksOfCurrent(picks)
  if (tool.kind === 'repeat') return againSentence(tool.called, need, current)
  const feature = picks.features.length - (current > 0 ? 1 : 0)
  const several = needsOf(tool).length > 1
  switch (need) {
    case 'point':
      if (tool.kind === 'common') return 'Pick the place on this picture.'
      if (tool.kind === 'note') {
        return feature === 0 ? 'Pick one corner of what the note is about.' : 'Pick the corner opposite.'
      }
      if (tool.kind === 'figure') {
        return feature === 0 ? 'Drag a box round a figure, or pick its corners.' : 'Pick the corner opposite.'
      }
      if (tool.kind === 'outline') {
        return feature === 0 ? 'Pick one corner of the view.' : 'Pick the corner opposite.'
      }
      if (tool.kind === 'reference' && tool.reference === 'rectangle') return CORNERS[feature] ?? ''
      return feature === 0 ? 'Pick the first end.' : 'Pick the other end.'
    case 'line':
      if (tool.kind === 'straighten') {
        return current === 0
          ? 'Drag along an edge of the sheet or a line that is meant to be level or upright, or pick two points on it.'
          : 'Pick another point on it, well away.'
      }
      return `${feature === 0 ? 'First line' : 'Second line'}: ${onLine(current)}.`
    case 'circle':
      if (isThroughHoles(tool)) {
        const onward = current === 0 && picks.features.length >= needsOf(tool).length
        return `Hole ${feature + 1}: ${onRim(current).replace(/^P/, 'p')}${onward ? ', or press Enter where these are all' : ''}.`
      }
      if (isSlot(tool)) return endSentence(feature, current)
      if (!several) return `${onRim(current)}.`
      return `${feature === 0 ? 'First circle' : 'Second circle'}: ${onRim(current).replace(/^P/, 'p')}.`
    case 'path':
      return current === 0
        ? 'Pick where the run begins.'
        : current === 1
          ? 'Pick the next bend.'
          : 'Pick the next bend, or press Enter to end the run.'
    case 'closed path':
      return current === 0
        ? 'Pick a corner of the outline.'
        : current < 3
          ? 'Go round: pick the next corner.'
          : 'Pick the next corner, or press Enter to close the outline.'
  }
}

/** How far the picks of a tool are: marks settled, and marks that it takes. */
export function pickProgress(picks: Picks): { settled: number; of: number } {
  const settled = picks.features.filter(({ done }) => done).length
  const of = Math.max(needsOf(picks.tool).length, isThroughHoles(picks.tool) ? settled : 0)
  return { settled: isComplete(picks) ? of : settled, of }
}
