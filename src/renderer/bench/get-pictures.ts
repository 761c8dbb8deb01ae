import type { PictureProgress, SheetPictures } from '../../contract/pictures.ts'
import { useBench } from './bench-store.ts'
import { ask } from './the-host.ts'

/** Sheets whose answer is on its way, of the job that it is for, and the newest that was told of them meanwhile. */
const awaited = new Map<string, { answer: Promise<void>; heard: PictureProgress | null }>()

/** Sheets of different jobs may have the same id. */
const keyOf = (sheet: string): string => `${useBench.getState().opened?.id ?? ''} ${sheet}`

const STAGES: readonly PictureProgress['state'][] = ['overview', 'tiles', 'stopped', 'failed', 'ready']

/** Answers and events come by different ways, so that either may overtake the other: the further one holds. */
function further(a: PictureProgress, b: PictureProgress | null): PictureProgress {
  if (b === null) return a
  const ahead = STAGES.indexOf(b.state) - STAGES.indexOf(a.state)
  return ahead > 0 || (ahead === 0 && b.done > a.done) ? b : a
}

/** What is told later may know what the answer could not: whether tiles have the very values of the scan. */
const withProgress = (pictures: SheetPictures, progress: PictureProgress): SheetPictures => ({
  ...pictures,
  exact: progress.exact ?? pictures.exact,
  progress,
})

async function asked(sheet: string, key: string): Promise<void> {
  const { opened } = useBench.getState()
  const pictures = await ask('show-sheet', { sheet })
  const heard = awaited.get(key)?.heard ?? null
  awaited.delete(key)
  if (pictures === undefined || useBench.getState().opened?.id !== opened?.id) return
  const shown = withProgress(pictures, further(pictures.progress, heard))
  useBench.setState((bench) => ({ pictures: { ...bench.pictures, [sheet]: shown } }))
}

/** Has the pictures of a sheet made, whichever is on the bench; asks once while an answer is on its way. */
export function getPictures(sheet: string): Promise<void> {
  const key = keyOf(sheet)
  const before = awaited.get(key)
  if (before !== undefined) return before.answer
  const answer = asked(sheet, key)
  awaited.set(key, { answer, heard: null })
  return answer
}

/** Takes in how far the pictures of a sheet are. */
export function heardOfPictures(progress: PictureProgress): void {
  const waiting = awaited.get(keyOf(progress.sheet))
  if (waiting !== undefined) waiting.heard = progress
  const { pictures } = useBench.getState()
  const known = pictures[progress.sheet]
  if (known === undefined) return
  useBench.setState({ pictures: { ...pictures, [progress.sheet]: withProgress(known, progress) } })
}
