import type { ConsoleMessage, Page, Request, Response } from 'playwright-core'

/** What went wrong in a page, in words; empty when nothing did. */
export interface Faults {
  readonly found: readonly string[]
  /** What the page says from now on is looked for and no fault: the host is about to be ended under it. */
  forgive(): void
}

/** A request that the page itself gave up, as when a piece of a sheet is no longer in sight. */
const givenUp = (request: Request): boolean => request.failure()?.errorText === 'net::ERR_ABORTED'

/**
 * Writes down everything that a browser reports of a page: messages on its console (the policy's refusals come
 * there), errors nobody caught, requests that failed or were refused.
 */
export function watchFaults(page: Page): Faults {
  const found: string[] = []
  let forgiving = false
  const write = (fault: string): void => {
    if (!forgiving) found.push(fault)
  }
  page.on('console', (message: ConsoleMessage) => write(`console ${message.type()}: ${message.text()}`))
  page.on('pageerror', (error: Error) => write(`uncaught: ${error.stack ?? error.message}`))
  page.on('crash', () => write('the page crashed'))
  page.on('requestfailed', (request: Request) => {
    if (!givenUp(request)) write(`request failed: ${request.url()} (${request.failure()?.errorText})`)
  })
  page.on('response', (response: Response) => {
    if (response.status() >= 400) write(`answered ${response.status()}: ${response.url()}`)
  })
  return {
    found,
    forgive: () => {
      forgiving = true
    },
  }
}
