/** Big-endian numbers of some bytes each. */
const numbers = (size: 1 | 2 | 4, ...values: number[]): Buffer => {
  const out = Buffer.alloc(values.length * size)
  values.forEach((value, i) => {
    out.writeUIntBE(value, i * size, size)
  })
  return out
}

const text = (words: string): Buffer => Buffer.from(words, 'latin1')
const fixed = (value: number): number => Math.round(value * 65536)

const INK_SIDES = [0, 1]

/** Lightness of paper under inks: each takes its part of the light, black nearly all. */
const lightness = (inks: readonly number[]): number => {
  const [cyan = 0, magenta = 0, yellow = 0, black = 0] = inks
  return 250 * (1 - 0.35 * cyan) * (1 - 0.4 * magenta) * (1 - 0.08 * yellow) * (1 - 0.94 * black)
}

/** From inks to CIELAB, eight bits, by a table of two points along each ink. Source: ICC.1:2001-04, 6.5.7 (lut8Type). */
function inksToLab(): Buffer {
  const identity = Buffer.from(Array.from({ length: 256 }, (_, i) => i))
  const grid = INK_SIDES.flatMap((cyan) =>
    INK_SIDES.flatMap((magenta) =>
      INK_SIDES.flatMap((yellow) =>
        INK_SIDES.flatMap((black) => {
          const strength = 1 - black
          return [
            Math.round(lightness([cyan, magenta, yellow, black])),
            Math.round(128 + strength * (70 * magenta - 40 * cyan)),
            Math.round(128 + strength * (80 * yellow - 45 * cyan - 5 * magenta)),
          ]
        }),
      ),
    ),
  )
  const matrix = numbers(4, ...[1, 0, 0, 0, 1, 0, 0, 0, 1].map(fixed))
  return Buffer.concat([
    text('mft1'),
    numbers(4, 0),
    Buffer.from([4, 3, 2, 0]),
    matrix,
    ...new Array<Buffer>(4).fill(identity),
    Buffer.from(grid),
    ...new Array<Buffer>(3).fill(identity),
  ])
}

const description = (words: string): Buffer =>
  Buffer.concat([
    text('desc'),
    numbers(4, 0, words.length + 1),
    text(`${words}\0`),
    Buffer.alloc(4 + 4 + 2 + 1 + 67),
  ])

/** A small profile of an invented printer, inks to CIELAB. Source: ICC.1:2001-04, 6.1 to 6.5. */
export function inkProfile(): Buffer {
  const tags: [string, Buffer][] = [
    ['desc', description('Inks of a test')],
    ['cprt', Buffer.concat([text('text'), numbers(4, 0), text('none\0')])],
    ['wtpt', Buffer.concat([text('XYZ '), numbers(4, 0, ...[0.9642, 1, 0.8249].map(fixed))])],
    ['A2B0', inksToLab()],
  ]
  let place = 128 + 4 + 12 * tags.length
  const entries: Buffer[] = []
  const bodies: Buffer[] = []
  for (const [name, body] of tags) {
    const even = Buffer.concat([body, Buffer.alloc((4 - (body.length % 4)) % 4)])
    entries.push(Buffer.concat([text(name), numbers(4, place, body.length)]))
    bodies.push(even)
    place += even.length
  }
  const header = Buffer.alloc(128)
  header.writeUInt32BE(place, 0)
  header.writeUInt32BE(0x02400000, 8)
  header.write('prtrCMYKLab ', 12, 'latin1')
  numbers(2, 2026, 1, 1, 0, 0, 0).copy(header, 24)
  header.write('acsp', 36, 'latin1')
  numbers(4, ...[0.9642, 1, 0.8249].map(fixed)).copy(header, 68)
  return Buffer.concat([header, numbers(4, tags.length), ...entries, ...bodies])
}
