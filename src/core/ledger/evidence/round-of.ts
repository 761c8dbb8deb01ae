import type { Dimension, Evidence, Measure } from '../../job/model/types.ts'
import type { Figures } from './figures.ts'

/** Whether a dimension is a diameter or a radius, and what says so. */
export interface RoundOf {
  readonly is: 'diameter' | 'radius'
  readonly by: 'scaled' | 'printed' | 'name'
}

const NAMED: ReadonlyMap<string, RoundOf['is']> = new Map([
  ['od', 'diameter'],
  ['id', 'diameter'],
  ['dia', 'diameter'],
  ['diam', 'diameter'],
  ['diameter', 'diameter'],
  ['bore', 'diameter'],
  ['pcd', 'diameter'],
  ['r', 'radius'],
  ['rad', 'radius'],
  ['radius', 'radius'],
])

/** What measures of round things give; how wide a slot is is lettered as the diameter of its ends is. */
const ROUND_MEASURES: Partial<Record<Measure, RoundOf['is']>> = {
  diameter: 'diameter',
  'slot-width': 'diameter',
  radius: 'radius',
}

/** The one that all of some say; undefined where they differ or say nothing. */
function agreed(all: readonly (RoundOf['is'] | undefined)[]): RoundOf['is'] | undefined {
  const said = new Set(all.filter((one) => one !== undefined))
  const [only] = said
  return said.size === 1 ? only : undefined
}

/** What a dimension is by its evidence but for one piece, otherwise by its name; undefined where nothing says it. */
export function roundOf(
  { name, label, evidence }: Dimension,
  figures: Figures,
  but: Evidence,
): RoundOf | undefined {
  const others = evidence.filter((one) => one !== but && one.withdrawn === undefined)
  const scaled = agreed(
    others.map((one) => (one.basis === 'scaled' ? ROUND_MEASURES[one.measure] : undefined)),
  )
  if (scaled !== undefined) return { is: scaled, by: 'scaled' }
  const printed = agreed(
    others.map((one) => {
      const figure = figures.of(one)
      const of = figure !== undefined && 'of' in figure ? figure.of : undefined
      return of === 'diameter' || of === 'radius' ? of : undefined
    }),
  )
  if (printed !== undefined) return { is: printed, by: 'printed' }
  const words = `${name} ${label}`
    .toLowerCase()
    .replace(/\b([a-z])\.(?=[a-z]\b)/g, '$1')
    .split(/[^a-z]+/)
  const named = agreed(words.map((word) => NAMED.get(word)))
  return named && { is: named, by: 'name' }
}
