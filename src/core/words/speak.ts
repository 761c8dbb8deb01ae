import { mintedFor } from '../job/ids/id-form.ts'
import { labelOfId, withNoun } from '../job/ids/label.ts'
import { quoted } from './quoted.ts'
import type { AnyReason, Catalogue, LabelsById, PartsOf, ReasonOf, Say } from './reason.ts'

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

const NO_NAMES: LabelsById = {}

/** How things are called by these names; a minted id without a name is no word for a person either. */
function naming(names: LabelsById): Pick<Say, 'label' | 'item' | 'quotedItem'> {
  const label = (id: string): string =>
    Object.hasOwn(names, id) ? (names[id] ?? id) : mintedFor(id) === undefined ? id : labelOfId(id)
  return {
    label,
    item: (noun, id) => withNoun(noun, id, label(id)),
    quotedItem: (noun, id) => withNoun(noun, id, label(id) === id ? quoted(id) : label(id)),
  }
}

/**
 * Speech by a catalogue.
 * @param other says the reasons of the layer below, which may be parts of reasons of this one
 * @throws RangeError, from `inWords`, for a code that nobody has words for
 */
export function speak<C extends Catalogue>(catalogue: C, other?: Say): Speech<C> {
  const sayWith = (around: LabelsById): Say => {
    const sentences = ({ code, parts, names }: AnyReason): readonly string[] => {
      const known = names === undefined ? around : { ...around, ...names }
      const words = Object.hasOwn(catalogue, code) ? catalogue[code] : undefined
      if (words === undefined) {
        if (other === undefined) throw new RangeError(`There are no words for the reason ${code}.`)
        return other.sentences(known === NO_NAMES ? { code, parts } : { code, parts, names: known })
      }
      const said = words(parts as never, known === around ? say : sayWith(known))
      return typeof said === 'string' ? [said] : said
    }
    const say: Say = Object.assign((reason: AnyReason) => sentences(reason).join(' '), {
      sentences,
      ...naming(around),
    })
    return say
  }
  return {
    inWords: sayWith(NO_NAMES),
    reason: (code, ...[parts]) => ({ code, parts: parts ?? {} }) as never,
  }
}
