import { create } from 'zustand'
import type { Pixel } from '../../../core/geometry/frames.ts'
import type { CommonPoint } from '../../../core/job/sheets/picture-mapping.ts'
import type { PictureMappingKind } from '../../../core/job/sheets/picture-models.ts'
import { useBench } from '../../bench/bench-store.ts'
import { putDown, showSheet, takeUp } from '../../bench/choose.ts'
import { toTheSheet } from '../../focus/to-the-sheet.ts'

/** A place that is picked on one of the two pictures and not on the other yet. */
interface Half {
  sheet: string
  at: Pixel
  sigma: number
}

/** A sheet that is being given another picture. Nothing of it is in the job yet. */
export interface Replacing {
  job: string
  /** The sheet that has the marks. */
  from: string
  /** The sheet that has the better picture; null until it is chosen. */
  to: string | null
  kind: PictureMappingKind
  points: readonly CommonPoint[]
  half: Half | null
}

/** What is being replaced; null: nothing. */
export const useReplacing = create<{ now: Replacing | null }>(() => ({ now: null }))

const change = (changed: Partial<Replacing>): void =>
  useReplacing.setState(({ now }) => ({ now: now === null ? null : { ...now, ...changed } }))

export function beginReplacing(from: string): void {
  const job = useBench.getState().opened?.id
  if (job === undefined) return
  useReplacing.setState({ now: { job, from, to: null, kind: 'uniform', points: [], half: null } })
}

/** Leaves it without doing anything. */
export function endReplacing(): void {
  useReplacing.setState({ now: null })
  if (useBench.getState().picks.tool.kind === 'common') putDown()
}

/** Chooses the picture, and goes on to pick the first place. */
export function replaceBy(to: string): void {
  change({ to, points: [], half: null })
  pickNext()
}

/** Whether a sheet is still being given another picture that nobody has chosen. */
export function isWithoutBetter(from: string): boolean {
  const { now } = useReplacing.getState()
  return now !== null && now.from === from && now.to === null
}

export const mapBy = (kind: PictureMappingKind): void => change({ kind })

export const leaveOut = (index: number): void =>
  change({ points: (useReplacing.getState().now?.points ?? []).filter((_, k) => k !== index) })

/** Takes the tool up on the picture that the next place is wanted of. */
export function pickNext(): void {
  const { now } = useReplacing.getState()
  if (now === null || now.to === null) return
  takeUp({ kind: 'common' })
  void showSheet(now.half?.sheet === now.from ? now.to : now.from)
  toTheSheet()
}

/** Takes a place in that was picked; with its like on the other picture it is a pair. */
export function tookPlace({ sheet, at, sigma }: Half): void {
  const { now } = useReplacing.getState()
  if (now === null || (sheet !== now.from && sheet !== now.to)) return
  const { half, points } = now
  if (half === null || half.sheet === sheet) change({ half: { sheet, at, sigma } })
  else {
    const [before, after] = sheet === now.to ? [half, { at, sigma }] : [{ at, sigma }, half]
    const point: CommonPoint = {
      before: before.at,
      after: after.at,
      sigmaBefore: before.sigma,
      sigmaAfter: after.sigma,
    }
    change({ half: null, points: [...points, point] })
  }
  pickNext()
}
