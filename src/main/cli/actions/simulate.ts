import { simulateRow } from '../../../core/ledger/simulate-row.ts'
import { unitSuffix } from '../../../core/ledger/units/plus-minus.ts'
import { readJobFolder } from '../../services/job-folder/read-job-folder.ts'
import { simulatedText } from '../layout/simulated-text.ts'

export interface SimulateOptions {
  simulate: string
  trials: number
  seed: number
}

/**
 * One dimension of a job by Monte Carlo, as text or JSON.
 * @throws ServiceError for a folder that holds no sound job; ScantlingError when there is nothing to simulate
 */
export async function simulated(
  folder: string,
  { simulate: name, trials, seed }: SimulateOptions,
  asJson: boolean,
): Promise<string> {
  const { job } = await readJobFolder(folder)
  const row = simulateRow(job, name, { trials, seed })
  if (asJson) return `${JSON.stringify({ seed, ...row }, null, 2)}\n`
  const kind = job.dimensions.find((d) => d.name === name)?.kind ?? 'length'
  return simulatedText(row, unitSuffix(kind, job.unit))
}
