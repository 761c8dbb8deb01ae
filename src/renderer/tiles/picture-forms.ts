import { type Ink, settledInk } from '../../core/imaging/index.ts'
import type { FormMakers } from './kept-pictures.ts'
import { isMostlyDark, luminance } from './luminance.ts'

/** Grey values of a picture, row by row. */
export interface GreyTile {
  width: number
  height: number
  data: Uint8Array
}

/** What a scan is drawn in and on, as its overview tells. */
export interface Tone {
  /** Whether it is light on dark. */
  dark: boolean
  /** Whether its strokes are dark or light; null where it does not show that. */
  ink: Ink | null
}

/** The forms in which a picture of a scan is needed. */
export interface PictureForms {
  /** As the page shows it: the browser decodes it when it draws it, and keeps what it likes of that. */
  image: HTMLImageElement
  /** Decoded, for what draws from it: the lens, crops on cards. */
  bitmap: ImageBitmap
  /** What a search looks at. */
  grey: GreyTile
  tone: Tone
}

const RGBA = 4

export const PICTURE_FORMS: FormMakers<PictureForms> = {
  image: {
    make: imageOf,
    bytes: ({ naturalWidth, naturalHeight }) => RGBA * naturalWidth * naturalHeight,
    close(image) {
      const { src } = image
      image.remove()
      // What the browser decoded of it goes at once, and not when its garbage is collected.
      image.removeAttribute('src')
      URL.revokeObjectURL(src)
    },
  },
  bitmap: {
    make: (bytes) => createImageBitmap(bytes),
    bytes: ({ width, height }) => RGBA * width * height,
    close: (bitmap) => bitmap.close(),
  },
  grey: {
    make: (bytes) => drawn(bytes, ({ width, height }) => [width, height]),
    bytes: ({ data }) => data.length,
  },
  tone: {
    make: async (bytes) => ({
      dark: isMostlyDark((await drawn(bytes, () => [SAMPLES, SAMPLES])).data),
      ink: settledInk(await drawn(bytes, ({ width, height }) => [width, height])),
    }),
    bytes: () => 0,
  },
}

/** Whether a picture is dark is told by so many samples across and down. */
const SAMPLES = 24

async function imageOf(bytes: Blob): Promise<HTMLImageElement> {
  const image = new Image()
  image.alt = ''
  image.draggable = false
  // Or it would be blank for a frame while it is decoded beside the drawing.
  image.decoding = 'sync'
  image.src = URL.createObjectURL(bytes)
  try {
    await image.decode()
  } catch (error) {
    URL.revokeObjectURL(image.src)
    throw error
  }
  return image
}

/** The greys of a picture, drawn as large as is asked for. */
async function drawn(
  bytes: Blob,
  size: (picture: ImageBitmap) => readonly [width: number, height: number],
): Promise<GreyTile> {
  const picture = await createImageBitmap(bytes)
  try {
    const [width, height] = size(picture)
    const canvas = new OffscreenCanvas(width, height)
    const context = canvas.getContext('2d', { willReadFrequently: true })
    if (context === null) throw new Error('The browser gave no canvas to read a picture from.')
    context.drawImage(picture, 0, 0, width, height)
    const data = luminance(context.getImageData(0, 0, width, height).data)
    // Its memory goes at once, and not when its garbage is collected.
    canvas.width = 0
    canvas.height = 0
    return { width, height, data }
  } finally {
    picture.close()
  }
}
