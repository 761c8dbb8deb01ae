import type { FuzzDesk } from './fuzz-desk.ts'
import { spoiledCopy } from './spoiled-copies.ts'
import { type Outcome, tryCopy } from './try-copy.ts'

/** So many sheets a job may get before the next is begun, for the sake of the time that its scans take to verify. */
const SHEETS_OF_A_JOB = 25

/** Tries copies one after another on one bench. */
export async function tryCopies(
  desk: FuzzDesk,
  numbers: readonly number[],
  told: (outcome: Outcome) => void = () => undefined,
): Promise<Outcome[]> {
  const outcomes: Outcome[] = []
  let folder = ''
  let taken = SHEETS_OF_A_JOB
  for (const number of numbers) {
    if (taken >= SHEETS_OF_A_JOB) {
      folder = await desk.newJob()
      taken = 0
    }
    const outcome = await tryCopy(desk, folder, await spoiledCopy(number))
    if (outcome.taken) taken += 1
    outcomes.push(outcome)
    told(outcome)
  }
  return outcomes
}
