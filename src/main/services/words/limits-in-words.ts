import type { Limits } from '../../../contract/limits.ts'

const GIB = 1024 ** 3
const MIB = 1024 ** 2

const inBytes = (bytes: number): string => {
  if (bytes % GIB === 0) return `${bytes / GIB} GiB`
  if (bytes % MIB === 0) return `${(bytes / MIB).toLocaleString('en')} MiB`
  return `${bytes.toLocaleString('en')} bytes`
}

const IN_WORDS: { [Name in keyof Limits]: (value: number) => string } = {
  pixels: (value) => `${value.toLocaleString('en')} pixels`,
  pages: (value) => `${value.toLocaleString('en')} pages`,
  bytes: inBytes,
  memory: inBytes,
  seconds: (value) => `${value.toLocaleString('en')} s`,
}

/** A limit with its unit, e.g. `2 GiB`. */
export const limitInWords = (name: keyof Limits, value: number): string => IN_WORDS[name](value)

/** How a person raises a limit, as the end of a sentence. */
export const howToRaise = (name: keyof Limits): string =>
  `set the limit "${name}" higher under "Size limits", at the Sheet station, or with "scantling limits --set ${name}=NUMBER"`
