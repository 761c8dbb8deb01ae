import type { Pixel } from '../../../geometry/frames.ts'
import type { Job, Sheet } from '../../../job/model/types.ts'
import { sha256OfNi } from '../model/ni-uri.ts'
import { iriOf, isLoose, isOf, type Loose, listOf, textOf } from './json-ld.ts'
import { readFragment, regionOutline } from './read-fragment.ts'
import { readSvgOutline } from './svg/read-svg-outline.ts'

/** Where a target lies; or the picture that it is on, when no sheet is of that; or why it can't be kept. */
export type Placed =
  | { sheet: Sheet; outline: Pixel[]; remarks: string[] }
  | { elsewhere: string }
  | { problem: string }

/** Selectors nested deeper than any sound annotation has them are not followed. */
const DEEPEST = 8

/** The page that the selectors of a target name, as far as they do. */
function pageOf(selectors: readonly unknown[], depth = 0): number | undefined {
  for (const selector of selectors) {
    if (!isLoose(selector) || depth > DEEPEST) continue
    const own = isOf(selector, 'FragmentSelector') ? readFragment(fragmentText(selector)).page : undefined
    const page = own ?? pageOf(listOf(selector['refinedBy']), depth + 1)
    if (page !== undefined) return page
  }
  return undefined
}

const fragmentText = (selector: Loose): string => (textOf(selector['value']) ?? '').replace(/^#/, '')

type Region = { outline: Pixel[]; remarks: string[] } | { problem: string }

/** The region of the first selector that is understood; null when none says more than the page. */
function regionOf(selectors: readonly unknown[], page: Sheet['scan'], depth = 0): Region | null {
  let problem: Region | null = null
  for (const selector of selectors) {
    const region = depth > DEEPEST ? null : regionOfOne(selector, page, depth)
    if (region !== null && 'outline' in region) return region
    problem ??= region
  }
  return problem
}

function regionOfOne(selector: unknown, page: Sheet['scan'], depth: number): Region | null {
  if (!isLoose(selector)) return { problem: 'its selector is kept elsewhere' }
  const refined = listOf(selector['refinedBy'])
  if (isOf(selector, 'FragmentSelector')) {
    const { region, others, page: named } = readFragment(fragmentText(selector))
    if (refined.length > 0 && region === undefined) return regionOf(refined, page, depth + 1)
    if (region !== undefined) return { outline: regionOutline(region, page), remarks: [] }
    return named === undefined || others.length > 0
      ? { problem: `its fragment “${others.join('&')}” is not understood here` }
      : null
  }
  if (isOf(selector, 'SvgSelector')) {
    const svg = textOf(selector['value'] ?? selector['chars'])
    return svg === undefined ? { problem: 'its region is kept elsewhere' } : readSvgOutline(svg, page)
  }
  const type = textOf(selector['type'])
  return { problem: `its ${type ?? 'selector'} does not select a region of a picture` }
}

function sheetOf(job: Job, sha256: string | null, page: number | undefined): Sheet | undefined {
  if (sha256 === null) return undefined
  const sheets = job.sheets.filter(({ scan }) => scan.sha256.toLowerCase() === sha256)
  if (page !== undefined) return sheets.find(({ scan }) => scan.page === page)
  return sheets.find(({ scan }) => scan.page === 1) ?? (sheets.length === 1 ? sheets[0] : undefined)
}

/**
 * Where a target of an annotation lies in a job: the sheet of the scan whose SHA-256 it names, at the page that it
 * names, else `other`; and the region, empty when the target is the page as a whole.
 * Source: Web Annotation Data Model, sections 3.2.1, 3.2.3 and 4.2.
 * @param other the sheet for targets on pictures that no sheet is of
 */
export function placeTarget(job: Job, target: unknown, other: Sheet | undefined): Placed {
  const source = isLoose(target) && target['source'] !== undefined ? target['source'] : target
  const iri = iriOf(source)
  if (iri === undefined) return { problem: 'it does not say what it is about' }
  const [whole = '', fragment = ''] = iri.split('#', 2)
  const selectors = [
    ...listOf(isLoose(target) ? target['selector'] : undefined),
    ...(fragment === '' ? [] : [{ type: 'FragmentSelector', value: fragment }]),
  ]
  const page = pageOf(selectors)
  const sheet = sheetOf(job, sha256OfNi(whole), page) ?? other
  if (sheet === undefined) return { elsewhere: page === undefined ? whole : `${whole}, page ${page}` }
  const region = regionOf(selectors, sheet.scan)
  if (region === null) return { sheet, outline: [], remarks: [] }
  return 'problem' in region ? region : { sheet, ...region }
}
