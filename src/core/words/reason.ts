/**
 * Why something is so, as data: a code and its parts. Programs go by the code; people read the words, which stand in
 * one place for each layer: a catalogue of sentences, one a code.
 */

/** What a part may be: anything that JSON holds, reasons among it. */
export type Part =
  | string
  | number
  | boolean
  | null
  | undefined
  | AnyReason
  | readonly Part[]
  | { readonly [name: string]: Part }

/** A reason of any layer. */
export interface AnyReason {
  readonly code: string
  readonly parts: { readonly [name: string]: Part }
}

/** Puts a reason that is a part of another into words. */
export interface Say {
  (reason: AnyReason): string
  /** Its sentences one by one: what is so and, where that is said apart, what to do now. */
  sentences(reason: AnyReason): readonly string[]
}

/** The sentence of each code, or its sentences, made from its parts. */
export type Catalogue = {
  readonly [code: string]: (parts: never, say: Say) => string | readonly string[]
}

/** The parts that the sentence of a code is made from. */
export type PartsOf<C extends Catalogue, K extends keyof C> =
  Parameters<C[K]> extends [infer P, ...unknown[]] ? P : Record<never, never>

/** A reason that a catalogue has words for. */
export type ReasonOf<C extends Catalogue, K extends keyof C & string = keyof C & string> = {
  [Code in K]: { readonly code: Code; readonly parts: PartsOf<C, Code> }
}[K]

/** Whether a part of a reason is itself a reason. */
export const isReason = (part: Part): part is AnyReason =>
  typeof part === 'object' &&
  part !== null &&
  'code' in part &&
  'parts' in part &&
  typeof part.code === 'string'
