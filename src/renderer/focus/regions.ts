import { focusIn } from './focus-in.ts'

/** The parts of the window between which F6 moves, in order. */
const REGIONS = ['rail', 'sheet', 'table', 'desk'] as const

type Region = (typeof REGIONS)[number]

const find = (region: Region): HTMLElement | null => document.querySelector(`[data-region="${region}"]`)

/** Moves the keyboard into a part of the window; false when it has nothing to focus. */
export function focusRegion(region: Region): boolean {
  const part = find(region)
  return part !== null && focusIn(part)
}

/** Moves the keyboard to the part after the one that has it; `step` −1 to the one before. */
export function focusNextRegion(step: 1 | -1): void {
  const now = REGIONS.findIndex((region) => find(region)?.contains(document.activeElement) === true)
  const from = now === -1 ? (step === 1 ? -1 : 0) : now
  for (let k = 1; k <= REGIONS.length; k++) {
    const region = REGIONS[(from + step * k + REGIONS.length * k) % REGIONS.length]
    if (region !== undefined && focusRegion(region)) return
  }
}
