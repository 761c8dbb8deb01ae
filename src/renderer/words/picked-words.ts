/** What stands in the way of keeping what was picked, or of taking away what was, in sentences. */
export const PICKED_WORDS = {
  'picked.other-corners': (p: { wanted: number; given: number }) =>
    `It was picked with ${p.wanted} corners, and this pick has ${p.given}: cancel it and pick the same corners.`,
  'picked.flat-outline': () =>
    'The two corners lie on one line: cancel this and pick corners that are opposite each other.',
  'picked.no-old-mark': () =>
    'Shift takes a mark that is there already, and none that would do lies there: let Shift go to pick anew.',
  'picked.taken-already': (p: { what: string }) =>
    `That is on ${p.what}, which was taken whole: pick what comes next.`,
  'picked.same-again': (p: { kind: 'line' | 'circle' }) =>
    `That is the same ${p.kind} again, and was not taken: pick the other one.`,
  'picked.mark-in-use': () => 'It can’t be removed while something rests on it.',
} as const
