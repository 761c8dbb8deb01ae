import { type Chance, lie } from './chance.ts'

/** Numbers that say how large, how long, how many or where. */
const NUMBERED =
  /\/(?:Length|Width|Height|BitsPerComponent|Columns|Rows|K|Colors|Predictor|Rotate|Count|Size|Root|Kids|Contents|Parent|Prev) (?:\[\s*)?(-?\d+)/g
const PLACES = /(?:^|\n)(\d{10}) \d{5} n|startxref\s+(\d+)/g
const MATRICES = /(-?\d+(?:\.\d+)?) (?:cm|0 0 cm)|MediaBox \[([^\]]*)\]/g
const REFERENCES = /(\d+) 0 R/g
const NAMES =
  /\/(FlateDecode|CCITTFaxDecode|JBIG2Decode|JPXDecode|DCTDecode|DeviceGray|DeviceRGB|Image|Form)\b/g

const LIES = ['0', '-1', '1', '3', '7', '65535', '2147483647', '-2147483648', '1e9', '99999999999', '', '/X']
const BOXES = ['0 0 0 0', '0 0 1e7 1e7', '0 0 -5 -5', '0 0 1e-9 1e-9', 'a b c d', '0 0 72000 72000', '']

interface Spot {
  at: number
  length: number
  told: string
}

/** The last of what a pattern holds, at each place that it is found. */
const spotsOf = (text: string, pattern: RegExp): Spot[] =>
  [...text.matchAll(pattern)].map((found) => {
    const told = found.slice(1).find((group) => group !== undefined) ?? ''
    return { at: found.index + found[0].lastIndexOf(told), length: told.length, told }
  })

/** A number, a reference or a name of a PDF file is not what it should be. */
export function lieInPdf(whole: Buffer, chance: Chance): Buffer {
  const text = whole.toString('latin1')
  const patterns = [NUMBERED, NUMBERED, NUMBERED, PLACES, MATRICES, REFERENCES, NAMES]
  const pattern = chance.of(patterns) ?? NUMBERED
  const spot = chance.of(spotsOf(text, pattern))
  if (spot === undefined) return Buffer.from(whole)
  const names = [
    'FlateDecode',
    'CCITTFaxDecode',
    'JBIG2Decode',
    'JPXDecode',
    'DCTDecode',
    'LZWDecode',
    'Pattern',
  ]
  const number = Number.isFinite(Number(spot.told)) ? lie(chance, Math.abs(Number(spot.told)), 2) : 0
  const lies =
    pattern === NAMES
      ? names
      : pattern === REFERENCES
        ? Array.from({ length: 12 }, (_, i) => String(i))
        : pattern === MATRICES && spot.told.includes(' ')
          ? BOXES
          : [...LIES, String(number), String(number)]
  const told = chance.of(lies) ?? ''
  // Half the time nothing else moves, so that the table of places stays right.
  const fitted = chance.whole(0, 1) === 0 ? told.padEnd(spot.length).slice(0, Math.max(spot.length, 1)) : told
  return Buffer.from(text.slice(0, spot.at) + fitted + text.slice(spot.at + spot.length), 'latin1')
}
