import { describe, expect, it } from 'vitest'
import { radians } from '../../../src/core/geometry/angle-units.ts'
import { pixel, screen } from '../../../src/core/geometry/frames.ts'
import { collide, type LetteredBox } from '../../../src/renderer/overlay/geometry-on-screen.ts'
import { bareGround, type UnderLettering } from '../../../src/renderer/overlay/ground.ts'
import type { Item } from '../../../src/renderer/overlay/items.ts'
import type { Laid } from '../../../src/renderer/overlay/laid.ts'
import { layOut } from '../../../src/renderer/overlay/lay-out.ts'

const BOX = { width: 1000, height: 700 }
const lettering = (text: string) => ({ width: 7 * [...text].length, height: 16 })
type Size = Extract<Item, { kind: 'size' }>

const size = (
  name: string,
  from: [number, number],
  to: [number, number],
  over: Partial<Size> = {},
): Size => ({
  kind: 'size',
  about: { kind: 'dimension', name },
  chosen: false,
  span: { kind: 'straight', from: pixel(...from), to: pixel(...to), offset: true, arrows: 'both' },
  text: '300,0 mm',
  line: 'full',
  known: false,
  wrong: '',
  lane: 0,
  view: 'plan',
  inside: null,
  ...over,
})

const laidOut = (items: Item[], ground: UnderLettering = bareGround(), zoom = 1): Laid[] =>
  layOut(items, { centre: pixel(500, 350), zoom, turn: radians(0), mirror: false }, BOX, lettering, ground)

const figureOf = (laid: Laid[], name: string) =>
  laid.find(({ item: { about } }) => about.kind === 'dimension' && about.name === name)?.figure ?? null

const printed = (x: number, y: number, width: number, height: number): LetteredBox => ({
  centre: screen(x, y),
  angle: 0,
  width,
  height,
})

describe('A figure on the sheet', () => {
  const drum = size('drum', [300, 350], [600, 350])
  const onLine = figureOf(laidOut([drum]), 'drum')

  it('stands in its dimension line where nothing is under it', () => {
    expect(onLine?.centre[0]).toBeCloseTo(450, 9)
  })

  it('stands beside a printed figure and never over it', () => {
    if (onLine === null) throw new Error('no figure')
    const ground = { ...bareGround(), printed: [printed(450, onLine.centre[1], 60, 20)] }
    const beside = figureOf(laidOut([drum], ground), 'drum')
    if (beside === null) throw new Error('no figure')
    expect(ground.printed.some((box) => collide(box, beside))).toBe(false)
    expect(Math.hypot(beside.centre[0] - 450, beside.centre[1] - onLine.centre[1])).toBeLessThan(80)
  })

  it('goes to the side where less is drawn', () => {
    if (onLine === null) throw new Error('no figure')
    const [, line] = onLine.centre
    const above = { ...bareGround(), ink: ({ centre }: LetteredBox) => (centre[1] < line + 2 ? 0.08 : 0) }
    const below = { ...bareGround(), ink: ({ centre }: LetteredBox) => (centre[1] > line - 2 ? 0.08 : 0) }
    expect(figureOf(laidOut([drum], above), 'drum')?.centre[1]).toBeGreaterThan(line)
    expect(figureOf(laidOut([drum], below), 'drum')?.centre[1]).toBeLessThan(line)
  })

  it('is left out where it would hide the drawing all round, unless it is chosen', () => {
    const full = { ...bareGround(), ink: () => 0.2 }
    expect(figureOf(laidOut([drum], full), 'drum')).toBeNull()
    expect(figureOf(laidOut([{ ...drum, chosen: true }], full), 'drum')).not.toBeNull()
  })

  it('stays where it stood while that is nearly as good', () => {
    const ground = bareGround()
    const first = { ...ground, ink: ({ centre }: LetteredBox) => (centre[1] < 340 ? 0.03 : 0) }
    const was = figureOf(laidOut([drum], first), 'drum')
    const then = figureOf(laidOut([drum], ground), 'drum')
    expect(then?.centre).toEqual(was?.centre)
    expect(figureOf(laidOut([drum]), 'drum')?.centre).not.toEqual(was?.centre)
  })

  it('of something disputed has its place before the rest, and what is chosen before both', () => {
    // Room for one figure only.
    const full = {
      ...bareGround(),
      ink: (box: LetteredBox) => (Math.abs(box.centre[0] - 530) < 20 ? 0 : 0.04),
    }
    const [flange, cone, hood] = [0, 1, 2].map((k) => size(`s${k}`, [470, 350], [495, 350])) as [
      Size,
      Size,
      Size,
    ]
    const lettered = (items: Item[]) =>
      laidOut(items, full).flatMap(({ item, figure }) => (figure === null ? [] : [item]))
    expect(lettered([flange, cone])).toHaveLength(1)
    const wrong = { ...cone, wrong: 'disputed' }
    expect(lettered([flange, wrong])[0]).toEqual(wrong)
    const chosen = { ...hood, chosen: true }
    expect(lettered([flange, chosen])).toEqual([chosen])
  })

  it('has a leader where it stands away from a small size', () => {
    const small = size('cone', [490, 350], [502, 350])
    const low = {
      ...bareGround(),
      ink: ({ centre, height }: LetteredBox) => (height > 6 && Math.abs(centre[1] - 332) < 25 ? 0.1 : 0),
    }
    const led = laidOut([{ ...small, chosen: true }], low).find(({ leader }) => leader !== undefined)
    expect(led?.leader).toHaveLength(2)
  })
})

describe('Five hundred sizes on a sheet', () => {
  const many = Array.from({ length: 500 }, (_, i) => {
    const [x, y] = [200 * (i % 25), 180 * Math.floor(i / 25)]
    return size(`d${i}`, [x, y], [x + 60 + (i % 7) * 12, y], i % 40 === 7 ? { wrong: 'disputed' } : {})
  })

  it('are lettered so far as there is room, from far off to near, and never over each other', () => {
    for (const zoom of [0.15, 0.3, 0.6, 1.2]) {
      const laid = laidOut(many, bareGround(), zoom)
      const figures = laid.flatMap(({ figure }) => (figure === null ? [] : [figure]))
      expect(figures.length).toBeGreaterThan(3)
      figures.forEach((a, i) => {
        for (const b of figures.slice(i + 1)) expect(collide(a, b)).toBe(false)
      })
    }
  })

  it('that are too short to be seen are drawn as plain lines', () => {
    const laid = laidOut(many, bareGround(), 0.07)
    expect(laid.every(({ arrows, figure }) => arrows.length === 0 && figure === null)).toBe(true)
  })

  it('keep words of warning off each other', () => {
    const words = laidOut(many, bareGround(), 0.15).flatMap(({ word }) => (word === null ? [] : [word]))
    const boxes = words.map(({ at: [x, y], text }) => {
      const { width, height } = lettering(text)
      return printed(x + width / 2, y, width, height)
    })
    expect(boxes.length).toBeGreaterThan(2)
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1)) expect(collide(a, b)).toBe(false)
    })
  })
})
