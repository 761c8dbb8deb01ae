import type { Aids } from './aids.ts'

/** How pictures of a scan are shown: what aids ask for, once it is known whether the scan is light on dark. */
export interface ScanTone {
  /** As CSS has it; empty when there is none. */
  filter: string
  /** How each picture is divided by the ground: as it is, or, for a scan that is light on dark, as its negative. */
  lift: 'plain' | 'negative' | null
}

/**
 * @param dark whether the scan is light on dark
 * @param ground whether its ground is there to divide by
 */
export function scanTone({ negative, contrast, lift }: Aids, dark: boolean, ground: boolean): ScanTone {
  const lifted = lift && ground
  // A sheet that is light on dark is lifted as its negative, and so is negative already.
  const invert = negative !== (lifted && dark)
  return {
    filter: [...(invert ? ['invert(1)'] : []), ...(contrast === 1 ? [] : [`contrast(${contrast})`])].join(
      ' ',
    ),
    lift: lifted ? (dark ? 'negative' : 'plain') : null,
  }
}

/** Whether the sheet as it is shown is light on dark. */
export const isShownDark = (darkScan: boolean, { negative }: Aids): boolean => darkScan !== negative
