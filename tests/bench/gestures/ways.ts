import type { Locator, Page } from 'playwright-core'
import type { Hand } from './hand.ts'
import type { Aim, Piece } from './pieces.ts'
import { onScan } from './plate.ts'

type Place = readonly [number, number]

/** How a window is worked in by somebody who knows its sheet of keys. */
export interface Way {
  /** Does one dimension with all that belongs to it, but for what is read off the original. */
  make(piece: Piece): Promise<void>
  read(piece: Piece): Promise<void>
}

const settled = (page: Page) =>
  page.locator('section[aria-label="Table of dimensions"][aria-busy="false"]').waitFor()
const form = (page: Page): Locator => page.getByRole('form', { name: 'What was picked' })

async function kept(page: Page): Promise<void> {
  await form(page).waitFor({ state: 'detached' })
  await settled(page)
}

/** Waits until the strokes under all picks have been looked for. */
async function found(page: Page): Promise<void> {
  await form(page).waitFor()
  await page.waitForTimeout(350)
}

/** Whether a tool that was taken up is still in hand, also while a card lies on the desk. */
async function isInHand(page: Page, tool: string): Promise<boolean> {
  const tools = page.getByRole('radiogroup', { name: 'What to measure' })
  const checked = tools.getByRole('radio', { name: tool, checked: true })
  return (await checked.or(page.locator('.desk-tool')).count()) > 0
}

/** The window that finds strokes only where a pixel of the scan is half a pixel of the screen, and takes a figure on the card. */
export function byCloseUps(hand: Hand): Way {
  const { page } = hand
  const CLOSE = 0.5
  const NOTCH = Math.exp(120 * 0.0018)
  const card = (name: string) => page.getByRole('article', { name: new RegExp(`^Card of ${name}$`) })
  const deskScroll = page.locator('.desk-scroll')

  async function pickAll(places: readonly Place[], close = true): Promise<void> {
    for (const [k, place] of places.entries()) {
      const zoom = await hand.zoom()
      if (close && zoom < CLOSE) {
        await hand.wheel(place, Math.ceil(Math.log(CLOSE / zoom) / Math.log(NOTCH)))
      }
      if (!(await hand.isInSight([place]))) {
        const rest = places.slice(k)
        const box = await hand.sheet()
        const now = await hand.zoom()
        const wide = Math.max(...rest.map(([x]) => x)) - Math.min(...rest.map(([x]) => x))
        const high = Math.max(...rest.map(([, y]) => y)) - Math.min(...rest.map(([, y]) => y))
        const fits = wide * now < box.width - 80 && high * now < box.height - 80
        await hand.drag(fits ? rest : [place])
      }
      await hand.pick(place)
    }
  }

  let last = ''

  async function takeUp(tool: string): Promise<void> {
    if (tool === last && (await isInHand(page, tool))) return
    last = tool
    const tools = page.getByRole('radiogroup', { name: 'What to measure' })
    if ((await tools.count()) === 0) {
      await hand.click(
        page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name: /\bPick$/ }),
      )
    }
    await hand.click(tools.getByText(tool, { exact: true }), deskScroll)
  }

  async function named(piece: Piece): Promise<string> {
    await found(page)
    await hand.write(piece.name)
    if (piece.off > 1) {
      await hand.press('Tab', 2)
      await hand.press(String(piece.off))
    }
    await hand.press('Enter')
    await kept(page)
    return piece.name.toLowerCase().replaceAll(' ', '_')
  }

  async function evidence(name: string, basis: string, write: () => Promise<void>): Promise<void> {
    await card(name).waitFor()
    await hand.click(card(name).getByRole('button', { name: 'Add evidence' }), deskScroll)
    const fresh = page.getByRole('form', { name: 'New evidence' })
    await fresh.waitFor()
    if (basis !== 'Printed') await hand.click(fresh.getByText(basis, { exact: true }), deskScroll)
    if (basis !== 'Printed') await hand.click(fresh.getByRole('textbox').first(), deskScroll)
    await write()
    if (basis === 'Found') await hand.click(fresh.getByRole('button', { name: 'Keep' }), deskScroll)
    else await hand.press('Enter')
    await fresh.waitFor({ state: 'detached' })
    await settled(page)
  }

  return {
    async make(piece) {
      const { picked } = piece
      const written = picked.measure === 'formula' || picked.measure === 'lettered'
      await takeUp(written ? 'Distance' : picked.measure)
      // There is no dimension without picks: for what is not drawn any two places do.
      const places: readonly Aim[] =
        picked.measure === 'lettered' ? [{ at: [60, 100] }, { at: [60, 110] }] : picked.at
      await pickAll(
        places.map(({ at }) => onScan(at)),
        picked.measure !== 'lettered',
      )
      const name = await named(piece)
      if (picked.measure === 'formula') await evidence(name, 'Derived', () => hand.write(picked.formula))
      if (piece.figure !== '') await evidence(name, 'Printed', () => hand.write(piece.figure))
      if (picked.measure === 'lettered') {
        await hand.click(
          card(name)
            .getByRole('button', { name: /^Withdraw .*scaled|^Withdraw .*s1/ })
            .first(),
          deskScroll,
        )
        await page.keyboard.type('no pick')
        hand.did.keys += 'no pick'.length
        await hand.press('Enter')
        await settled(page)
      }
    },
    async read(piece) {
      await evidence(piece.name.toLowerCase().replaceAll(' ', '_'), 'Found', async () => {
        for (const [k, reading] of (piece.readings ?? []).entries()) {
          if (k > 0) await hand.press('Enter')
          await hand.write(reading)
        }
      })
    },
  }
}

const DIGIT = { Distance: '1', Spacing: '2', Diameter: '3', Centres: '5', Angle: '6' } as const

