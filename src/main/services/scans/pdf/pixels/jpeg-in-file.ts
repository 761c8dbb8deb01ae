import { pictureLibrary } from '../../raster/open-raster.ts'
import { streamInFile } from '../file/stream-in-file.ts'
import { asGrey, type Pixels } from './pixels.ts'

const FILTER = /\/Filter\s*(?:\[\s*)?\/DCTDecode\s*\]?\s*(?=\/|>>)/
/** Whatever changes what the picture looks like. */
const CHANGED = /\/(?:Decode|SMask|Mask|DecodeParms|Indexed|Separation|DeviceN|Lab)\b/

/** Two decoders of JPEG differ by rounding, and by how they smooth halved colours. Mean, of 255. */
const NEAR = 6

/**
 * The JPEG file that a picture of a PDF is, taken out of it byte for byte, with its pixels as the library of pictures
 * decodes them. The library of PDF decodes JPEG less exactly (it does not smooth halved colours).
 * @param object as `LibraryPicture` has it
 * @param like what the picture looks like: it is only taken for the same when it does
 * @returns undefined when it is none, or not sure to be the one (of a locked file, for example)
 */
export async function jpegInFile(
  path: string,
  object: string | undefined,
  like: Pixels,
): Promise<{ file: Buffer; pixels: Pixels } | undefined> {
  if (object === undefined || like.bits === 1) return undefined
  const file = await rawJpeg(path, object)
  if (file === undefined) return undefined
  const sharp = await pictureLibrary()
  try {
    const picture = sharp(file, { failOn: 'error', limitInputPixels: false, ignoreIcc: true })
    const { data, info } = await picture.raw().toBuffer({ resolveWithObject: true })
    const samples = info.channels === 1 ? 1 : 3
    if (info.width !== like.width || info.height !== like.height || info.channels !== samples)
      return undefined
    const pixels: Pixels = { width: info.width, height: info.height, samples, bits: 8, data }
    return isNear(pixels, like) ? { file, pixels: asGrey(pixels) } : undefined
  } catch {
    return undefined
  }
}

async function rawJpeg(path: string, object: string): Promise<Buffer | undefined> {
  const stream = await streamInFile(path, object)
  if (stream === undefined || !FILTER.test(stream.dictionary) || CHANGED.test(stream.dictionary))
    return undefined
  return stream.read()
}

function isNear(one: Pixels, other: Pixels): boolean {
  let sum = 0
  const count = one.width * one.height
  for (let i = 0; i < count; i++) {
    for (let k = 0; k < one.samples; k++) {
      const theirs = other.data[i * other.samples + Math.min(k, other.samples - 1)] ?? 0
      sum += Math.abs((one.data[i * one.samples + k] ?? 0) - theirs)
    }
  }
  return sum / (count * one.samples) <= NEAR
}
