import type { Locator } from 'playwright-core'

/** Where something is on the page, CSS pixels. @throws Error when it is not in sight */
export async function boxOf(what: Locator) {
  const box = await what.boundingBox()
  if (box === null) throw new Error(`${what} is not in sight.`)
  return box
}
