import { randomBytes } from 'node:crypto'
import { mintIds } from '../../../core/job/ids/mint-ids.ts'

/** Gives ids by the system's own randomness. */
export const mint = mintIds(randomBytes)
