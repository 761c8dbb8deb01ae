import type { Locator, Page } from 'playwright-core'
import { type Punch, punchAt } from './fixtures/plate.ts'
import { boxOf } from './harness/box-of.ts'
import type { Person } from './harness/person.ts'
import { closeUp, sheetBox } from './harness/sheet-hand.ts'
import { grid, tableSettled } from './harness/table-in-window.ts'

/** One of a few that stand side by side, where it is pressed. */
export const oneOf = (page: Page, group: string, name: string): Locator =>
  page.getByRole('radiogroup', { name: group }).getByText(name, { exact: true })

/** Takes a tool up; one that is in hand stays there. */
async function takeUp(person: Person, group: string, name: string): Promise<void> {
  const { page } = person
  const inHand = page.getByRole('radiogroup', { name: group }).getByRole('radio', { name, checked: true })
  if ((await inHand.count()) === 0) await person.click(oneOf(page, group, name))
}

/** From the whole sheet in sight to a punch that fills a good part of what is looked at. */
const NOTCHES = 12

/** Chooses a dimension in the table, and waits for its card. */
export async function openCard(person: Person, name: string): Promise<Locator> {
  await tableSettled(person.page)
  await person.click(grid(person.page).getByText(name, { exact: true }))
  const opened = person.page.getByRole('article', { name: `Card of ${name}` })
  await opened.waitFor()
  return opened
}

/** The desk beside the sheet. */
export const desk = (page: Page): Locator => page.getByRole('complementary')

/** Waits until a sheet is on the bench with all its pictures made. */
export async function sheetReady(page: Page): Promise<void> {
  await sheetBox(page).waitFor()
  await page.locator('[data-region="sheet"][data-pictures="ready"]').waitFor()
  await page.getByRole('region', { name: 'Work going on' }).waitFor({ state: 'detached' })
}

/** Waits until a scan's pages are offered, each with its picture. */
export async function pagesSeen(page: Page, howMany: number): Promise<void> {
  await page
    .getByRole('dialog', { name: /^Pages of/ })
    .getByRole('row')
    .nth(howMany - 1)
    .waitFor()
  await page.waitForFunction((all) => {
    const seen = [...document.querySelectorAll<HTMLImageElement>('.page-tile img')]
    return seen.length === all && seen.every(({ complete, naturalWidth }) => complete && naturalWidth > 0)
  }, howMany)
}

/** Waits until the keyboard is on the sheet, where it goes by itself once a tool is taken up. */
export async function onSheet(page: Page): Promise<void> {
  await page.waitForFunction(() => document.activeElement?.getAttribute('role') === 'application')
}

/**
 * Presses the mouse where a punch is seen, close to.
 * @param old whether the mark that lies there is meant
 */
export async function pickPunch(
  person: Person,
  punch: Punch,
  { notches = NOTCHES, old = false }: { notches?: number; old?: boolean } = {},
): Promise<void> {
  const { page } = person
  await onSheet(page)
  await person.press('w')
  const place = await closeUp(page, punchAt(punch), notches)
  if (old) await page.keyboard.down('Shift')
  await person.clickAt(place)
  if (old) await page.keyboard.up('Shift')
}

/** The form that comes up once all is picked, ready to be written in. */
async function formUp(page: Page, name: string): Promise<void> {
  await page.getByRole('form', { name }).waitFor()
}

/** Picks two punches and says how far they are apart. */
export async function knownSize(person: Person, ends: [Punch, Punch], size: string): Promise<void> {
  const { page } = person
  await takeUp(person, 'Add a figured size', 'Two points')
  for (const end of ends) await pickPunch(person, end)
  await formUp(page, 'Figured size')
  await person.write(size)
  await person.press('Enter')
  await page.getByRole('form', { name: 'Figured size' }).waitFor({ state: 'detached' })
}

/**
 * Picks two punches, and gives what lies between them a name.
 * @param old those of them whose marks are there and are meant
 */
export async function newDistance(
  person: Person,
  ends: [Punch, Punch],
  label: string,
  old: readonly Punch[] = [],
): Promise<void> {
  const { page } = person
  await takeUp(person, 'What to measure', 'Between points')
  for (const end of ends) await pickPunch(person, end, { old: old.includes(end) })
  await formUp(page, 'What was picked')
  await person.write(label)
  await person.press('Enter')
  await page.getByRole('form', { name: 'What was picked' }).waitFor({ state: 'detached' })
  await tableSettled(page)
}

/** Names all of the sheet as one view. */
export async function nameWholeSheet(person: Person, name: string, scale: string): Promise<void> {
  const { page } = person
  await person.click(person.button('The whole sheet is one view'))
  await formUp(page, 'Name the view')
  await person.write(name)
  await person.press('Tab')
  await person.write(scale)
  await person.press('Enter')
  await page.getByRole('form', { name: 'Name the view' }).waitFor({ state: 'detached' })
}

/** Draws a rectangle on the sheet, corner to corner, and names what is in it as a view. */
export async function nameOutlined(person: Person, name: string, scale: string): Promise<void> {
  const { page } = person
  await person.click(person.button('Name a view'))
  await onSheet(page)
  await person.press('w')
  const box = await boxOf(sheetBox(page))
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  // The sheet as a whole is as high as the box, a little border aside, and four by three.
  const [half, up] = [(box.height - 60) * (2 / 3), (box.height - 60) / 2]
  await page.mouse.move(x - half, y - up)
  await page.mouse.down()
  await page.mouse.move(x, y, { steps: 4 })
  await page.mouse.move(x + half, y + up, { steps: 4 })
  await page.mouse.up()
  person.clicks++
  await formUp(page, 'Name the view')
  await person.write(name)
  await person.press('Tab')
  await person.write(scale)
  await person.press('Enter')
  await page.getByRole('form', { name: 'Name the view' }).waitFor({ state: 'detached' })
}

/** Names somebody whom the job does not list as the one at work. */
export async function workAs(person: Person, name: string): Promise<void> {
  await person.click(person.button(/^At work/))
  await person.click(person.page.getByText('Somebody else…'))
  await person.field('Name').waitFor()
  await person.write(name)
  await person.press('Enter')
  await atWork(person, name).waitFor()
}

/** The button that says who is at work, where that is whoever is named. */
export const atWork = (person: Person, name: string): Locator =>
  person.button(new RegExp(`^At work.*${name}`))
