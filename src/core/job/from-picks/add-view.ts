import { type Pixel, pixel } from '../../geometry/frames.ts'
import type { Edit } from '../edits/edit.ts'
import type { Mint } from '../ids/mint-ids.ts'
import { newIdentity } from '../ids/new-identity.ts'
import type { Job, View } from '../model/types.ts'

/** The outline that two opposite corners give, in whole pixels and kept on its page. */
export function outlineBetween(
  [ax, ay]: Pixel,
  [bx, by]: Pixel,
  page: { width: number; height: number },
): Pixel[] {
  const held = (value: number, most: number): number => Math.round(Math.min(most, Math.max(0, value)))
  const [x0, x1, y0, y1] = [
    held(ax, page.width),
    held(bx, page.width),
    held(ay, page.height),
    held(by, page.height),
  ]
  const [left, right] = [Math.min(x0, x1), Math.max(x0, x1)]
  const [top, bottom] = [Math.min(y0, y1), Math.max(y0, y1)]
  return [pixel(left, top), pixel(right, top), pixel(right, bottom), pixel(left, bottom)]
}

/** Adds a view inside an outline; it lies as its sheet does. */
export function addView(
  job: Job,
  view: Pick<View, 'sheet' | 'name' | 'outline' | 'drawnScale'>,
  mint: Mint,
): { edit: Edit; id: string } {
  const identity = newIdentity('view', job.views, mint)
  const straight = job.sheets.find((sheet) => sheet.id === view.sheet)?.straight
  const grain = straight === undefined ? {} : { grain: straight }
  return {
    id: identity.id,
    edit: { do: 'add-view', item: { ...identity, ...view, mapping: 'two-axis', ...grain, references: [] } },
  }
}
