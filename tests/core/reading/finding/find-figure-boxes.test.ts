import { describe, expect, it } from 'vitest'
import type { GreyWindow } from '../../../../src/core/imaging/window/grey-window.ts'
import { findFigureBoxes } from '../../../../src/core/reading/finding/find-figure-boxes.ts'
import { inkOfSvg } from '../../imaging/drawn/svg-picture.ts'

const [WIDE, HIGH] = [900, 600]
/** A 4, a 7 and three eighths with their bar, about 0, 0; digits 22 pixels high. */
const FIGURE =
  '<path d="M-25 -11l-11 15h16M-25 -11v22M-10 -11h13l-8 22M13 -19h9l-5 6a5 5 0 1 1 -4 7M9 0h18"/>' +
  '<circle cx="18" cy="7.5" r="3.5"/><circle cx="18" cy="14.7" r="3.7"/>'
const [HALF_WIDE, HALF_HIGH] = [32, 20]
const FIGURES = [
  [150, 80, 0],
  [420, 80, 0],
  [700, 200, -90],
  [300, 300, 0],
  [500, 400, 25],
  [120, 420, -90],
  [740, 470, -25],
] as const
/** Outline, dimension lines broken for figures and below them, witness lines, a circle. */
const LINES =
  '<path d="M10 10H890V590H10ZM30 82H100M200 82H260M30 60V140M260 60V140M330 110H510M700 60V140M700 260V350M680 60H780M680 350H780"/>' +
  '<circle cx="330" cy="470" r="70"/>'

async function sheet(noise: number, light: boolean): Promise<GreyWindow> {
  const figures = FIGURES.map(
    ([x, y, angle]) => `<g transform="translate(${x} ${y}) rotate(${angle})">${FIGURE}</g>`,
  )
  const svg = `<g fill="none" stroke="black" stroke-width="2.6">${figures.join('')}${LINES}</g>`
  const { data } = await inkOfSvg(svg, WIDE, HIGH, 0.7)
  let state = 99
  const grey = Uint8Array.from(data, (v, i) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    // Uniform noise, twice its sigma times the root of three wide; ground 30 darker at the right.
    const dark = 225 - (30 * (i % WIDE)) / WIDE - 140 * v + noise * Math.sqrt(12) * (state / 2 ** 32 - 0.5)
    return Math.max(0, Math.min(255, Math.round(light ? 255 - dark : dark)))
  })
  return { left: 2000, top: 1000, width: WIDE, height: HIGH, data: grey }
}

describe('boxes that may hold a figure', () => {
  it.each([
    [0, false],
    [0, true],
    [12, false],
    [12, true],
  ])('are found round each figure, of noise with sigma %d, light ink %s', async (noise, light) => {
    const boxes = findFigureBoxes(await sheet(noise, light))
    for (const [x, y, angle] of FIGURES) {
      const turn = (angle * Math.PI) / 180
      const [c, s] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))]
      const [w, h] = [HALF_WIDE * c + HALF_HIGH * s, HALF_WIDE * s + HALF_HIGH * c]
      const found = boxes.some((box) => {
        const across = Math.min(box.x + box.width, 2000 + x + w) - Math.max(box.x, 2000 + x - w)
        const down = Math.min(box.y + box.height, 1000 + y + h) - Math.max(box.y, 1000 + y - h)
        const held = across > 0 && down > 0 && across * down > 0.8 * 4 * w * h
        return held && box.width * box.height < 3 * 4 * w * h && Math.abs(box.angle - angle) < 12
      })
      expect(found, `${x}, ${y} at ${angle}`).toBe(true)
    }
    expect(boxes.length).toBeLessThan(60)
  })

  it('are none on a bare sheet', () => {
    const data = new Uint8Array(200 * 200).fill(220)
    expect(findFigureBoxes({ left: 0, top: 0, width: 200, height: 200, data })).toEqual([])
  })
})
