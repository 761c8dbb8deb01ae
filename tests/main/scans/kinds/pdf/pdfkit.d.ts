declare module 'pdfkit' {
  interface Options {
    size?: [width: number, height: number]
    margin?: number
    pdfVersion?: '1.3' | '1.4' | '1.6' | '1.7ext3'
    userPassword?: string
    info?: Record<string, unknown>
  }

  export default class PDFDocument {
    constructor(options: Options)
    on(event: 'data', heard: (chunk: Buffer) => void): this
    on(event: 'end', heard: () => void): this
    image(bytes: Buffer, x: number, y: number, size: { width: number; height: number }): this
    end(): void
  }
}
