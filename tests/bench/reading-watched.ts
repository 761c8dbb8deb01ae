import type { Page } from 'playwright-core'

/** How the reading of a sheet stands in the window. */
export type Standing = 'unread' | 'reading' | 'stopped' | 'failed' | 'ready'

/** What was seen of it, each moment in the page's milliseconds. */
export interface Seen {
  /** When each state was first seen after the one before. */
  states: { is: Standing; at: number }[]
  /** Rows of the list, whenever there were more or fewer. */
  rows: { count: number; at: number }[]
  /** Presses of the mouse on a button. */
  presses: { on: string; at: number }[]
  /** Milliseconds from one frame to the next, since `restart`. */
  gaps: number[]
}

/** Milliseconds between two looks at the list: what is told of it is exact to that. */
const LOOKS = 40

/** Runs in the page before anything else. */
const WATCH = `
  const seen = { states: [], rows: [], presses: [], gaps: [] }
  window.readingSeen = seen
  let before
  const frame = (now) => {
    if (before !== undefined) seen.gaps.push(now - before)
    before = now
    requestAnimationFrame(frame)
  }
  requestAnimationFrame(frame)
  addEventListener('click', ({ target }) => {
    const on = target instanceof Element ? target.closest('button')?.textContent : undefined
    if (on) seen.presses.push({ on, at: performance.now() })
  }, true)
  const note = (list, key, value) => {
    if (list.at(-1)?.[key] !== value) list.push({ [key]: value, at: performance.now() })
  }
  setInterval(() => {
    const rows = document.querySelectorAll('.found-row').length
    const buttons = [...document.querySelectorAll('.whole-sheet-going button')].map((one) => one.textContent)
    const is = document.querySelector('.whole-sheet-going [data-failed]') !== null ? 'failed'
      : buttons.some((text) => text?.includes('Stop reading')) ? 'reading'
      : buttons.some((text) => text?.includes('Go on reading')) ? 'stopped'
      : rows > 0 ? 'ready' : 'unread'
    note(seen.rows, 'count', rows)
    note(seen.states, 'is', is)
  }, ${LOOKS})`

export const watchReading = (page: Page): Promise<unknown> => page.addInitScript(WATCH)

export const seenOfReading = async (page: Page): Promise<Seen> =>
  (await page.evaluate('window.readingSeen')) as Seen

/** Frames are counted anew from here. */
export const restartFrames = (page: Page): Promise<unknown> =>
  page.evaluate('window.readingSeen.gaps.length = 0')

/** @returns when it was seen; waits for it. @throws Error when the reading fails */
export async function untilSeen(
  page: Page,
  what: (seen: Seen) => number | undefined,
  patience: number,
  meanwhile: () => Promise<void> = () => page.waitForTimeout(LOOKS),
): Promise<number> {
  for (const end = Date.now() + patience; Date.now() < end; await meanwhile()) {
    const seen = await seenOfReading(page)
    const at = what(seen)
    if (at !== undefined) return at
    if (seen.states.at(-1)?.is === 'failed') {
      throw new Error(
        `The reading failed: ${await page.locator('.whole-sheet-going [data-failed]').textContent()}`,
      )
    }
  }
  throw new Error(`Not seen within ${patience / 1000} s.`)
}
