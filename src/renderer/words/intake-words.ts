/** Millions of pixels, in words. */
export const megapixels = (pixels: number): string => {
  const millions = pixels / 1e6
  return `${millions < 10 ? millions.toFixed(1) : Math.round(millions)} megapixels`
}

type DrawnPage = {
  page: number
  /** Pixels. */
  width: number
  height: number
}

const drawnSize = ({ page, width, height }: DrawnPage): string =>
  `Page ${page} would have ${width} × ${height} px, ${megapixels(width * height)}.`

/** What is to be known or is wrong of the pages that are wanted of a scan, or of a file, in sentences. */
export const INTAKE_WORDS = {
  'intake.no-page': (p: { text: string }) => `“${p.text}” is no page: write them as 1-3, 5.`,
  'intake.beyond-last': (p: { page: number; last: number }) =>
    `There is no page ${p.page}: the last one is ${p.last}.`,
  'intake.backwards': (p: { text: string; from: number; to: number }) =>
    `“${p.text}” runs backwards: write it as ${p.to}-${p.from}.`,
  'intake.drawn-size': (p: DrawnPage) => drawnSize(p),
  'intake.too-many-pixels': (p: DrawnPage & { limit: number; most: number }) =>
    `${drawnSize(p)} The limit is ${megapixels(p.limit)}: draw it at ${p.most} dpi or less, or raise the limit.`,
  'intake.wrong-password': () =>
    'This password does not open it: look at capitals and spaces, and try again.',
  'intake.notes-too-large': (p: { file: string }) =>
    `${p.file} is larger than any file of notes should be, so it was not read: look whether it is the right one.`,
} as const
