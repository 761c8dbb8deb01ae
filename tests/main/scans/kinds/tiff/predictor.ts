import type { Picture } from '../picture.ts'

/** Each sample less the one to its left: horizontal differencing. Source: TIFF 6.0, section 14. */
export function differences(whole: Picture): Picture {
  const { width, samples, bits, values } = whole
  const mask = 2 ** bits - 1
  return {
    ...whole,
    values: values.map((value, i) =>
      i % (width * samples) < samples ? value : (value - (values[i - samples] ?? 0)) & mask,
    ),
  }
}
