import type { Pixel } from '../../../geometry/frames.ts'
import type { Sheet } from '../../../job/model/types.ts'
import type { AnnotationReason } from '../../../words/annotations.ts'
import { reason } from '../../../words/core-words.ts'
import { sha256OfNi } from '../model/ni-uri.ts'
import { iriOf, isLoose, listOf } from './json-ld.ts'
import { pageOf, regionOf } from './read-selectors.ts'

/** Where a target lies; or the picture that it is on, when no sheet is of that; or why it can't be kept. */
export type TargetPlace =
  | { sheet: Sheet; outline: Pixel[]; remarks: AnnotationReason[] }
  | { elsewhere: string }
  | { problem: AnnotationReason }

function sheetOf(
  sheets: readonly Sheet[],
  sha256: string | null,
  page: number | undefined,
): Sheet | undefined {
  if (sha256 === null) return undefined
  const same = sheets.filter(({ scan }) => scan.sha256.toLowerCase() === sha256)
  if (page !== undefined) return same.find(({ scan }) => scan.page === page)
  return same.find(({ scan }) => scan.page === 1) ?? (same.length === 1 ? same[0] : undefined)
}

/**
 * Where a target of an annotation lies: the sheet of the scan whose SHA-256 it names, at the page that it names, else
 * `other`; and the region, empty when the target is the page as a whole.
 * Source: Web Annotation Data Model, sections 3.2.1, 3.2.3 and 4.2.
 * @param other the sheet for targets on pictures that no sheet is of
 */
export function placeTarget(
  sheets: readonly Sheet[],
  target: unknown,
  other: Sheet | undefined,
): TargetPlace {
  const source = isLoose(target) && target['source'] !== undefined ? target['source'] : target
  const iri = iriOf(source)
  if (iri === undefined) return { problem: reason('annotation.unnamed-target') }
  const [whole = '', fragment = ''] = iri.split('#', 2)
  const selectors = [
    ...listOf(isLoose(target) ? target['selector'] : undefined),
    ...(fragment === '' ? [] : [{ type: 'FragmentSelector', value: fragment }]),
  ]
  const page = pageOf(selectors)
  const sheet = sheetOf(sheets, sha256OfNi(whole), page) ?? other
  if (sheet === undefined) return { elsewhere: page === undefined ? whole : `${whole}, page ${page}` }
  const region = regionOf(selectors, sheet.scan)
  if (region === null) return { sheet, outline: [], remarks: [] }
  return 'problem' in region ? region : { sheet, ...region }
}
