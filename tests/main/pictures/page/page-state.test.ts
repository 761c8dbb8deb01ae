import { describe, expect, test } from 'vitest'
import { pyramidLevels } from '../../../../src/contract/picture-pyramid.ts'
import {
  after,
  hasOverview,
  hasTiles,
  isKnown,
  isTold,
  type PageEvent,
  type PageState,
  progressOf,
  UNASKED,
} from '../../../../src/main/services/pictures/page/page-state.ts'
import { reason } from '../../../../src/main/services/words/services-words.ts'

/** 2 × 2 tiles and the one that shows all. */
const PAGE = { levels: pyramidLevels(1000, 1000) }

const KIND = { type: 'png', exact: true } as const
const BEGUN: PageEvent[] = [{ is: 'asked' }, { is: 'begun' }]
const LOOKED: PageEvent[] = [...BEGUN, { is: 'looked', kind: KIND }]
const CUT: PageEvent[] = [...LOOKED, { is: 'cutting', into: 'tiles.tmp' }, { is: 'cut', tiles: 2 }]
const OVERVIEW: PageEvent[] = [...CUT, { is: 'overview', folder: 'pictures' }]
const WHOLE: PageEvent[] = [
  ...OVERVIEW,
  {
    is: 'whole',
    folder: 'pictures',
    file: { path: 'scan', page: 1 },
    whole: { kind: KIND, tool: 'none', took: 100 },
  },
]

const told = (events: readonly PageEvent[]): PageState =>
  events.reduce((state: PageState, event) => after(state, event, PAGE), UNASKED)

describe('the state of the pictures of a page', () => {
  test.each<[string, PageEvent[], known: boolean, overview: boolean, tiles: boolean]>([
    ['wanted', [{ is: 'asked' }], false, false, false],
    ['begun', BEGUN, false, false, false],
    [
      'drawn first',
      [...BEGUN, { is: 'drawing', doing: reason('pictures.reading-the-page', { page: 1 }) }],
      true,
      false,
      false,
    ],
    ['looked at', LOOKED, true, false, false],
    ['with tiles cut beside', CUT, true, false, false],
    ['with its overview', OVERVIEW, true, true, false],
    ['with the whole', WHOLE, true, true, true],
    ['stopped', [...BEGUN, { is: 'stopped' }], true, true, true],
    ['failed', [...BEGUN, { is: 'failed', error: new Error('no') }], true, true, true],
    ['wanted again', [...WHOLE, { is: 'stopped' }, { is: 'asked again' }], false, false, false],
  ])('%s: what can be handed out, or is waited for no longer', (_, events, known, overview, tiles) => {
    const state = told(events)
    expect([isKnown(state), hasOverview(state), hasTiles(state)]).toEqual([known, overview, tiles])
  })

  test('counts tiles that are cut beside the making of the whole, and tells of them once that is there', () => {
    const cut: PageEvent = { is: 'cut', tiles: 3 }
    expect(isTold(told(CUT), cut)).toBe(false)
    expect(progressOf(told(CUT), PAGE)).toMatchObject({ state: 'overview', done: 0, exact: true })
    expect(progressOf(told(WHOLE), PAGE)).toMatchObject({ state: 'tiles', done: 2 / 5 })
    expect(isTold(told(WHOLE), cut)).toBe(true)
    expect(progressOf(told([...WHOLE, cut]), PAGE).sentence).toContain('3 of 5')
  })

  test('remembers what was done when it is stopped, and what is there when it is wanted again', () => {
    const stopped = told([...WHOLE, { is: 'stopped' }])
    expect(progressOf(stopped, PAGE)).toMatchObject({ state: 'stopped', done: 2 / 5 })
    expect(told([...WHOLE, { is: 'stopped' }, { is: 'asked again' }])).toMatchObject({
      folder: 'pictures',
      whole: { took: 100 },
      stage: { shown: { state: 'tiles', done: 0 } },
    })
  })

  test('is shown as it was told last until it is known what is there', () => {
    const stopped: PageEvent[] = [...WHOLE, { is: 'stopped' }, { is: 'asked' }]
    expect(progressOf(told(stopped), PAGE).state).toBe('stopped')
    expect(progressOf(told([...stopped, { is: 'begun' }]), PAGE)).toMatchObject({
      state: 'overview',
      done: 0,
    })
  })
})
