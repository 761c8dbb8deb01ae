/** A number as PDF has it: without exponent. */
export const real = (value: number): string => String(Number(value.toFixed(6)))

export const reference = (number: number): string => `${number} 0 R`

/** Objects of a PDF file, numbered as they come. Source: ISO 32000-1, 7.3 to 7.5. */
export class PdfFile {
  readonly #objects: Buffer[] = []

  /** A number for an object that is told later. */
  reserve(): number {
    return this.#objects.push(Buffer.alloc(0))
  }

  set(number: number, body: string): number {
    this.#objects[number - 1] = Buffer.from(body, 'latin1')
    return number
  }

  add(body: string): number {
    return this.set(this.reserve(), body)
  }

  /** @param entries of its dictionary, without the length */
  stream(entries: string, data: Buffer | string): number {
    const bytes = Buffer.from(data as string, 'latin1')
    const number = this.reserve()
    this.#objects[number - 1] = Buffer.concat([
      Buffer.from(`<< ${entries} /Length ${bytes.length} >>\nstream\n`, 'latin1'),
      bytes,
      Buffer.from('\nendstream', 'latin1'),
    ])
    return number
  }

  /** The file, with a table of where each object lies. */
  bytes(catalogue: number): Buffer {
    const pieces = [Buffer.from('%PDF-1.7\n%\xb5\xb6\xb7\xb8\n', 'latin1')]
    let at = pieces[0]?.length ?? 0
    const places = this.#objects.map((body, i) => {
      const whole = Buffer.concat([Buffer.from(`${i + 1} 0 obj\n`), body, Buffer.from('\nendobj\n')])
      pieces.push(whole)
      at += whole.length
      return at - whole.length
    })
    const rows = places.map((place) => `${String(place).padStart(10, '0')} 00000 n \n`)
    const size = places.length + 1
    const table = `xref\n0 ${size}\n0000000000 65535 f \n${rows.join('')}`
    const trailer = `trailer\n<< /Size ${size} /Root ${reference(catalogue)} >>\nstartxref\n${at}\n%%EOF\n`
    return Buffer.concat([...pieces, Buffer.from(table + trailer, 'latin1')])
  }
}

export interface PdfPage {
  /** Corners of the paper, points. */
  box: readonly [number, number, number, number]
  rotate?: number
  content: string
  /** Entries of the resources. */
  resources?: string
  /** Further entries of the page. */
  entries?: string
}

/** A file of some pages that `file` has the resources of. */
export function pdfOf(file: PdfFile, pages: readonly PdfPage[]): Buffer {
  const tree = file.reserve()
  const numbers = pages.map(({ box, rotate, content, resources = '', entries = '' }) => {
    const body = file.stream('', content)
    const turn = rotate === undefined ? '' : `/Rotate ${rotate}`
    return file.add(
      `<< /Type /Page /Parent ${reference(tree)} /MediaBox [${box.map(real).join(' ')}] ${turn} ` +
        `/Resources << ${resources} >> /Contents ${reference(body)} ${entries} >>`,
    )
  })
  file.set(tree, `<< /Type /Pages /Kids [${numbers.map(reference).join(' ')}] /Count ${numbers.length} >>`)
  return file.bytes(file.add(`<< /Type /Catalog /Pages ${reference(tree)} >>`))
}
