import type { Job } from '../../core/job/model/types.ts'

/** The clear figures of a sheet that the job has, as they are written: how this sheet writes them. */
export const figuresWrittenOn = (job: Job, sheet: string): string[] =>
  job.dimensions.flatMap(({ evidence }) =>
    evidence.flatMap((piece) =>
      piece.basis === 'printed' &&
      piece.sheet === sheet &&
      piece.legibility !== 'doubtful' &&
      piece.withdrawn === undefined
        ? [piece.text]
        : [],
    ),
  )
