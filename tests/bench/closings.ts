/** Figured sizes that close on themselves: how often they are refused, misfit and cover. Run by `npm run bench`. */
import type { MappingKind } from '../../src/core/job/model/types.ts'
import { MAPPINGS } from '../../src/core/mapping/mappings.ts'
import { randomStream } from '../../src/core/uncertainty/random.ts'
import { CLOSING_CASES } from '../core/calibration/closing-cases.ts'
import { closingTrials } from '../core/calibration/closing-trials.ts'

const SHEETS = 400
const SEEDS = [1, 2, 3, 4, 5]

const percent = (count: number, of: number): string => ((100 * count) / of).toFixed(1)

console.log(`figured sizes that close, ${SHEETS} sheets and seeds ${SEEDS.join(', ')} a line:`)
console.log('refused / dof wrong / figures open / p < 0.05 in % of each seed / dimension held in %')
for (const name of CLOSING_CASES) {
  for (const kind of Object.keys(MAPPINGS) as MappingKind[]) {
    for (const draughting of [0, 0.13]) {
      const runs = SEEDS.map((seed) => closingTrials(name, kind, draughting, SHEETS, randomStream(seed)))
      const sum = (of: 'refused' | 'wrongDof' | 'open' | 'held' | 'misfit'): number =>
        runs.reduce((s, run) => s + run[of], 0)
      const n = SHEETS * SEEDS.length
      console.log(
        `${name}, ${kind}, draughting ${draughting}: ${sum('refused')} / ${sum('wrongDof')} / ${sum('open')} / ` +
          `${percent(sum('misfit'), n)} (${runs.map((r) => percent(r.misfit, SHEETS)).join(' ')}) / ` +
          `${percent(sum('held'), 2 * n)} (${runs.map((r) => percent(r.held, 2 * SHEETS)).join(' ')})`,
      )
    }
  }
}
