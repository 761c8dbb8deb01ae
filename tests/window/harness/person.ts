import type { Locator, Page } from 'playwright-core'

/** Somebody at the window, by mouse and keyboard; counts what they do. */
export class Person {
  readonly page: Page
  clicks = 0
  keys = 0

  constructor(page: Page) {
    this.page = page
  }

  async click(what: Locator): Promise<void> {
    await what.click()
    this.clicks++
  }

  /** A click at a place of the page, CSS pixels; fractions are kept. */
  async clickAt([x, y]: readonly [number, number]): Promise<void> {
    await this.page.mouse.move(x, y)
    await this.page.mouse.down()
    await this.page.mouse.up()
    this.clicks++
  }

  async press(key: string, times = 1): Promise<void> {
    for (let k = 0; k < times; k++) await this.page.keyboard.press(key)
    this.keys += times
  }

  /** Writes where the keyboard is. */
  async write(text: string): Promise<void> {
    await this.page.keyboard.type(text)
    this.keys += text.length
  }

  /** Puts a text in a field in place of what is there. */
  async fill(field: Locator, text: string): Promise<void> {
    await this.click(field)
    await this.press('Control+a')
    await this.write(text)
  }

  button(name: string | RegExp): Locator {
    return this.page.getByRole('button', { name })
  }

  field(name: string | RegExp): Locator {
    return this.page.getByRole('textbox', { name })
  }

  async station(name: string): Promise<void> {
    const rail = this.page.getByRole('navigation', { name: 'Stations' })
    await this.click(rail.getByRole('button', { name: new RegExp(`\\b${name}$`) }))
  }

  /** Chooses a file when the window asks for one after `act`. */
  async hand(path: string, act: () => Promise<void>): Promise<void> {
    const asked = this.page.waitForEvent('filechooser')
    await act()
    await (await asked).setFiles(path)
  }
}
