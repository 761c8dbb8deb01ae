/** A metric sheet with decimal commas: a plate with a bore, a bolt circle, a slot and grooves, and its side view. */
import { execFileSync } from 'node:child_process'
import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import sharp from 'sharp'
import { greysOfSvg } from '../../core/imaging/drawn/svg-picture.ts'

const [WIDTH, HEIGHT] = [3200, 2100]
/** Pixels for a millimetre: the paper has shrunk by 0.4 % up and down. */
const [ALONG, UP] = [5, 4.98]
const TURNED = (0.3 * Math.PI) / 180

type Place = readonly [number, number]

const flat = ([x, y]: Place): Place => [350 + ALONG * x, 1700 - UP * y]

/** Where a place of the part, millimetres, lies on the scan. */
export function onScan(at: Place): Place {
  const [x, y] = flat(at)
  const [dx, dy] = [x - WIDTH / 2, y - HEIGHT / 2]
  const [c, s] = [Math.cos(TURNED), Math.sin(TURNED)]
  return [WIDTH / 2 + dx * c - dy * s, HEIGHT / 2 + dx * s + dy * c]
}

export const BOLTS: readonly Place[] = Array.from({ length: 8 }, (_, k): Place => {
  const a = Math.PI * (k / 4 + 1 / 8)
  return [150 + 85 * Math.cos(a), 120 + 85 * Math.sin(a)]
})
export const CORNERS: readonly Place[] = [
  [24, 24],
  [276, 24],
  [276, 216],
  [24, 216],
]
export const DOWELS: readonly Place[] = [80, 120, 180, 220].map((x): Place => [x, 18])

function drawing(): string {
  const line = (a: Place, b: Place, w = 4) => {
    const [[x1, y1], [x2, y2]] = [flat(a), flat(b)]
    return `<line x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}" stroke="black" stroke-width="${w}"/>`
  }
  const ring = (at: Place, r: number, w = 4, dash = '') => {
    const [x, y] = flat(at)
    return `<ellipse cx="${x}" cy="${y}" rx="${ALONG * r}" ry="${UP * r}" fill="none" stroke="black" stroke-width="${w}" ${dash}/>`
  }
  const text = (at: Place, words: string, size = 40) => {
    const [x, y] = flat(at)
    return `<text x="${x}" y="${y}" font-family="DejaVu Serif" font-size="${size}">${words}</text>`
  }
  const box = (x: number, y: number, w: number, h: number) =>
    line([x, y], [x + w, y]) +
    line([x + w, y], [x + w, y + h]) +
    line([x + w, y + h], [x, y + h]) +
    line([x, y + h], [x, y])
  let d = box(0, 0, 300, 240)
  d += ring([150, 120], 40) + ring([150, 120], 48)
  d += ring([150, 120], 85, 2, 'stroke-dasharray="40 8 6 8"')
  for (const bolt of BOLTS) d += ring(bolt, 7)
  for (const corner of CORNERS) d += ring(corner, 10)
  for (const dowel of DOWELS) d += ring(dowel, 4.5)
  d += box(36, 60, 12, 120) + box(252, 60, 12, 120)
  d += line([130, 218], [170, 218]) + line([130, 230], [170, 230])
  const round = (x: number, sweep: number) => {
    const [[x1, y1], [x2, y2]] = [flat([x, 218]), flat([x, 230])]
    return `<path d="M ${x1} ${y1} A ${6 * ALONG} ${6 * UP} 0 0 ${sweep} ${x2} ${y2}" fill="none" stroke="black" stroke-width="4"/>`
  }
  d += round(130, 1) + round(170, 0)
  // The side view: the plate is cut.
  d += box(380, 0, 12.5, 240) + box(392.5, 80, 47.5, 80)
  d += line([440, 80], [480, 100]) + line([440, 160], [480, 140]) + line([480, 100], [480, 140])
  for (let y = 0; y < 228; y += 4) d += line([380, y], [392.5, y + 12.5], 1.5)
  // Figures, each with its line.
  d +=
    line([0, -15], [300, -15], 2) +
    line([0, -2], [0, -19], 2) +
    line([300, -2], [300, -19], 2) +
    text([138, -12], '300,0')
  d +=
    line([-15, 0], [-15, 240], 2) +
    line([-2, 0], [-19, 0], 2) +
    line([-2, 240], [-19, 240], 2) +
    text([-42, 118], '240,0')
  d += line([380, -12], [380, -30], 2) + line([392.5, -12], [392.5, -30], 2) + text([378, -40], '12,5')
  d +=
    line([392.5, 182], [392.5, 196], 2) +
    line([440, 182], [440, 196], 2) +
    line([392.5, 190], [440, 190], 2) +
    text([404, 193], '47,5')
  d +=
    line([24, 262], [276, 262], 2) +
    line([24, 246], [24, 266], 2) +
    line([276, 246], [276, 266], 2) +
    text([138, 265], '252')
  d +=
    text([132, 132], '⌀ 80') +
    text([198, 172], '⌀ 96') +
    text([196, 196], '8 × ⌀ 14') +
    text([60, 218], '4 × ⌀ 20')
  d += text([76, 4], '4 × ⌀ 9') + text([54, 120], '12') + text([240, 128], '12') + text([178, 222], '12')
  d +=
    text([448, 118], '⌀ 80') +
    text([484, 130], '53° 8′') +
    text([210, 48], 'R 3 RINGSUM') +
    text([384, 262], 'SCHNITT', 46)
  d += text([-20, 292], 'ANSICHT 1:1', 46) + text([340, -70], 'LAGERPLATTE Bl. 3 — BLECH 2 MM', 46)
  return d
}

