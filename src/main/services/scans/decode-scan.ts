import { ServiceError } from '../service-error.ts'

/**
 * Decodes one page of a scan, the first unless said otherwise, once, to see that its pixels are all there; row by row, so that a large sheet
 * needs little memory (a progressive or interlaced file is held whole by its decoder).
 * @param name what messages call the file
 * @throws ServiceError when it is truncated or damaged
 */
export async function mustDecode(path: string, name: string = path, page = 1): Promise<void> {
  const { default: sharp } = await import('sharp')
  try {
    await sharp(path, { failOn: 'error', sequentialRead: true, limitInputPixels: false, page: page - 1 })
      .resize(16, 16, { fit: 'fill', fastShrinkOnLoad: false })
      .raw()
      .toBuffer()
  } catch {
    throw new ServiceError(
      `The scan ${name} is truncated or damaged, so not all of its picture can be read: copy or scan it again.`,
    )
  }
}
