import { relative } from 'node:path'
import { BaseSequencer, type TestSpecification } from 'vitest/node'

/**
 * Files that take five seconds and more, the longest first. Vitest begins with the largest file where it knows no
 * times, as on a fresh clone, and most of these are small. A file that is not named here only begins later.
 */
export const DEAREST = [
  'tests/main/pictures/pictures.test.ts',
  'tests/published/strokes-against-opencv.test.ts',
  'tests/main/job-folder/kill.test.ts',
  'tests/core/imaging/no-stroke.test.ts',
  'tests/core/reading/examination.test.ts',
  'tests/main/scans/kinds/intake.test.ts',
  'tests/core/ledger/table/after-edits.test.ts',
  'tests/core/imaging/trials/one-bit.test.ts',
  'tests/core/imaging/trials/partly-hidden.test.ts',
  'tests/core/imaging/trials/white-noise.test.ts',
  'tests/core/imaging/trials/jpeg.test.ts',
  'tests/core/calibration/coverage/projective.test.ts',
  'tests/core/imaging/trials/grain.test.ts',
  'tests/samples/many-sheets.test.ts',
  'tests/core/imaging/drawn/paper.test.ts',
  'tests/main/scans/fuzz/spoiled-copies.test.ts',
  'tests/core/calibration/coverage/two-axis.test.ts',
  'tests/core/imaging/bent-stroke.test.ts',
  'tests/main/scans/kinds/makers.test.ts',
  'tests/main/pictures/pdf-tiles.test.ts',
  'tests/core/job/edits/undo.test.ts',
  'tests/core/job/edits/seen-sound.test.ts',
  'tests/core/ledger/table/what-stands.test.ts',
  'tests/core/calibration/coverage/affine.test.ts',
  'tests/core/calibration/coverage/uniform.test.ts',
  'tests/main/pictures/pyramid/tile-values.test.ts',
  'tests/core/imaging/drawn/edges.test.ts',
  'tests/main/scans/fuzz/hostile-files.test.ts',
  'tests/core/imaging/trials/blurred.test.ts',
  'tests/core/reading/rank-figures.test.ts',
  'tests/core/calibration/mapping-selection.test.ts',
  'tests/main/local/serve.test.ts',
  'tests/core/reading/hand/drawn-hands.test.ts',
  'tests/main/job-folder/history/overwritten.test.ts',
  'tests/main/job-folder/lock.test.ts',
  'tests/core/imaging/large/large-ring.test.ts',
  'tests/main/workbench/copies-apart.test.ts',
  'tests/renderer/strokes/search-end.test.ts',
  'tests/core/ledger/simulate-row.test.ts',
  'tests/renderer/strokes/find-stroke.test.ts',
  'tests/renderer/strokes/search-from-afar.test.ts',
  'tests/core/ledger/table/table-alone.test.ts',
  'tests/core/ledger/sheet-stretch.test.ts',
  'tests/main/workbench/looked-at.test.ts',
  'tests/main/reading/readings.test.ts',
  'tests/core/imaging/drawn/corners.test.ts',
  'tests/main/local/security.test.ts',
  'tests/core/ledger/found/coverage.test.ts',
  'tests/core/job/mutated-job.test.ts',
  'tests/core/handoff/annotations/in/note-edits.test.ts',
  'tests/main/job-folder/lock-take-over.test.ts',
  'tests/window/story.test.ts',
  'tests/window/strokes.test.ts',
  'tests/window/sheets.test.ts',
  'tests/window/read.test.ts',
  'tests/window/sheet-look.test.ts',
  'tests/window/sheet-under-hand.test.ts',
  'tests/window/accessible.test.ts',
  'tests/window/keyboard.test.ts',
  'tests/window/jobs.test.ts',
  'tests/main/launch/built.test.ts',
  'tests/window/kept.test.ts',
  'tests/window/folder-touched.test.ts',
  'tests/window/entering.test.ts',
  'tests/window/two-tabs.test.ts',
  'tests/window/labels.test.ts',
  'tests/window/notes-and-pages.test.ts',
  'tests/window/at-work.test.ts',
  'tests/window/table-work.test.ts',
  'tests/window/frame.test.ts',
  'tests/window/picked-as-meant.test.ts',
  'tests/window/straighten.test.ts',
  'tests/window/one-column.test.ts',
]

const rankOf = ({ moduleId, project }: TestSpecification): number => {
  const rank = DEAREST.indexOf(relative(project.config.root, moduleId))
  return rank === -1 ? DEAREST.length : rank
}

/**
 * Files that share a process follow one another, or it is begun anew after each of the others; of the rest the dearest
 * come first, so that none of them is left to keep one core busy alone at the end.
 */
export class DearestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const apart = ({ project }: TestSpecification): number => (project.config.isolate ? 1 : 0)
    return (await super.sort(files)).sort((a, b) => apart(a) - apart(b) || rankOf(a) - rankOf(b))
  }
}
