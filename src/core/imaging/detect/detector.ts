import type { NoStrokeReason } from '../../words/strokes.ts'
import type { SearchOptions } from '../result/stroke-types.ts'
import { type GreyPicture, windowsOf } from '../window/grey-picture.ts'
import { type Ink, settledInk } from '../window/ink.ts'
import { REACH } from '../window/search-window.ts'
import { windowNoise } from '../window/window-noise.ts'

/** What every search goes by. */
export interface SearchContext {
  grey: GreyPicture
  /** Of a pixel of the picture, grey values. */
  noise: number
  /** How far the stroke may lie from where it is looked for, pixels. */
  reach: number
  /** Strokes of this ink alone are looked for; null: of either, where nothing says which is ink. */
  ink: Ink | null
  /** What ink is on the paper here, whatever is looked for. */
  usualInk: Ink
}

export function searchContext(
  grey: GreyPicture,
  { reach = REACH, ink }: Pick<SearchOptions, 'reach' | 'ink'>,
): SearchContext {
  const here = settledInk(...windowsOf(grey))
  const wanted = ink ?? here
  // Where nothing tells, it is as most drawings are.
  return { grey, noise: windowNoise(grey), reach, ink: wanted, usualInk: here ?? wanted ?? 'dark' }
}

/** How one kind of stroke is found. */
export interface Detector<Candidate, Refined, Found extends object> {
  /** What it may be, the nearest first. */
  propose(): Iterable<Candidate>
  /** Fits it to the pixels. */
  refine(candidate: Candidate): Refined | NoStrokeReason
  accept(refined: Refined, candidate: Candidate): Found | NoStrokeReason
  /** Whether it came out clearly farther off than where it was proposed: then one that did not is rather meant. */
  strayed?(found: Found, candidate: Candidate): boolean
  /** Why there is none when nothing is proposed. */
  nothing: NoStrokeReason
}

export const isReason = (x: unknown): x is NoStrokeReason =>
  typeof x === 'object' && x !== null && 'code' in x

/** The first candidate that is accepted and has not strayed, or the first that has; else why the last one was not. */
export function detect<Candidate, Refined, Found extends object>({
  propose,
  refine,
  accept,
  strayed,
  nothing,
}: Detector<Candidate, Refined, Found>): Found | NoStrokeReason {
  let why = nothing
  let other: Found | null = null
  for (const candidate of propose()) {
    const refined = refine(candidate)
    const found = isReason(refined) ? refined : accept(refined, candidate)
    if (isReason(found)) why = found
    else if (strayed?.(found, candidate)) other ??= found
    else return found
  }
  return other ?? why
}
