import type { ChildProgram } from '../../process/child.ts'
import { findProgram } from '../../process/find-program.ts'

/** The program that reads figures; undefined when it is not there. */
export const figureProgram = (from: string = import.meta.dirname): ChildProgram | undefined =>
  findProgram('figures.js', 'src/main/services/reading/process/figure-process.ts', from)
