import type { Page } from 'playwright-core'

/** Two frames on: what was done before is drawn. */
export const twoFrames = (page: Page): Promise<void> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))))
