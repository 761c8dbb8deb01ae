import type { Locator, Page } from 'playwright-core'
import type { Person } from './person.ts'
import { twoFrames } from './two-frames.ts'

/** More than there are stops in any part of the window. */
const STOPS = 150

/** From now on any use of the mouse is a fault of the test. */
export function withoutMouse(page: Page): void {
  const refused = (): never => {
    throw new Error('This story is done by the keyboard alone.')
  }
  Object.assign(page.mouse, { click: refused, move: refused, down: refused, up: refused, wheel: refused })
}

const hasKeyboard = (what: Locator): Promise<boolean> =>
  what.evaluateAll((found) => found.some((element) => element === document.activeElement))

/** Goes on with Tab until the keyboard is at something. */
export async function tabTo(person: Person, what: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  await what.first().waitFor()
  for (let stop = 0; stop < STOPS; stop++) {
    if (await hasKeyboard(what)) return
    await person.press(key)
  }
  throw new Error(`The keyboard does not come to ${what}.`)
}

/** Presses a button by going to it and pressing Enter. */
export async function pressBy(person: Person, what: Locator, key?: 'Tab' | 'Shift+Tab'): Promise<void> {
  await tabTo(person, what, key)
  await person.press('Enter')
}

/** Goes on with F6 until the keyboard is in a part of the window that holds something. */
export async function toPart(person: Person, inPart: Locator): Promise<void> {
  for (let part = 0; part < 5; part++) {
    await person.press('F6')
    const there = await inPart.evaluateAll((found) =>
      found.some((element) => element.contains(document.activeElement)),
    )
    if (there) return
  }
  throw new Error(`F6 does not come to ${inPart}.`)
}

/** Writes over what a field holds. */
export async function overwrite(person: Person, text: string): Promise<void> {
  await person.press('Control+a')
  await person.write(text)
}

/**
 * What the sheet says of its cross to those who do not see it, pixels of the scan. It is said when nothing has moved
 * for a third of a second; the lens shows at once where the cross is, and so when what is said has caught up.
 */
async function crossAt(page: Page): Promise<[number, number]> {
  await twoFrames(page)
  const said = await page.waitForFunction(
    () => {
      const shown = document.querySelector('.lens-words > span')?.textContent ?? ''
      const places = [...document.querySelectorAll('[role="status"]')].map(
        (status) => /\bCross at (-?[\d.]+, -?[\d.]+)/.exec(status.textContent ?? '')?.[1],
      )
      return shown !== '' && places.includes(shown) ? shown : undefined
    },
    undefined,
    { polling: 50 },
  )
  const [x, y] = String(await said.jsonValue()).split(', ')
  return [Number(x), Number(y)]
}

const arrow = (axis: 0 | 1, way: number): string =>
  axis === 0 ? (way < 0 ? 'ArrowLeft' : 'ArrowRight') : way < 0 ? 'ArrowUp' : 'ArrowDown'

/** Moves the cross to a pixel of the scan by arrow keys, listening where it is, and picks there; with Shift the old mark. */
export async function pickByCross(
  person: Person,
  to: readonly [number, number],
  key: 'p' | 'Shift+P' = 'p',
): Promise<void> {
  const { page } = person
  // One step that is not fine takes the keys from the last pick to the cross.
  await person.press('Control+ArrowLeft')
  const before = await crossAt(page)
  await person.press('Control+ArrowLeft')
  const stride = before[0] - (await crossAt(page))[0]
  for (const axis of [0, 1] as const) {
    for (const [chord, step] of [
      ['Control+', stride],
      ['Shift+', 1],
      ['', 0.1],
    ] as const) {
      const far = to[axis] - (await crossAt(page))[axis]
      await person.press(`${chord}${arrow(axis, far)}`, Math.round(Math.abs(far) / step))
    }
  }
  await person.press(key)
}
