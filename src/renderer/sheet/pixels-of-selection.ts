import { type Pixel, pixel } from '../../core/geometry/frames.ts'
import { useBench } from '../bench/bench-store.ts'
import { marksOf } from '../bench/choose.ts'
import type { Selection } from '../bench/selection.ts'
import { reach, shapeOf } from '../overlay/shape.ts'

/** Pixels that what is chosen reaches to on the sheet that lies on the bench: a view its outline, all else its marks. */
export function pixelsOfSelection(selection: Selection | null): readonly Pixel[] {
  const { opened, sheet } = useBench.getState()
  const outline =
    selection?.kind === 'view' ? opened?.job.views.find(({ id }) => id === selection.id)?.outline : undefined
  if (outline !== undefined) return outline
  if (selection?.kind === 'found figure') return cornersOfFigure(selection)
  return marksOf(selection)
    .filter((mark) => mark.sheet === sheet)
    .flatMap((mark) => {
      const shape = shapeOf(mark)
      return shape === null ? [] : reach(shape)
    })
}

/** The corners of the box round something that was found to be read. */
function cornersOfFigure({ sheet, id }: Selection & { kind: 'found figure' }): readonly Pixel[] {
  const bench = useBench.getState()
  if (sheet !== bench.sheet) return []
  const box = bench.readings[sheet]?.figures.find((figure) => figure.id === id)?.reading.box
  if (box === undefined) return []
  const [x, y, width, height] = box
  return [pixel(x, y), pixel(x + width, y), pixel(x + width, y + height), pixel(x, y + height)]
}
