import chromium from '@sparticuz/chromium'
import { type Browser, chromium as playwright } from 'playwright-core'

/**
 * The packaged headless browser. Of the package's own arguments only those that a machine without a display and
 * without a sandbox needs are given: others take away the rules between pages, which are part of what is tested.
 */
export async function openBrowser(): Promise<Browser> {
  return await playwright.launch({
    executablePath: await chromium.executablePath(),
    headless: true,
    chromiumSandbox: false,
    args: ['--font-render-hinting=none', '--force-color-profile=srgb', '--disable-gpu'],
  })
}
