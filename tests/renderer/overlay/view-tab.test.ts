import { describe, expect, it } from 'vitest'
import type { Extent } from '../../../src/renderer/camera/camera.ts'
import { collide, type LetteredBox } from '../../../src/renderer/overlay/geometry-on-screen.ts'
import { bareGround } from '../../../src/renderer/overlay/ground.ts'
import { type FramedView, tabsOf } from '../../../src/renderer/overlay/view-tab.ts'

const BOX = { width: 900, height: 600 }
const lettering = (text: string) => ({ width: 7 * [...text].length, height: 16 })
const frame = (left: number, top: number, width: number, height: number): Extent => ({
  left,
  top,
  right: left + width,
  bottom: top + height,
})
const view = (at: Extent, over: Partial<FramedView> = {}): FramedView => ({
  frame: at,
  title: 'Drum',
  lines: [],
  chosen: false,
  ...over,
})
const edges = ({ centre: [x, y], width, height }: LetteredBox): Extent =>
  frame(x - width / 2, y - height / 2, width, height)

describe('The tab of a view', () => {
  it('stands outside its frame and on it, where it hides nothing of the view', () => {
    const [tab] = tabsOf([view(frame(100, 100, 300, 200))], BOX, lettering, bareGround())
    if (!tab) throw new Error('no tab')
    expect(edges(tab)).toMatchObject({ left: 100, bottom: 100 })
  })

  it('goes to another edge where it would lie over the frame of a neighbour', () => {
    const views = [view(frame(100, 40, 300, 200)), view(frame(100, 245, 300, 200))]
    const tabs = tabsOf(views, BOX, lettering, bareGround())
    for (const [i, tab] of tabs.entries()) {
      if (tab === null) throw new Error('no tab')
      views.forEach(({ frame: { left, top, right, bottom } }, j) => {
        if (i === j) return
        const other = {
          centre: [(left + right) / 2, (top + bottom) / 2] as unknown as LetteredBox['centre'],
          angle: 0,
          width: right - left,
          height: bottom - top,
        }
        expect(collide(tab, other)).toBe(false)
      })
    }
  })

  it('goes where less is drawn', () => {
    const inked = { ...bareGround(), ink: (box: LetteredBox) => (edges(box).bottom <= 100 ? 0.08 : 0) }
    const [tab] = tabsOf([view(frame(100, 100, 300, 200))], BOX, lettering, inked)
    if (!tab) throw new Error('no tab')
    expect(edges(tab).top).toBeGreaterThanOrEqual(300)
  })

  it('stays in sight along an edge that is seen in part', () => {
    const [tab] = tabsOf([view(frame(-500, 100, 900, 2000))], BOX, lettering, bareGround())
    if (!tab) throw new Error('no tab')
    expect(edges(tab).left).toBe(0)
  })

  it('is cut to the width of its frame, unless the view is chosen', () => {
    const narrow = view(frame(100, 100, 60, 200), { title: 'Hood and cone, half in section' })
    const [cut] = tabsOf([narrow], BOX, lettering, bareGround())
    expect(cut?.title).toMatch(/^Hood.*…$/)
    expect(cut?.width).toBeLessThanOrEqual(60)
    const [whole] = tabsOf([{ ...narrow, chosen: true }], BOX, lettering, bareGround())
    expect(whole?.title).toBe(narrow.title)
  })

  it('is not there where the view fills the window', () => {
    expect(tabsOf([view(frame(-10, -10, 920, 620))], BOX, lettering, bareGround())).toEqual([null])
  })
})
