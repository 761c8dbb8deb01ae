/**
 * Strokes that have a neighbour 8 to 60 px beside them, drawn by librsvg: how many searches come out on the paper between,
 * on the neighbour, or on nothing. Run by `node scripts/run-ts.mjs tests/bench/paper.ts [cases a class] [seeds]`.
 */
import { gridTrial } from '../core/imaging/drawn/grid-trial.ts'
import { type Landed, together } from '../core/imaging/drawn/landed.ts'
import { pairTrial } from '../core/imaging/drawn/pair-trial.ts'
import { roundTrial } from '../core/imaging/drawn/round-pair.ts'
import { FINISHES, type Finish } from '../core/imaging/drawn/scanned.ts'

const CASES = Number(process.argv[2] ?? 200)
const SEEDS = Number(process.argv[3] ?? 1)

async function ofClass(finish: Finish, blueprint: boolean): Promise<Record<string, Landed>> {
  const all: Record<string, Landed[]> = {}
  const add = (trial: Record<string, Landed>): void => {
    for (const [name, landed] of Object.entries(trial)) all[name] = [...(all[name] ?? []), landed]
  }
  for (let i = 0; i < SEEDS; i++) {
    const seed = 8100 + 100 * i + 2 * FINISHES.indexOf(finish) + (blueprint ? 1 : 0)
    add({ ...(await pairTrial(finish, blueprint, CASES, seed)) })
    add({ ...(await roundTrial(finish, blueprint, Math.ceil(CASES / 4), seed)) })
    add({ crossings: await gridTrial(finish, blueprint, Math.ceil(CASES / 4), seed) })
  }
  return Object.fromEntries(Object.entries(all).map(([name, parts]) => [name, together(parts)]))
}

const rows: object[] = []
for (const finish of FINISHES) {
  for (const blueprint of [false, true]) {
    const trial = await ofClass(finish, blueprint)
    for (const [name, landed] of Object.entries(trial))
      rows.push({ class: `${finish}${blueprint ? ', blueprint' : ''}: ${name}`, ...landed })
  }
}
console.table(rows)
