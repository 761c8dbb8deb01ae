/** Fonts for what is lettered over a sheet, as a canvas takes them; families and sizes are those of the window. */
export interface LetteringFonts {
  figure: string
  fraction: string
  /** CSS pixels. */
  figureSize: number
  fractionSize: number
  under: string
  word: string
}

/** Numerator and denominator beside the whole number. */
const FRACTION = 0.85

let fonts: LetteringFonts | undefined

/** Reads the fonts from the window's tokens, once. */
export function lettering(): LetteringFonts {
  fonts ??= read()
  return fonts
}

function read(): LetteringFonts {
  const style = getComputedStyle(document.documentElement)
  const rem = Number.parseFloat(style.fontSize)
  const size = (token: string): number => Number.parseFloat(style.getPropertyValue(token)) * rem
  const narrow = style.getPropertyValue('--narrow')
  const [figureSize, small] = [size('--size'), size('--size-small')]
  const fractionSize = Math.round(FRACTION * figureSize)
  return {
    figure: `500 ${figureSize}px ${narrow}`,
    fraction: `500 ${fractionSize}px ${narrow}`,
    figureSize,
    fractionSize,
    under: `400 ${small}px ${narrow}`,
    word: `600 ${small}px ${narrow}`,
  }
}
