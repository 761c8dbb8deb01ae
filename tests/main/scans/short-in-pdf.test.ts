import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { LIMITS } from '../../../src/contract/limits.ts'
import { jbig2IsWhole } from '../../../src/main/services/scans/pdf/whole/jbig2-is-whole.ts'
import { readTask } from '../../../src/main/services/scans/reader/read-task.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { group4 } from './kinds/ccitt/group-4.ts'
import { bitonalDrawing } from './kinds/drawing.ts'
import { jbig2Page } from './kinds/jbig2/generic-region.ts'
import { PdfFile, pdfOf, reference } from './kinds/pdf/pdf-file.ts'

const picture = bitonalDrawing()
const { width, height } = picture
const FAX = `/Filter /CCITTFaxDecode /DecodeParms << /K -1 /Columns ${width} /Rows ${height} >>`
const FAX_IN_LISTS = `/Filter [/CCITTFaxDecode] /DecodeParms [<< /K -1 /Columns ${width} >>]`
const JBIG2 = '/Filter /JBIG2Decode'

/** Reads the page of a PDF that a picture covers, whose stream is as long as the file says. */
async function read(filter: string, coded: Buffer): Promise<string> {
  const file = new PdfFile()
  const scan = file.stream(
    `/Type /XObject /Subtype /Image /Width ${width} /Height ${height} /ColorSpace /DeviceGray /BitsPerComponent 1 ` +
      filter,
    coded,
  )
  const path = join(await temporaryFolder(), 'plan.pdf')
  const content = `q ${width} 0 0 ${height} 0 0 cm /Scan Do Q`
  const resources = `/XObject << /Scan ${reference(scan)} >>`
  await writeFile(path, pdfOf(file, [{ box: [0, 0, width, height], content, resources }]))
  return readTask({ path, called: 'plan.pdf', limits: LIMITS, task: { do: 'page', page: 1 } }).then(
    () => 'taken',
    (error: Error) => error.message,
  )
}

const SHORT = "The picture on plan.pdf is damaged, so it can't be read: copy or scan it again."
const SHARES = [0.95, 0.8, 0.5, 0.1, 0.01]

describe('a picture in a PDF whose stream is whole, and its code is not', () => {
  test.each([
    ['Group 4', FAX, group4(picture)],
    ['Group 4, named in lists', FAX_IN_LISTS, group4(picture)],
    ['JBIG2', JBIG2, jbig2Page(picture)],
  ])('is refused in a sentence: %s', async (_, filter, coded) => {
    expect(await read(filter, coded)).toBe('taken')
    for (const share of SHARES) {
      const cut = coded.subarray(0, Math.max(1, Math.floor(coded.length * share)))
      expect(await read(filter, cut), `${share} of it`).toBe(SHORT)
    }
  })

  test('is taken when Group 4 has all rows and no end of its block, which a PDF may do without', async () => {
    const coded = group4(picture)
    // The end is 24 bits, and up to 7 that fill the last byte: without 3 bytes no row lacks anything.
    expect(await read(`${FAX.replace('>>', '/EndOfBlock false >>')}`, coded.subarray(0, -3))).toBe('taken')
  })
})

describe('the segments of JBIG2', () => {
  const coded = jbig2Page(picture)

  test('are whole with whatever follows the last one', () => {
    expect(jbig2IsWhole(coded)).toBe(true)
    for (const rest of ['\r\n', '\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0', 'endstream endobj 12 0 obj'])
      expect(jbig2IsWhole(Buffer.concat([coded, Buffer.from(rest, 'latin1')]))).toBe(true)
  })

  test('are not where any of them is cut', () => {
    // Between the two segments it can't be told: 11 bytes of a header, and 19 of the page.
    for (let length = 0; length < coded.length; length++) {
      if (length >= 30 && length < 41) continue
      expect(jbig2IsWhole(coded.subarray(0, length)), `${length} bytes`).toBe(false)
    }
  })

  test('may have names of other segments of one, two and four bytes, and pages of four', () => {
    const segment = (
      number: number,
      kind: number,
      counts: Buffer,
      names: number,
      page: number,
      data: number,
    ) => {
      const [head, length] = [Buffer.alloc(5), Buffer.alloc(4)]
      head.writeUInt32BE(number)
      head.writeUInt8(kind | (page === 4 ? 0x40 : 0), 4)
      length.writeUInt32BE(data)
      return Buffer.concat([
        head,
        counts,
        Buffer.alloc(names),
        Buffer.alloc(page),
        length,
        Buffer.alloc(data),
      ])
    }
    const five = Buffer.concat([Buffer.from([0xe0, 0, 0, 5]), Buffer.alloc(1)])
    const all = Buffer.concat([
      segment(1, 0, Buffer.from([0]), 0, 1, 7),
      segment(200, 6, Buffer.from([2 << 5]), 2 * 1, 1, 9),
      segment(300, 6, five, 5 * 2, 1, 11),
      segment(70_000, 6, Buffer.from([1 << 5]), 4, 4, 13),
    ])
    expect(jbig2IsWhole(all)).toBe(true)
    expect(jbig2IsWhole(all.subarray(0, -1))).toBe(false)
  })
})