/** Across so small a hole nobody drags, CSS pixels. */
const SHORTEST = 10

/** How many places each mark takes. */
const PLACES = { Distance: 2, Spacing: 2, Diameter: 3, Centres: 3, Angle: 2 } as const

/** What is picked, mark by mark; both ends of a distance are one drag. */
function marksOf(measure: keyof typeof PLACES, aims: readonly Aim[]): Aim[][] {
  const marks: Aim[][] = []
  for (const aim of aims) {
    const last = marks.at(-1)
    const full = last === undefined || last.length === PLACES[measure] || last[0]?.old === true
    if (full || aim.old === true) marks.push([aim])
    else last.push(aim)
  }
  return marks
}

/** The place across the circle through three places from the first of them. */
function opposite([ax, ay]: Place, [bx, by]: Place, [cx, cy]: Place): Place {
  const [dx, dy, ex, ey] = [bx - ax, by - ay, cx - ax, cy - ay]
  const twice = 2 * (dx * ey - dy * ex)
  const [d, e] = [dx * dx + dy * dy, ex * ex + ey * ey]
  return [ax + (2 * (ey * d - dy * e)) / twice, ay + (2 * (dx * e - ex * d)) / twice]
}

/** Of these the lens tells before a pick whether it will lie on a stroke. */
const POINTS: ReadonlySet<string> = new Set(['Distance'])

/** The window that finds strokes from the whole sheet, by digits and with the figure beside the picks. */
export function fromTheWholeSheet(hand: Hand): Way {
  const { page } = hand
  /** Whether the next name and figure are there already. */
  let again = false
  let last = ''
  /** Whether the sheet is seen close to. */
  let close = false

  /** From the whole sheet where the lens sees a stroke; else by a key from close to, and back. */
  async function pick({ at, old }: Aim, crowded: boolean): Promise<void> {
    const place = onScan(at)
    if (close && !(await hand.isInSight([place]))) {
      await hand.press('z')
      close = false
    }
    await hand.over(place)
    if (!close && (crowded || (POINTS.has(last) && !(await hand.seesStroke())))) {
      await hand.press('z')
      await page.waitForTimeout(200)
      close = true
    }
    await hand.pick(place, old === true ? 'Shift' : undefined)
  }

  /** What a drag picks: from end to end, along a line, or across a circle; null where it is to be clicked. */
  function along(aims: readonly Aim[]): [Place, Place] | null {
    const [a, b, c] = aims.map(({ at }) => onScan(at))
    if (a === undefined || b === undefined || aims.some(({ old }) => old === true)) return null
    return c === undefined ? [a, b] : [a, opposite(a, b, c)]
  }

  async function pickMark(aims: readonly Aim[], crowded: boolean): Promise<void> {
    const ends = along(aims)
    const seen = ends !== null && !crowded && !close && (await isLong(ends)) && (await bothSeen(ends))
    if (ends !== null && (seen || (close && (await hand.isInSight(ends))))) await hand.pickAlong(...ends)
    else for (const aim of aims) await pick(aim, crowded)
  }

  /** Whether a drag from one to the other is seen to be one. */
  async function isLong([[ax, ay], [bx, by]]: [Place, Place]): Promise<boolean> {
    return Math.hypot(bx - ax, by - ay) * (await hand.zoom()) > SHORTEST
  }

  /** Whether the lens sees a stroke at both ends; of lines and rims it is known once they are picked. */
  async function bothSeen(ends: [Place, Place]): Promise<boolean> {
    if (!POINTS.has(last)) return true
    for (const end of ends) {
      await hand.over(end)
      if (!(await hand.seesStroke())) return false
    }
    return true
  }

  return {
    async make(piece) {
      const { picked, kind } = piece
      if (picked.measure === 'formula' || picked.measure === 'lettered') {
        await hand.click(page.getByRole('button', { name: 'New dimension…' }))
        const asked = page.getByRole('form', { name: 'New dimension' })
        await asked.waitFor()
        await hand.write(piece.name)
        if (picked.measure === 'formula') {
          await hand.click(asked.getByText('By formula', { exact: true }))
          await hand.click(asked.getByRole('textbox', { name: /^Formula/ }))
          await hand.write(picked.formula)
        } else {
          await hand.click(asked.getByRole('textbox', { name: /^Figure/ }))
          await hand.write(piece.figure)
        }
        await hand.press('Enter')
        await asked.waitFor({ state: 'detached' })
        last = ''
        await settled(page)
        return
      }
      if (picked.measure !== last || !(await isInHand(page, last))) await hand.press(DIGIT[picked.measure])
      last = picked.measure
      for (const aims of marksOf(picked.measure, picked.at)) await pickMark(aims, piece.crowded === true)
      await found(page)
      if (!again) {
        await hand.write(piece.name)
        if (piece.figure !== '') {
          await hand.press('Tab')
          await hand.write(piece.figure)
        }
        if (piece.off > 1 && !/\d+ ×/.test(piece.figure)) {
          await hand.press('Tab', piece.figure === '' ? 2 : 1)
          await hand.press(String(piece.off))
        }
      }
      again = kind === 'alike' && piece.name !== 'Dowel hole 4'
      await hand.press(again ? 'Shift+Enter' : 'Enter')
      await kept(page)
    },
    async read(piece) {
      const name = piece.name.toLowerCase().replaceAll(' ', '_')
      const row = page.getByRole('grid').getByRole('row').filter({ hasText: name }).first()
      await hand.click(row.locator('[data-column="original"]'))
      await hand.write((piece.readings ?? []).join(' '))
      await hand.press('Enter')
      await settled(page)
      // The keyboard is in the table now: the digit gives it back to the sheet.
      last = ''
    },
  }
}
