declare module '@cornerstonejs/codec-openjpeg' {
  interface Frame {
    width: number
    height: number
    bitsPerSample: number
    componentCount: number
    isSigned: boolean
  }

  interface Encoder {
    getDecodedBuffer(frame: Frame): Uint8Array
    getEncodedBuffer(): Uint8Array
    setQuality(lossless: boolean, quality: number): void
    setDecompositions(levels: number): void
    encode(): void
    delete(): void
  }

  export default function openjpeg(options?: {
    print?: (line: string) => void
  }): Promise<{ J2KEncoder: new () => Encoder }>
}
