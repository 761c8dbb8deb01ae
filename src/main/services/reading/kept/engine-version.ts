import { createHash } from 'node:crypto'

/** Changes when figures are found or read another way by the same network. */
const WAY = 3

const PREFIX = 12

let version: Promise<string> | undefined

/** Names what reads figures: what another one read is not taken for its own. */
export function engineVersion(): Promise<string> {
  version ??= named()
  return version
}

async function named(): Promise<string> {
  const { WEIGHTS } = await import('../../../../core/reading/network/weights.ts')
  const { numbers, ...shape } = WEIGHTS
  const hash = createHash('sha256').update(JSON.stringify(shape)).update(numbers).digest('hex')
  return `${WAY}-${hash.slice(0, PREFIX)}`
}
