import type { TurnedBox } from './sample-upright.ts'

/** [x, y] */
export type Place = readonly [number, number]

/** Where a place of an upright rectangle that was sampled at a scale is on the page. */
export function placeOnPage(box: TurnedBox, scale: number, [x, y]: Place): Place {
  const turn = (box.angle * Math.PI) / 180
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  const u = (x - Math.max(1, Math.round(box.width * scale)) / 2) / scale
  const v = (y - Math.max(1, Math.round(box.height * scale)) / 2) / scale
  return [box.centre[0] + u * c - v * s, box.centre[1] + u * s + v * c]
}

/** Upright box on the page, [x, y, width, height], round a box of the upright rectangle, both in pixels of their own. */
export function boxOnPage(
  box: TurnedBox,
  scale: number,
  [x, y, width, height]: readonly [number, number, number, number],
): readonly [number, number, number, number] {
  const corners = [
    [x, y],
    [x + width, y],
    [x, y + height],
    [x + width, y + height],
  ].map(([u, v]) => placeOnPage(box, scale, [u ?? 0, v ?? 0]))
  const [xs, ys] = [corners.map(([u]) => u), corners.map(([, v]) => v)]
  const [left, top] = [Math.min(...xs), Math.min(...ys)]
  return [left, top, Math.max(...xs) - left, Math.max(...ys) - top]
}