const VIEWS = [
  { id: 'front', name: 'Front', from: [-50, -35], to: [330, 285] },
  { id: 'side', name: 'Side', from: [345, -50], to: [530, 285] },
] as const

/** The figured sizes that give the views their scale: ends and figure. */
const FIGURED: readonly (readonly [view: string, a: Place, b: Place, size: string])[] = [
  ['front', [0, 0], [300, 0], '300,0'],
  ['front', [300, 0], [300, 240], '240,0'],
  ['front', [0, 240], [300, 240], '300,0'],
  ['front', [0, 0], [0, 240], '240,0'],
  ['side', [380, 0], [380, 240], '240,0'],
  ['side', [392.5, 80], [440, 80], '47,5'],
  ['side', [480, 100], [480, 140], '40,0'],
  ['side', [392.5, 160], [440, 160], '47,5'],
]

function edits(): object[] {
  const made: object[] = VIEWS.map(({ id, name, from: [x, y], to: [r, u] }) => ({
    do: 'add-view',
    item: {
      id,
      sheet: 'S1',
      name,
      drawnScale: 1,
      mapping: 'two-axis',
      outline: [onScan([x, u]), onScan([r, u]), onScan([r, y]), onScan([x, y])],
      references: [],
    },
  }))
  for (const [k, [view, a, b, size]] of FIGURED.entries()) {
    const marks = [`F${k}a`, `F${k}b`]
    for (const [i, at] of [a, b].entries()) {
      made.push({
        do: 'add-mark',
        item: { id: marks[i], sheet: 'S1', how: 'hand', sigma: 0.3, kind: 'point', pixel: onScan(at) },
      })
    }
    made.push({ do: 'add-reference', view, item: { id: `R${k}`, kind: 'distance', marks, size } })
  }
  return made
}

/** Draws the sheet: paper with a little grain, ink that is not quite black, a camera's blur. @returns the file */
async function drawPlate(folder: string): Promise<string> {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}"><g transform="rotate(0.3 ${WIDTH / 2} ${HEIGHT / 2})">${drawing()}</g></svg>`
  const { data, info } = await greysOfSvg(svg)
  let noise = 7
  for (let i = 0; i < data.length; i++) {
    noise = (Math.imul(noise, 1664525) + 1013904223) >>> 0
    data[i] = 44 + ((data[i] ?? 0) * 180) / 255 + (noise >>> 28)
  }
  const path = join(folder, 'plate.jpg')
  const raw = { width: info.width, height: info.height, channels: info.channels } as const
  await sharp(data, { raw }).blur(0.7).withMetadata({ density: 127 }).jpeg({ quality: 84 }).toFile(path)
  return path
}

/** Makes a job with the sheet, its views and their scale, by a program's own commands. @returns its folder */
export async function makePlateJob(program: string, home: string): Promise<string> {
  const folder = join(home, 'plate')
  const scan = await drawPlate(home)
  const lines = join(home, 'edits.ndjson')
  await writeFile(
    lines,
    edits()
      .map((edit) => `${JSON.stringify(edit)}\n`)
      .join(''),
  )
  const by = ['--by', 'A. Rivet']
  const run = (...words: string[]) =>
    execFileSync(process.execPath, [program, ...words], { stdio: ['ignore', 'ignore', 'inherit'] })
  run('new', folder, scan, '--title', 'Bearing plate', '--unit', 'mm', ...by)
  run('edit', folder, lines, ...by)
  return folder
}
