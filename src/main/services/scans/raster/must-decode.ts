import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import type { ScanFormat } from '../file/scan-format.ts'
import { openRaster } from './open-raster.ts'

/**
 * Decodes one page of a scan once, to see that its pixels are all there; row by row, so that a large sheet needs
 * little memory (a progressive or interlaced file is held whole by its decoder).
 * @param called what messages call the file
 * @throws ServiceError when it is truncated or damaged
 */
export async function mustDecode(
  path: string,
  called: string = path,
  page = 1,
  format?: ScanFormat,
): Promise<void> {
  try {
    // A tile of a TIFF that is not there is no more than a warning to the library.
    const picture = await openRaster(path, page, format === 'tiff' ? { failOn: 'warning' } : {})
    await picture.resize(16, 16, { fit: 'fill', fastShrinkOnLoad: false }).raw().toBuffer()
  } catch {
    throw new ServiceError(reason('raster.not-all-there', { scan: called }))
  }
}
