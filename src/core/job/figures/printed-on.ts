import type { Dimension, Evidence, Job } from '../model/types.ts'
import type { BoxOfFigure } from './figure-box.ts'

/** A figure of a sheet that is evidence of a dimension. */
export interface PrintedFigure {
  dimension: Dimension
  piece: Extract<Evidence, { basis: 'printed' }>
  box: BoxOfFigure
}

/** The printed evidence that says where on a sheet it stands, but for what was withdrawn; as the job has it. */
export const printedOn = (job: Job, sheet: string): PrintedFigure[] =>
  job.dimensions.flatMap((dimension) =>
    dimension.evidence.flatMap((piece): PrintedFigure[] =>
      piece.basis === 'printed' &&
      piece.withdrawn === undefined &&
      piece.sheet === sheet &&
      piece.box !== undefined
        ? [{ dimension, piece, box: piece.box }]
        : [],
    ),
  )
