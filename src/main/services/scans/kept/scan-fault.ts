import type { Limits } from '../../../../contract/limits.ts'
import type { Sheet } from '../../../../core/job/model/types.ts'
import { nameItemIn } from '../../../../core/words/name-in.ts'
import type { AnyReason } from '../../../../core/words/reason.ts'
import { reason } from '../../words/services-words.ts'
import { tooManyPixels } from '../page/pixel-limit.ts'
import type { SheetScan } from './verify-scans.ts'

/** Why nothing can be done with the pixels of a sheet's scan; undefined when it can. @param found how its file was found */
export function scanFault(sheet: Sheet, found: SheetScan | undefined, limits: Limits): AnyReason | undefined {
  if (found?.state === 'missing' || found?.state === 'changed') return found.problem
  const named = { scan: sheet.scan.file, page: null, sheet: sheet.id }
  const fault =
    found === undefined
      ? reason('pictures.scan-not-checked', named)
      : tooManyPixels(named, sheet.scan, limits)
  return fault && nameItemIn(fault, sheet)
}
