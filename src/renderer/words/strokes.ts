/** Why the window found no stroke, or did not look for one, in sentences. Why there is none in the scan, core says. */
export const SEARCH_WORDS = {
  'search.nothing-pointed-at': () => 'Nothing was pointed at yet.',
  'search.line-wants-two-picks': () => 'A line is looked for between two picks.',
  'search.circle-wants-three-picks': () => 'A circle is looked for through three picks.',
  'search.too-far-off': () => 'Too far off to tell which stroke is meant: go closer to find it.',
  'search.two-strokes': () =>
    'Two strokes lie here that look like one from so far off: go closer, with the key Z, to say which is meant.',
  'search.other-ink': () =>
    'What lies here is not in the ink that is looked for but in the other, as white across a black area is. To look for that, press I.',
  'search.too-large': () =>
    'That is more of the scan than can be looked over in one go: pick nearer together, or by hand.',
  'search.scan-not-come': () =>
    'This part of the scan has not come in time: cancel it and pick once more, or go on by hand.',
  'search.stopped': () =>
    'The part of the program that looks for strokes has stopped: pick by hand, or reload the window. The job is safe.',
  'search.fault': (p: { error: string }) =>
    `The stroke could not be looked for because of a fault in the program (${p.error}). Pick by hand, and please report this.`,
} as const
