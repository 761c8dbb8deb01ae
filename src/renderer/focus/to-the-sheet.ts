import { focusRegion } from './regions.ts'

/** Gives the keyboard back to the sheet once what asked for it is gone. */
export function toTheSheet(): void {
  requestAnimationFrame(() => focusRegion('sheet'))
}
