import type { ServiceReason } from '../../words/services-words.ts'
import type { TileKind } from '../layout/tile-kind.ts'
import type { MakingEvent, Whole } from '../making/making.ts'
import type { Page, PageProgress } from '../making/page.ts'
import { cutting, failed, makingWhole, READY, stopped, WHOLE_BEGUN } from './page-progress.ts'

/** How far the making of a page's pictures is. cut: tiles, which are cut beside the rest */
type Stage =
  /** It is wanted, and not known yet what is there. shown: how far it was told to be before */
  | { at: 'asked'; shown: PageProgress }
  /** The picture of the whole is not there: begun, being drawn first, or being made; or it is, and what is made of it is not. */
  | { at: 'begun' | 'drawing' | 'looked' | 'overview'; doing: ServiceReason; cut: number }
  | { at: 'tiles'; cut: number }
  | { at: 'ready' }
  /** done: the share that was */
  | { at: 'stopped'; done: number }
  | { at: 'failed'; done: number; error: unknown }

/** What is counted by. */
type Levelled = Pick<Page, 'levels'>

/** The stage, and what there is whatever becomes of the rest. */
export interface PageState {
  stage: Stage
  /** How the tiles are kept. */
  kind?: TileKind
  /** Holds the picture of the whole. */
  folder?: string
  whole?: Whole
}

/** What happens to the pictures of a page: while they are made, and to the making. */
export type PageEvent =
  | MakingEvent
  | { is: 'asked' }
  /** It is wanted again while what was stopped or failed is coming to its end. */
  | { is: 'asked again' }
  | { is: 'stopped' }
  | { is: 'failed'; error: unknown }

const BEGUN = { doing: WHOLE_BEGUN, cut: 0 }

export const UNASKED: PageState = { stage: { at: 'asked', shown: makingWhole(WHOLE_BEGUN) } }

/** The state after an event. */
export function after(state: PageState, event: PageEvent, page: Levelled): PageState {
  const { stage } = state
  const making = 'doing' in stage ? stage : BEGUN
  const { done } = progressOf(state, page)
  switch (event.is) {
    case 'asked':
      return { ...state, stage: { at: 'asked', shown: progressOf(state, page) } }
    case 'asked again':
      return {
        ...state,
        stage: {
          at: 'asked',
          shown: state.folder === undefined ? makingWhole(WHOLE_BEGUN) : cutting(page, 0),
        },
      }
    case 'begun':
      return { ...state, stage: { at: 'begun', ...BEGUN } }
    case 'drawing':
      return { ...state, stage: { ...making, at: 'drawing', doing: event.doing } }
    case 'looked':
      return { ...state, kind: event.kind, stage: { ...making, at: 'looked' } }
    case 'overview':
      return { ...state, folder: event.folder, stage: { ...making, at: 'overview' } }
    case 'cutting':
      return state
    case 'cut':
      return 'cut' in stage ? { ...state, stage: { ...stage, cut: event.tiles } } : state
    case 'whole':
      return { ...state, whole: event.whole, stage: { at: 'tiles', cut: making.cut } }
    case 'ready': {
      const { type, exact } = event.manifest
      return { ...state, kind: { type, exact }, folder: event.folder, stage: { at: 'ready' } }
    }
    case 'stopped':
      return { ...state, stage: { at: 'stopped', done } }
    case 'failed':
      return { ...state, stage: { at: 'failed', done, error: event.error } }
  }
}

/** How far it is, in words for a person. */
export function progressOf({ stage, kind }: PageState, page: Levelled): PageProgress {
  const progress = ofStage(stage, page)
  return kind === undefined ? progress : { ...progress, exact: kind.exact }
}

function ofStage(stage: Stage, page: Levelled): PageProgress {
  switch (stage.at) {
    case 'asked':
      return stage.shown
    case 'tiles':
      return cutting(page, stage.cut)
    case 'ready':
      return READY
    case 'stopped':
      return stopped(stage.done)
    case 'failed':
      return failed(stage.error, stage.done)
    default:
      return makingWhole(stage.doing)
  }
}

/** Whether an event changes what is told of how far it is. */
export function isTold({ stage }: PageState, { is }: PageEvent): boolean {
  if (is === 'cut') return stage.at === 'tiles'
  return is !== 'asked' && is !== 'looked' && is !== 'overview' && is !== 'cutting'
}

/** Whether it was stopped, or failed. */
export const isBroken = ({ stage: { at } }: PageState): boolean => at === 'stopped' || at === 'failed'

/** Whether it is known how the tiles are kept, or won't be for a while: the page is being drawn. */
export const isKnown = ({ stage: { at } }: PageState): boolean => at !== 'asked' && at !== 'begun'

/** Whether tiles can be asked for, and those made of the picture of the whole are there; or won't be. */
export const hasTiles = (state: PageState): boolean =>
  state.stage.at === 'tiles' || state.stage.at === 'ready' || isBroken(state)

/** Whether the picture of the whole is there, or won't be. */
export const hasOverview = (state: PageState): boolean => state.stage.at === 'overview' || hasTiles(state)
