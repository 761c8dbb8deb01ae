/** Numbers of fields. Source: TIFF 6.0. */
export const TAG = {
  newSubfileType: 254,
  subfileType: 255,
  width: 256,
  height: 257,
  bits: 258,
  compression: 259,
  photometric: 262,
  stripOffsets: 273,
  orientation: 274,
  samples: 277,
  rowsPerStrip: 278,
  stripByteCounts: 279,
  xResolution: 282,
  yResolution: 283,
  planar: 284,
  t4Options: 292,
  resolutionUnit: 296,
  predictor: 317,
  colourMap: 320,
  tileWidth: 322,
  tileHeight: 323,
  tileOffsets: 324,
  tileByteCounts: 325,
  inkSet: 332,
  yCbCrSubSampling: 530,
  iccProfile: 34675,
} as const

/** A field of a page: 16-bit numbers, 32-bit numbers, fractions as pairs, or bytes as they are. */
export type Field = { tag: number } & (
  | { type: 'short' | 'long'; values: readonly number[] }
  | { type: 'rational'; values: readonly (readonly [number, number])[] }
  | { type: 'bytes'; values: Buffer }
)

const CODES = { short: 3, long: 4, rational: 5, bytes: 7 } as const

/** Writes numbers in one order of bytes: `II` the least significant first, `MM` the most. */
export class Order {
  readonly little: boolean

  constructor(readonly mark: 'II' | 'MM') {
    this.little = mark === 'II'
  }

  short(...values: readonly number[]): Buffer {
    return this.#all(values, 2)
  }

  long(...values: readonly number[]): Buffer {
    return this.#all(values, 4)
  }

  #all(values: readonly number[], size: number): Buffer {
    const out = Buffer.alloc(values.length * size)
    values.forEach((value, i) => {
      if (this.little) out.writeUIntLE(value, i * size, size)
      else out.writeUIntBE(value, i * size, size)
    })
    return out
  }
}

/** The bytes that the values of a field take. */
export function fieldBytes(field: Field, order: Order): Buffer {
  if (field.type === 'bytes') return field.values
  if (field.type === 'rational') return order.long(...field.values.flat())
  return field.type === 'short' ? order.short(...field.values) : order.long(...field.values)
}

/**
 * A directory of fields that is to lie at `at`: ascending tags, values of more than four bytes after it.
 * @param next where the next directory lies, 0 for none; given the place after this one
 */
export function directory(
  fields: readonly Field[],
  at: number,
  order: Order,
  next: (after: number) => number,
): Buffer {
  const sorted = [...fields].sort((a, b) => a.tag - b.tag)
  const beyond: Buffer[] = []
  let place = at + 2 + 12 * sorted.length + 4
  const entries = sorted.map((field) => {
    const bytes = fieldBytes(field, order)
    const head = Buffer.concat([order.short(field.tag, CODES[field.type]), order.long(field.values.length)])
    if (bytes.length <= 4) return Buffer.concat([head, bytes, Buffer.alloc(4 - bytes.length)])
    const entry = Buffer.concat([head, order.long(place)])
    const even = bytes.length % 2 === 0 ? bytes : Buffer.concat([bytes, Buffer.alloc(1)])
    beyond.push(even)
    place += even.length
    return entry
  })
  return Buffer.concat([order.short(sorted.length), ...entries, order.long(next(place)), ...beyond])
}
