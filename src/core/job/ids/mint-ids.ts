import { ALPHABET, beginningOf, type IdKind, LENGTH } from './id-form.ts'

/** Gives so many random bytes, each value as likely as any other and none to be foreseen from those before. */
export type RandomBytes = (count: number) => Uint8Array

/** Gives a new id for something of a kind, e.g. `m-7k3f9q2xw5tzb` for a mark. */
export type Mint = (kind: IdKind) => string

/** Bytes from here up would make the first characters of the alphabet likelier than the rest. */
const TOO_LARGE = 256 - (256 % ALPHABET.length)

/**
 * What gives ids to all that is added to a job: 62 bits of chance each, so that no two copies of the job, worked on
 * apart, ever come to give the same one.
 * @param random the chance that they are made of
 */
export function mintIds(random: RandomBytes): Mint {
  return (kind) => {
    let id = beginningOf(kind)
    const whole = id.length + LENGTH
    while (id.length < whole) {
      for (const byte of random(whole - id.length)) {
        if (byte < TOO_LARGE) id += ALPHABET[byte % ALPHABET.length]
      }
    }
    return id
  }
}
