/** What stands in the way of keeping what was picked, or of taking away what was, in sentences. */
export const PICKED_WORDS = {
  'picked.other-corners': (p: { wanted: number; given: number }) =>
    `It was picked with ${p.wanted} corners, and this pick has ${p.given}: cancel it and pick the same corners.`,
  'picked.flat-outline': () =>
    'The two corners lie on one line: cancel this and pick corners that are opposite each other.',
  'picked.mark-in-use': () => 'It can’t be removed while something rests on it.',
} as const
