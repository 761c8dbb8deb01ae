import { homedir } from 'node:os'
import { join } from 'node:path'
import type { Unit } from '../../../core/job/model/types.ts'
import type { FigureReading } from '../../../core/reading/figure-reading.ts'
import { ScantlingError } from '../../../core/words/scantling-error.ts'
import { placesFor } from '../../services/places/places.ts'
import { type GivenPage, openGivenPage } from '../../services/reading/page/given-page.ts'
import { mustHoldFigure } from '../../services/reading/page/sheet-boxes.ts'
import { FigureReader } from '../../services/reading/process/figure-reader.ts'
import { readBoxes } from '../../services/reading/read-boxes.ts'
import { readWholePage } from '../../services/reading/whole/read-whole-page.ts'
import { OwnTemporary } from '../../services/workbench/own-temporary.ts'
import type { GivenBox } from '../arguments/given-boxes.ts'
import { readPassword } from '../arguments/read-password.ts'
import { CliError } from '../words/cli-error.ts'
import { reason } from '../words/cli-words.ts'
import { settingsLimits } from './settings-limits.ts'

/** How the figures of a scan are read. */
export interface ReadFiguresWith {
  /** From 1; undefined: the first. */
  page: number | undefined
  /** Dots per inch for a page that is drawn. */
  drawAt: number | undefined
  passwordFile: string | undefined
  /** What a bare number means. */
  unit: Unit
}

/**
 * Reads the figures of a page of a scan.
 * @param boxes where they stand, in the order that they come back in; undefined: all of the page are found
 * @throws ServiceError, CliError when the scan or a box does not do
 */
export async function readFigures(
  scan: string,
  boxes: readonly GivenBox[] | undefined,
  { page, drawAt, passwordFile, unit }: ReadFiguresWith,
): Promise<FigureReading[]> {
  const { settings } = placesFor({ platform: process.platform, env: process.env, home: homedir() })
  const password = passwordFile === undefined ? undefined : await readPassword(passwordFile)
  const limits = await settingsLimits().read()
  const temporary = new OwnTemporary(join(settings, 'temporary'))
  const reader = new FigureReader()
  try {
    const given = await openGivenPage(scan, page, drawAt, () => temporary.folder(), { limits, password })
    const context = { unit }
    if (boxes === undefined) return await readWholePage(reader, given, context, limits)
    mustAllHoldFigures(boxes, given)
    const what = { boxes, context, known: [] }
    return (await readBoxes(reader, given.source, what, { page: given.page, limits })).readings
  } finally {
    reader.end()
    await temporary.remove()
  }
}

/** @throws CliError that names the first box that does not do */
function mustAllHoldFigures(boxes: readonly GivenBox[], { size }: GivenPage): void {
  for (const box of boxes) {
    try {
      mustHoldFigure(box, size)
    } catch (error) {
      if (!(error instanceof ScantlingError)) throw error
      const { x, y, width, height } = box
      throw new CliError(
        reason('cli.box-refused', { box: [x, y, width, height].join(','), why: error.reason }),
      )
    }
  }
}
