/** Views that share the stretch of their sheet: how often their dimensions hold the truth. Run with `node scripts/run-ts.mjs`. */
import { randomStream } from '../../src/core/uncertainty/random.ts'
import { STRETCH_CASES } from '../core/ledger/stretch-cases.ts'
import { heldOnSheets } from '../core/ledger/stretched-sheet.ts'

const SHEETS = 2000

for (const [name, { stretch, sheet }] of Object.entries(STRETCH_CASES)) {
  for (const draughting of [0, 0.13]) {
    const random = randomStream(20261130)
    const held = heldOnSheets(SHEETS, (i) => ({ ...sheet, draughting, stretch: stretch(i, random) }), random)
    const shares = [...held].sort().map(([row, n]) => `${row} ${((100 * n) / SHEETS).toFixed(1)}`)
    console.log(`${name}, draughting ${draughting}: ${shares.join(', ')} %`)
  }
}
