/**
 * How a file asks to be shown, by its Exif orientation.
 * Source: Exif 2.32 (CIPA DC-008), tag 274: which corner of the picture the first row and column are at.
 */
const ASKED: Readonly<Record<number, string>> = {
  2: 'mirrored, left for right',
  3: 'turned half round',
  4: 'mirrored, top for bottom',
  5: 'turned a quarter anticlockwise and mirrored, top for bottom',
  6: 'turned a quarter clockwise',
  7: 'turned a quarter clockwise and mirrored, top for bottom',
  8: 'turned a quarter anticlockwise',
}

/** How the file asks to be shown, in words; null when it asks for nothing. */
export const orientationInWords = (orientation: number | undefined): string | null =>
  orientation === undefined ? null : (ASKED[orientation] ?? null)
