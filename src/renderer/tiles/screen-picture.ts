import type { DecodedPicture } from './picture-cache.ts'

/** A picture as the page shows it: the browser decodes it when it draws it, and keeps what it likes of that. */
export class ScreenPicture implements DecodedPicture {
  readonly image: HTMLImageElement

  private constructor(image: HTMLImageElement) {
    this.image = image
  }

  /** @throws DOMException when the bytes are no picture */
  static async of(bytes: Blob): Promise<ScreenPicture> {
    const image = new Image()
    image.alt = ''
    image.draggable = false
    // Or it would be blank for a frame while it is decoded beside the drawing.
    image.decoding = 'sync'
    image.src = URL.createObjectURL(bytes)
    const picture = new ScreenPicture(image)
    try {
      await image.decode()
    } catch (error) {
      picture.close()
      throw error
    }
    return picture
  }

  get width(): number {
    return this.image.naturalWidth
  }

  get height(): number {
    return this.image.naturalHeight
  }

  close(): void {
    const { src } = this.image
    this.image.remove()
    // What the browser decoded of it goes at once, and not when its garbage is collected.
    this.image.removeAttribute('src')
    URL.revokeObjectURL(src)
  }
}
