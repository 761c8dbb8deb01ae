import { describe, expect, it } from 'vitest'
import { uprightWays } from '../../../../src/core/reading/upright/upright-ways.ts'
import { inkOfSvg } from '../../imaging/drawn/svg-picture.ts'

/** A 4, a 7, a 4 and three eighths with their bar, and a dimension line below; digits 22 high, about 0, 0. */
const FIGURE =
  '<path d="M-45 -11l-11 15h16M-45 -11v22M-30 -11h13l-8 22M0 -11l-11 15h16M0 -11v22"/>' +
  '<path d="M16 -19h9l-5 6a5 5 0 1 1 -4 7M12 0h20"/><circle cx="22" cy="7.5" r="3.7"/><circle cx="22" cy="15" r="4"/>'
const LINE = '<path d="M-200 24H200"/>'
const SIDE = 260

async function drawn(angle: number, line: boolean, light: boolean) {
  const svg = `<g fill="none" stroke="black" stroke-width="2.6" transform="translate(130 130) rotate(${angle})">${FIGURE}${line ? LINE : ''}</g>`
  const { data } = await inkOfSvg(svg, SIDE, SIDE, 0.7)
  const grey = Uint8Array.from(data, (v) => Math.round(light ? 60 + 140 * v : 220 - 150 * v))
  const turn = (angle * Math.PI) / 180
  const [c, s] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))]
  // Dragged with some room, more on one side than on the other.
  const [w, h] = [92 * c + 40 * s + 16, 92 * s + 40 * c + 16]
  const centre = [130 - 12 * Math.cos(turn) + 3, 130 - 12 * Math.sin(turn) - 2] as const
  return {
    window: { left: 0, top: 0, width: SIDE, height: SIDE, data: grey },
    box: { x: centre[0] - w / 2, y: centre[1] - h / 2, width: w, height: h },
  }
}

/** Degrees between two directions of reading. */
const apart = (a: number, b: number): number => Math.abs(((((a - b) % 360) + 540) % 360) - 180)

describe('which way the lettering in a box runs', () => {
  it.each(
    [0, 2, -90, -88, 25, -35, 60, -70, 90].flatMap((angle) =>
      [false, true].flatMap((line) => [false, true].map((light) => [angle, line, light] as const)),
    ),
  )('is told at %d degrees, beside a line %s, light ink %s', async (angle, line, light) => {
    const { window, box } = await drawn(angle, line, light)
    const ways = uprightWays(window, box)
    expect(ways.length).toBeLessThanOrEqual(4)
    expect(ways.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1)
    const way = ways.find((one) => apart(one.box.angle, angle) <= 2.5)
    expect(way, JSON.stringify(ways)).toBeDefined()
    if (way === undefined) return
    expect(way.digitHeights.some((high) => high > 17 && high < 31)).toBe(true)
    // The box holds the figure: its middle is near, and it is as long at least.
    expect(
      Math.hypot(way.box.centre[0] - box.x - box.width / 2, way.box.centre[1] - box.y - box.height / 2),
    ).toBeLessThan(14)
    expect(way.box.width).toBeGreaterThan(88)
    expect(way.box.height).toBeGreaterThan(38)
  })

  it('is told of none where there is no ink, and of none without room', () => {
    const bare = { left: 0, top: 0, width: 50, height: 50, data: new Uint8Array(2500).fill(220) }
    expect(uprightWays(bare, { x: 5, y: 5, width: 30, height: 20 })).toEqual([])
    expect(uprightWays(bare, { x: 5, y: 5, width: 0, height: 20 })).toEqual([])
  })
})
