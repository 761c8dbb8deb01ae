import { reason } from '../../../words/core-words.ts'
import { isLoose, isOf, type Loose, listOf, textOf } from './json-ld.ts'
import { type Fragment, readFragment, regionOutline } from './read-fragment.ts'
import { type Region, readSvgOutline } from './svg/read-svg-outline.ts'

/** Selectors nested deeper than any sound annotation has them are not followed. */
const DEEPEST = 8

const fragmentOf = (selector: Loose): Fragment =>
  readFragment((textOf(selector['value']) ?? '').replace(/^#/, ''))

/** The page that the selectors of a target name, as far as they do. */
export function pageOf(selectors: readonly unknown[], depth = 0): number | undefined {
  for (const selector of selectors) {
    if (!isLoose(selector) || depth > DEEPEST) continue
    const own = isOf(selector, 'FragmentSelector') ? fragmentOf(selector).page : undefined
    const page = own ?? pageOf(listOf(selector['refinedBy']), depth + 1)
    if (page !== undefined) return page
  }
  return undefined
}

/**
 * The region of the first selector that is understood; null when none says more than the page.
 * Source: Web Annotation Data Model, section 4.2.
 */
export function regionOf(
  selectors: readonly unknown[],
  page: { width: number; height: number },
  depth = 0,
): Region | null {
  let problem: Region | null = null
  for (const selector of selectors) {
    const region = depth > DEEPEST ? null : regionOfOne(selector, page, depth)
    if (region !== null && 'outline' in region) return region
    problem ??= region
  }
  return problem
}

function regionOfOne(
  selector: unknown,
  page: { width: number; height: number },
  depth: number,
): Region | null {
  if (!isLoose(selector)) return { problem: reason('annotation.selector-elsewhere') }
  if (isOf(selector, 'FragmentSelector')) {
    const { region, others, page: named } = fragmentOf(selector)
    const refined = listOf(selector['refinedBy'])
    if (refined.length > 0 && region === undefined) return regionOf(refined, page, depth + 1)
    if (region !== undefined) return { outline: regionOutline(region, page), remarks: [] }
    return named === undefined || others.length > 0
      ? { problem: reason('annotation.unknown-fragment', { fragment: others.join('&') }) }
      : null
  }
  if (isOf(selector, 'SvgSelector')) {
    const svg = textOf(selector['value'] ?? selector['chars'])
    return svg === undefined ? { problem: reason('annotation.region-elsewhere') } : readSvgOutline(svg, page)
  }
  return { problem: reason('annotation.unknown-selector', { type: textOf(selector['type']) ?? null }) }
}
