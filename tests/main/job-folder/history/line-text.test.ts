import fc from 'fast-check'
import { expect, test } from 'vitest'
import { readLine, sha256, writeLine } from '../../../../src/main/services/job-folder/history/line-text.ts'

const edit = fc.record({
  do: fc.string(),
  note: fc.string({ unit: 'binary' }),
  value: fc.double({ noNaN: true }),
})
const line = fc.record({
  n: fc.nat(),
  at: fc.string(),
  by: fc.string({ unit: 'grapheme' }),
  previous: fc.string(),
  edit,
  back: edit,
  below: fc.option(fc.tuple(fc.nat(), fc.nat()), { nil: null }),
})

const asRead = (text: string) => readLine(Buffer.from(text).subarray(0, -1))

test('a line is read as it was written, with its length and its hash', () => {
  fc.assert(
    fc.property(line, (given) => {
      const { text, hash } = writeLine(given)
      expect(text.endsWith(`,"hash":"${hash}"}\n`)).toBe(true)
      expect(sha256(text.slice(0, text.lastIndexOf(',"hash":')))).toBe(hash)
      expect(JSON.parse(text)).toMatchObject({ length: Buffer.byteLength(text), hash })
      expect(asRead(text)).toEqual({ line: JSON.parse(JSON.stringify(given)), hash })
    }),
  )
})

test('a line with any byte changed, taken out or put in is not whole', () => {
  const change = fc.constantFrom('flip', 'drop', 'double', 'zero')
  fc.assert(
    fc.property(line, fc.double({ min: 0, max: 0.999_999, noNaN: true }), change, (given, where, how) => {
      const bytes = Buffer.from(writeLine(given).text).subarray(0, -1)
      const at = Math.floor(where * bytes.length)
      const byte = bytes[at] ?? 0
      const middle = { flip: [byte ^ 1], drop: [], double: [byte, byte], zero: [0] }[how]
      const spoilt = Buffer.concat([bytes.subarray(0, at), Buffer.from(middle), bytes.subarray(at + 1)])
      expect(readLine(spoilt)).toBeUndefined()
    }),
    { numRuns: 500 },
  )
})

test('a line end of another system does not make a line less whole', () => {
  const { text, hash } = writeLine({ n: 1, at: '', by: 'AR', previous: '', edit: {}, back: {}, below: null })
  expect(readLine(Buffer.from(text.replace('\n', '\r')))?.hash).toBe(hash)
})
