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

/** What people call the things that stand in a reason by their ids, by these. */
export type LabelsById = { readonly [id: string]: string }

/** A reason of any layer. */
export interface AnyReason {
  readonly code: string
  readonly parts: { readonly [name: string]: Part }
  /** Only of what people call otherwise than by its id. */
  readonly names?: LabelsById
}

/** Puts a reason that is a part of another into words. */
export interface Say {
  (reason: AnyReason): string
  /** Its sentences one by one: what is so and, where that is said apart, what to do now. */
  sentences(reason: AnyReason): readonly string[]
  /** What people call the thing with an id: `circle 12`; the id where that is what they call it by. */
  label(id: string): string
  /** The same with a noun before an id: `mark M12`, and `circle 12`. */
  item(noun: string, id: string): string
  /** The same with an id in quotes: `mark "M12"`, and `circle 12`. */
  quotedItem(noun: string, id: string): string
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
  [Code in K]: { readonly code: Code; readonly parts: PartsOf<C, Code>; readonly names?: LabelsById }
}[K]

/** Whether a part of a reason is itself a reason. */
export const isReason = (part: Part): part is AnyReason =>
  typeof part === 'object' &&
  part !== null &&
  'code' in part &&
  'parts' in part &&
  typeof part.code === 'string'
