import type { Locator, Page } from 'playwright-core'
import { boxOf } from './box-of.ts'
import { seePunch } from './see-punch.ts'
import { twoFrames } from './two-frames.ts'

type Place = readonly [x: number, y: number]

export const sheetBox = (page: Page): Locator => page.getByRole('application')

/** What the lens says of the place under the pointer, in pixels of the scan. */
async function lensAt(page: Page, [x, y]: Place): Promise<Place> {
  await page.mouse.move(x, y)
  await twoFrames(page)
  const words = await page.locator('.lens-words').textContent()
  const [, px, py] = /(-?[\d.]+), (-?[\d.]+)/.exec(words ?? '') ?? []
  if (px === undefined || py === undefined) throw new Error(`The lens says no place: ${words}`)
  return [Number(px), Number(py)]
}

const middleOf = async (page: Page): Promise<Place> => {
  const box = await boxOf(sheetBox(page))
  return [box.x + box.width / 2, box.y + box.height / 2]
}

/**
 * Where on the page a pixel of the scan is now, found by going over the sheet with the lens as a person does: three
 * places of it say how the sheet lies, whichever way it is turned. A picking tool must be up.
 */
export async function placeOf(page: Page, [px, py]: Place): Promise<Place> {
  const [mx, my] = await middleOf(page)
  const [ax, ay] = await lensAt(page, [mx, my])
  const [bx, by] = await lensAt(page, [mx + 60, my])
  const [cx, cy] = await lensAt(page, [mx, my + 60])
  const [e, f, g, h] = [(bx - ax) / 60, (cx - ax) / 60, (by - ay) / 60, (cy - ay) / 60]
  const whole = e * h - f * g
  const [dx, dy] = [px - ax, py - ay]
  return [mx + (h * dx - f * dy) / whole, my + (e * dy - g * dx) / whole]
}

/** The whole sheet in sight, by its key. */
export async function wholeSheet(page: Page): Promise<void> {
  await sheetBox(page).focus()
  await page.keyboard.press('w')
}

/**
 * Turns the wheel over a punch until it is large, and looks where its middle is.
 * @param roughly where it is on the scan, to a few pixels
 * @param notches of the wheel, from where the sheet is now
 * @returns where its middle is seen on the page, CSS pixels
 */
export async function closeUp(page: Page, roughly: Place, notches: number): Promise<Place> {
  const [x, y] = await placeOf(page, roughly)
  await page.mouse.move(x, y)
  // What lies under the pointer stays there. All at once, as a wheel that spins: each notch has the sheet drawn anew.
  await page.mouse.wheel(0, -120 * notches)
  // While the sheet moves it is drawn a little less exactly.
  await page.waitForTimeout(200)
  return await seenAt(page, [x, y])
}

/** Half of the square that is looked at, CSS pixels. */
const AROUND = 70

/** Where the middle of the dark spot near a place is seen, once all of it is seen and the picture has come to rest. */
async function seenAt(page: Page, near: Place): Promise<Place> {
  let before = near
  for (let k = 0; k < 40; k++) {
    const [left, top] = [Math.round(before[0]) - AROUND, Math.round(before[1]) - AROUND]
    const clip = { x: left, y: top, width: 2 * AROUND, height: 2 * AROUND }
    const spot = await seePunch(await page.screenshot({ clip, scale: 'css' }))
    const now: Place = spot === undefined ? before : [left + spot[0], top + spot[1]]
    const rests = spot !== undefined && Math.hypot(now[0] - before[0], now[1] - before[1]) < 0.01
    if (rests) return now
    before = now
    await page.waitForTimeout(50)
  }
  throw new Error('The picture of the sheet did not come to rest.')
}
