import { basename } from 'node:path'
import type { Limits } from '../../services/limits/kept-limits.ts'
import type { GivenScan, WantedPage } from '../../services/scans/file/given-scan.ts'
import { scanLocked } from '../../services/scans/file/scan-locked.ts'
import { pageList } from '../../services/scans/intake/page-list.ts'
import { lookInto } from '../../services/scans/reader/read-scan.ts'
import { CliError } from '../words/cli-error.ts'
import { reason } from '../words/cli-words.ts'
import { readPassword } from './read-password.ts'

/** What the person said of the pages of the scans that they give. */
export interface PageChoice {
  pages?: string
  allPages?: true
  dpi?: number
  drawAt?: number
  passwordFile?: string
}

/**
 * Scans with the pages that are wanted of each.
 * @throws CliError when a choice does not suit; ServiceError when a scan can't be read
 */
export async function givenScans(
  paths: readonly string[],
  choice: PageChoice,
  limits: Limits,
): Promise<GivenScan[]> {
  if (choice.pages !== undefined && choice.allPages === true) {
    throw new CliError(reason('usage.pages-and-all-pages'))
  }
  const password = choice.passwordFile === undefined ? undefined : await readPassword(choice.passwordFile)
  const scans: GivenScan[] = []
  for (const path of paths) {
    const scan = { path, called: path, password }
    scans.push({ ...scan, pages: await wantedPages(scan, choice, limits) })
  }
  return scans
}

async function wantedPages(
  scan: GivenScan,
  choice: PageChoice,
  limits: Limits,
): Promise<readonly WantedPage[] | undefined> {
  const { dpi, drawAt } = choice
  const numbers = await pageNumbers(scan, choice, limits)
  if (numbers === undefined && dpi === undefined && drawAt === undefined) return undefined
  return (numbers ?? [undefined]).map((page) => ({ page, dpi, drawnAt: drawAt }))
}

async function pageNumbers(
  scan: GivenScan,
  { pages, allPages }: PageChoice,
  limits: Limits,
): Promise<number[] | undefined> {
  if (pages !== undefined) {
    const numbers = pageList(pages)
    if (numbers === undefined) throw new CliError(reason('usage.no-pages', { pages }))
    return numbers
  }
  if (allPages !== true) return undefined
  const look = await lookInto(scan, 1, { limits, password: scan.password })
  if (look.locked) throw scanLocked(basename(scan.called), false)
  return Array.from({ length: look.pages }, (_, i) => i + 1).filter((page) => !look.leftOut?.includes(page))
}
