import axe from 'axe-core'
import type { Page } from 'playwright-core'

/** A rule that something does not keep, and where. */
export interface Found {
  rule: string
  what: string
  where: string[]
}

/** Those of the rules below that go by colours: axe-core's category `cat.color`, but for one of level AAA. */
const OF_COLOURS = ['color-contrast', 'link-in-text-block']

/**
 * What axe-core finds against WCAG 2.2, levels A and AA, and its own best practices; a sentence for each rule.
 * @param rules by name, where only some are asked for
 */
export async function violations(page: Page, scene: string, rules?: readonly string[]): Promise<Found[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source)
  const found = await page.evaluate(async (wanted) => {
    const { axe: looks } = window as unknown as { axe: typeof axe }
    const only = wanted === undefined ? {} : { runOnly: { type: 'rule' as const, values: [...wanted] } }
    const { violations } = await looks.run(document, { resultTypes: ['violations'], ...only })
    return violations.map(({ id, help, nodes }) => ({
      rule: id,
      what: help,
      where: nodes.map(({ target, failureSummary }) => `${target.join(' ')}: ${failureSummary}`),
    }))
  }, rules)
  return found.map((one) => ({ ...one, rule: `${scene}: ${one.rule}` }))
}

/** The same in a light window and in a dark one, which has other colours and nothing else of its own. */
export async function inBothLights(page: Page, scene: string): Promise<Found[]> {
  const found = await violations(page, scene)
  await lit(page, 'dark')
  found.push(...(await violations(page, `${scene}, dark`, OF_COLOURS)))
  await lit(page, 'light')
  return found
}

async function lit(page: Page, colorScheme: 'light' | 'dark'): Promise<void> {
  await page.emulateMedia({ colorScheme })
  await page.locator(`html[data-theme="${colorScheme}"]`).waitFor()
}
