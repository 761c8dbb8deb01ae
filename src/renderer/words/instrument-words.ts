/** What is wrong with an instrument that is being written, in sentences. */
export const INSTRUMENT_WORDS = {
  'instrument.no-name': () =>
    'An instrument needs a name, by which it is told from others: 6 in dial caliper.',
  'instrument.name-taken': (p: { name: string }) =>
    `There is an instrument called ${p.name} already: write what tells them apart.`,
  'instrument.no-resolution': () => 'Write the smallest step that it shows, as in 0.001 in or 0.02 mm.',
} as const
