import { degrees } from '../../src/core/geometry/angle-units.ts'
import { type Pixel, pixel } from '../../src/core/geometry/frames.ts'
import type { View } from '../../src/core/job/model/types.ts'
import { DISTORTION, toPixel } from './sheet-distortion.ts'

const inch = 25.4

/** A level rectangle of the sheet, inches, as its corners in the scan. */
export function region(x0: number, y0: number, x1: number, y1: number): Pixel[] {
  const corners = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ] as const
  return corners.map(([x, y]) => {
    const [px, py] = toPixel(pixel(x * inch, y * inch))
    return pixel(Math.round(px), Math.round(py))
  })
}

/** The reference whose size was misread: the drum is 11 1/4" high. */
export const BAD_REFERENCE = { view: 'elevation', id: 'R4', stated: '14 1/4"', printed: '11 1/4"' } as const

const grain = degrees(DISTORTION.turn)

export const VIEWS: View[] = [
  {
    id: 'elevation',
    sheet: 'sheet-1',
    name: 'Elevation, half in section',
    outline: region(0.75, 1.19, 6.45, 9.85),
    drawnScale: 0.25,
    mapping: 'two-axis',
    grain,
    references: [
      { id: 'R1', kind: 'distance', marks: ['M1', 'M2'], size: '12"' },
      { id: 'R2', kind: 'distance', marks: ['M3', 'M4'], size: `2'-0 5/8"` },
      { id: 'R3', kind: 'distance', marks: ['M5', 'M6'], size: '8 3/4"' },
      { id: BAD_REFERENCE.id, kind: 'distance', marks: ['M7', 'M6'], size: BAD_REFERENCE.stated },
      { id: 'R5', kind: 'distance', marks: ['M8', 'M9'], size: '6"' },
      { id: 'R6', kind: 'distance', marks: ['M10', 'M11'], size: '4 7/8"' },
      { id: 'R7', kind: 'distance', marks: ['M12', 'M13'], size: '5"' },
    ],
  },
  {
    id: 'foot-plan',
    sheet: 'sheet-1',
    name: 'Plan of foot flange',
    outline: region(6.6, 0.8, 13.3, 8.4),
    drawnScale: 0.5,
    mapping: 'two-axis',
    grain,
    references: [
      { id: 'R1', kind: 'diameter', marks: ['M32'], size: '12"' },
      { id: 'R2', kind: 'distance', marks: ['M33', 'M34'], size: '10 3/4"' },
      { id: 'R3', kind: 'distance', marks: ['M35', 'M36'], size: '10 3/4"' },
    ],
  },
  {
    id: 'bracket',
    sheet: 'sheet-1',
    name: 'Cast bracket',
    outline: region(13.4, 0.95, 16.45, 8.55),
    drawnScale: 0.5,
    mapping: 'two-axis',
    grain,
    references: [
      {
        id: 'R1',
        kind: 'rectangle',
        marks: ['M45', 'M46', 'M47', 'M48'],
        width: '2 3/4"',
        height: '5"',
      },
      { id: 'R2', kind: 'distance', marks: ['M49', 'M50'], size: '3 3/4"' },
      { id: 'R3', kind: 'distance', marks: ['M50', 'M51'], size: '1 3/4"' },
    ],
  },
]
