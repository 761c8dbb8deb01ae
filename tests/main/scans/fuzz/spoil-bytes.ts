import type { Chance } from './chance.ts'

/** Some bytes, here and there, are others. */
export function flipBytes(whole: Buffer, chance: Chance): Buffer {
  const spoiled = Buffer.from(whole)
  for (let count = chance.whole(1, 12); count > 0; count--) {
    const at = chance.whole(0, whole.length - 1)
    spoiled[at] = (whole[at] ?? 0) ^ chance.whole(1, 255)
  }
  return spoiled
}

/** As `flipBytes`, near the beginning, where files say what they are. */
export function flipHead(whole: Buffer, chance: Chance): Buffer {
  const head = Math.min(whole.length, 400)
  return Buffer.concat([flipBytes(whole.subarray(0, head), chance), whole.subarray(head)])
}

/** The file ends before its time. */
export const cutShort = (whole: Buffer, chance: Chance): Buffer =>
  Buffer.from(whole.subarray(0, chance.whole(1, whole.length - 1)))

/** A stretch in the middle is missing. */
export function cutOut(whole: Buffer, chance: Chance): Buffer {
  const from = chance.whole(0, whole.length - 1)
  const to = chance.whole(from, Math.min(whole.length, from + 600))
  return Buffer.concat([whole.subarray(0, from), whole.subarray(to)])
}
