import type { AnyReason, Catalogue, PartsOf, ReasonOf, Say } from './reason.ts'

/** What a layer makes and says its reasons with. */
export interface Speech<C extends Catalogue> {
  /** A reason by its code and parts; without parts where its sentence takes none. */
  reason<K extends keyof C & string>(
    code: K,
    ...parts: Parameters<C[K]> extends [] ? [] : [PartsOf<C, K>]
  ): ReasonOf<C, K>
  /** Its words. Those of `other` layers are asked for what this catalogue does not have. */
  inWords: Say
}

/**
 * Speech by a catalogue.
 * @param other says the reasons of the layer below, which may be parts of reasons of this one
 * @throws RangeError, from `inWords`, for a code that nobody has words for
 */
export function speak<C extends Catalogue>(catalogue: C, other?: Say): Speech<C> {
  const sentences = ({ code, parts }: AnyReason): readonly string[] => {
    const words = Object.hasOwn(catalogue, code) ? catalogue[code] : undefined
    if (words === undefined) {
      if (other === undefined) throw new RangeError(`There are no words for the reason ${code}.`)
      return other.sentences({ code, parts })
    }
    const said = words(parts as never, inWords)
    return typeof said === 'string' ? [said] : said
  }
  const inWords: Say = Object.assign((reason: AnyReason) => sentences(reason).join(' '), { sentences })
  return {
    inWords,
    reason: (code, ...[parts]) => ({ code, parts: parts ?? {} }) as never,
  }
}
