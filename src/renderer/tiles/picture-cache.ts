/** A decoded picture; an ImageBitmap in the window. */
export interface DecodedPicture {
  readonly width: number
  readonly height: number
  close(): void
}

const bytesOf = ({ width, height }: DecodedPicture): number => 4 * width * height

/** Decoded pictures by their address, bounded in bytes: what was not looked at for longest goes first. */
export class PictureCache<P extends DecodedPicture> {
  readonly #pictures = new Map<string, P>()
  readonly #limit: number
  #bytes = 0

  /** @param limit bytes, four for each pixel */
  constructor(limit: number) {
    this.#limit = limit
  }

  get bytes(): number {
    return this.#bytes
  }

  get limit(): number {
    return this.#limit
  }

  has(address: string): boolean {
    return this.#pictures.has(address)
  }

  /** The picture, which counts as looked at now. */
  get(address: string): P | undefined {
    const picture = this.#pictures.get(address)
    if (picture === undefined) return undefined
    this.#pictures.delete(address)
    this.#pictures.set(address, picture)
    return picture
  }

  put(address: string, picture: P): void {
    this.#drop(address)
    this.#pictures.set(address, picture)
    this.#bytes += bytesOf(picture)
    for (const oldest of this.#pictures.keys()) {
      if (this.#bytes <= this.#limit || oldest === address) return
      this.#drop(oldest)
    }
  }

  clear(): void {
    for (const address of [...this.#pictures.keys()]) this.#drop(address)
  }

  #drop(address: string): void {
    const picture = this.#pictures.get(address)
    if (picture === undefined) return
    this.#pictures.delete(address)
    this.#bytes -= bytesOf(picture)
    picture.close()
  }
}
