import type { ChildProgram } from '../../process/child.ts'
import { findProgram } from '../../process/find-program.ts'

/** The program that reads scans; undefined when it is not there. */
export const readerProgram = (from: string = import.meta.dirname): ChildProgram | undefined =>
  findProgram('reader.js', 'src/main/services/scans/reader/reader-process.ts', from)
