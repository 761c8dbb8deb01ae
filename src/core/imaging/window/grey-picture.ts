import type { GreyWindow } from './grey-window.ts'

/**
 * A scan in grey where a search looks at it: one window, or several that share no pixel, such as the tiles that a large
 * circle passes through. Between and beside them nothing is known of it, and nothing is made up.
 */
export type GreyPicture = GreyWindow | readonly GreyWindow[]

/** The windows that a picture consists of. */
export const windowsOf = (picture: GreyPicture): readonly GreyWindow[] =>
  'data' in picture ? [picture] : picture
