import axe from 'axe-core'
import type { Page } from 'playwright-core'

/** A rule that something does not keep, and where. */
export interface Found {
  rule: string
  what: string
  where: string[]
}

/** What axe-core finds against WCAG 2.2, levels A and AA, and its own best practices; a sentence for each rule. */
export async function violations(page: Page, scene: string): Promise<Found[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source)
  const found = await page.evaluate(async () => {
    const { axe: rules } = window as unknown as { axe: typeof axe }
    const { violations } = await rules.run(document, { resultTypes: ['violations'] })
    return violations.map(({ id, help, nodes }) => ({
      rule: id,
      what: help,
      where: nodes.map(({ target, failureSummary }) => `${target.join(' ')}: ${failureSummary}`),
    }))
  })
  return found.map((one) => ({ ...one, rule: `${scene}: ${one.rule}` }))
}
