import type { Mint } from '../ids/mint-ids.ts'
import { newIdentity } from '../ids/new-identity.ts'
import type { Evidence } from '../model/types.ts'

/**
 * The figure that is printed on a sheet for what was picked there, as evidence; none where none was written down.
 * @param others evidence of the same dimension
 */
export const printedBeside = (
  text: string | undefined,
  sheet: string | undefined,
  others: readonly Evidence[],
  mint: Mint,
): Evidence[] =>
  text === undefined
    ? []
    : [
        {
          ...newIdentity('printed', others, mint),
          basis: 'printed',
          text,
          legibility: 'clear',
          ...(sheet === undefined ? {} : { sheet }),
        },
      ]
