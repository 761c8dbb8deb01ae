/**
 * Edges of single strokes drawn by librsvg, against what is stated of them, and crossings of centre lines within small holes.
 * Run by `node scripts/run-ts.mjs tests/bench/edges.ts [strokes a class] [seeds]`.
 */
import { edgeOutcomes, told } from '../core/imaging/drawn/edge-trial.ts'
import { holeTrial } from '../core/imaging/drawn/hole-trial.ts'
import { FINISHES } from '../core/imaging/drawn/scanned.ts'

const CASES = Number(process.argv[2] ?? 200)
const SEEDS = Number(process.argv[3] ?? 1)
const RADII = [
  [8, 12],
  [12, 18],
  [18, 30],
] as const

const places = (value: number): number => Number(value.toFixed(3))

const edges: object[] = []
for (const finish of FINISHES) {
  const points: number[] = []
  const lines: number[] = []
  let missed = 0
  for (let i = 0; i < SEEDS; i++) {
    const outcomes = await edgeOutcomes(finish, CASES, 8300 + 10 * i + FINISHES.indexOf(finish))
    points.push(...outcomes.points)
    lines.push(...outcomes.lines)
    missed += outcomes.missed
  }
  for (const [name, errors] of Object.entries({ points, lines })) {
    const { within, rms } = told(errors)
    edges.push({
      class: `${finish}: ${name}`,
      edges: errors.length,
      'within 2 sigma': places(within),
      'rms over sigma': places(rms),
      'missed, of both': missed,
    })
  }
}
console.table(edges)

const holes: object[] = []
for (const finish of FINISHES) {
  for (const radii of RADII) {
    const outcomes = await holeTrial(finish, CASES, 8400 + FINISHES.indexOf(finish), radii)
    const found = outcomes.filter(({ away }) => away !== null)
    const rms = (of: (one: (typeof found)[number]) => number | null) =>
      places(Math.sqrt(found.reduce((sum, one) => sum + (of(one) ?? 0) ** 2, 0) / found.length))
    holes.push({
      class: `${finish}: radius ${radii.join(' to ')} px`,
      cases: outcomes.length,
      'not found': outcomes.length - found.length,
      'rms off, px': rms(({ away }) => away),
      'rms over sigma': rms(({ z }) => z),
    })
  }
}
console.table(holes)
