/** Strokes in a grey window of a scan: where they lie, finer than a pixel, and how surely. All outside comes in here. */
export { findCircle } from './find-circle.ts'
export { findCrossing } from './find-crossing.ts'
export { findLine } from './find-line.ts'
export { findPoint } from './find-point.ts'
export { findRoundEnd } from './find-round-end.ts'
export { type OutOfRound, outOfRound } from './result/out-of-round.ts'
export type {
  Covariance,
  FoundStroke,
  NoStroke,
  NoStrokeReason,
  PointOptions,
  Profile,
  ProfileReason,
  RoundOptions,
  SearchOptions,
  Section,
  StrokeCircle,
  StrokeCrossing,
  StrokeLine,
  StrokePoint,
  StrokeShape,
} from './result/stroke-types.ts'
export { greyOfPixel } from './window/grey-at.ts'
export { type GreyPicture, windowsOf } from './window/grey-picture.ts'
export type { GreyWindow } from './window/grey-window.ts'
export { type Ink, settledInk } from './window/ink.ts'
export { LARGEST_WINDOW, type SearchWindow, searchWindow, type WindowBox } from './window/search-window.ts'
