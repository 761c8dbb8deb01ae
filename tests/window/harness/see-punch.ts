import sharp from 'sharp'

interface Grey {
  data: Buffer
  width: number
  height: number
}

const greyOf = async (png: Buffer): Promise<Grey> => {
  const { data, info } = await sharp(png).flatten().greyscale().raw().toBuffer({ resolveWithObject: true })
  return { data, width: info.width, height: info.height }
}

/**
 * Where the middle of the dark spot nearest to the middle of a picture is, in pixels of it from its outer corner;
 * undefined when there is none. It is the centroid of the darkness of the spot, so good to a few hundredths.
 */
export async function seePunch(png: Buffer): Promise<[number, number] | undefined> {
  const { data, width, height } = await greyOf(png)
  const paper = [...data].sort((a, b) => a - b)[Math.floor(data.length * 0.75)] ?? 255
  const darkness = (at: number): number => Math.max(0, paper - 12 - (data[at] ?? paper))
  const start = nearestDark(darkness, width, height, paper / 2)
  if (start === undefined) return undefined
  const spot = flood(start, width, height, (at) => darkness(at) > 0)
  let [sum, x, y] = [0, 0, 0]
  for (const at of spot) {
    const weight = darkness(at)
    sum += weight
    x += weight * ((at % width) + 0.5)
    y += weight * (Math.floor(at / width) + 0.5)
  }
  return [x / sum, y / sum]
}

function nearestDark(
  darkness: (at: number) => number,
  width: number,
  height: number,
  least: number,
): number | undefined {
  let best: { at: number; far: number } | undefined
  for (let at = 0; at < width * height; at++) {
    if (darkness(at) < least) continue
    const far = Math.hypot((at % width) + 0.5 - width / 2, Math.floor(at / width) + 0.5 - height / 2)
    if (best === undefined || far < best.far) best = { at, far }
  }
  return best?.at
}

function flood(start: number, width: number, height: number, belongs: (at: number) => boolean): Set<number> {
  const found = new Set([start])
  const open = [start]
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    const [x, y] = [at % width, Math.floor(at / width)]
    for (const [nx, ny] of [
      [x - 1, y],
      [x + 1, y],
      [x, y - 1],
      [x, y + 1],
    ] as const) {
      if (nx < 0 || ny < 0 || nx >= width || ny >= height) continue
      const next = ny * width + nx
      if (found.has(next) || !belongs(next)) continue
      found.add(next)
      open.push(next)
    }
  }
  return found
}
