import { element } from '../linear-algebra/element.ts'
import type { Lattice, LatticeSlot } from './lattice.ts'

/** One way to read all slots. */
export interface LatticeText {
  readonly text: string
  readonly probability: number
}

/** The likeliest texts of a lattice, and what is not among them. Together with what is unnamed, all sum to 1. */
export interface LatticeTexts {
  /** Likeliest first, as many as were wanted; two ways to read the slots may come to one text. */
  readonly texts: readonly LatticeText[]
  /** Of the texts that begin as none can that is sought, all together; and the likeliest of them. */
  readonly dismissed: { readonly probability: number; readonly likeliest: LatticeText | null }
  /** Probability of the texts that were not looked at. */
  readonly unsearched: number
  /** Probability that some slot holds a glyph without a name. */
  readonly unnamed: number
}

/** How far to search. */
export interface SearchLimits {
  /** Texts at most. */
  readonly most: number
  /** Whether nothing that is sought begins so or, of a whole text, is so: all that does is dismissed at once. */
  readonly isHopeless: (beginning: string, whole: boolean) => boolean
}

/** The first slots of a text, read. */
interface Beginning {
  readonly text: string
  readonly slots: number
  readonly probability: number
  /** Probability of the likeliest text that begins so. */
  readonly reach: number
}

/** What is left of a probability that nobody asks for. */
const NEGLIGIBLE = 1e-9

/** Beginnings looked at for each text that is wanted, at most. */
const STEPS_A_TEXT = 12

/**
 * The likeliest texts of a lattice, one after another: a search that always goes on from the beginning that reaches
 * furthest, so that it can stop anywhere and knows what it left.
 * @throws RangeError for a slot whose probabilities are no probabilities
 */
export function textsByProbability({ slots }: Lattice, { most, isHopeless }: SearchLimits): LatticeTexts {
  const sorted = slots.map(alternativesInOrder)
  /** Of the slots from each on: the likeliest text, its probability, and that of all texts together. */
  const rest: Rest[] = [{ text: '', most: 1, all: 1 }]
  for (const alternatives of [...sorted].reverse()) {
    const { text, most, all } = element(rest, 0)
    const sum = alternatives.reduce((total, { probability }) => total + probability, 0)
    const [first = { text: '', probability: 0 }] = alternatives
    rest.unshift({ text: first.text + text, most: first.probability * most, all: sum * all })
  }
  const { all: named, most: furthest } = element(rest, 0)
  const texts: LatticeText[] = []
  let left = named
  let dismissed = 0
  let likeliest: LatticeText | null = null
  const open = new FurthestFirst()
  if (furthest > 0) open.put({ text: '', slots: 0, probability: 1, reach: furthest })
  for (let step = 0; step < most * STEPS_A_TEXT && texts.length < most && left > NEGLIGIBLE; step++) {
    const beginning = open.take()
    if (beginning === undefined) {
      left = 0
      break
    }
    if (beginning.slots === slots.length) {
      texts.push({ text: beginning.text, probability: beginning.probability })
      left -= beginning.probability
      continue
    }
    const after = element(rest, beginning.slots + 1)
    for (const alternative of element(sorted, beginning.slots)) {
      const text = beginning.text + alternative.text
      const probability = beginning.probability * alternative.probability
      const reach = probability * after.most
      if (isHopeless(text, beginning.slots + 1 === slots.length)) {
        dismissed += probability * after.all
        left -= probability * after.all
        if (reach > (likeliest?.probability ?? 0)) likeliest = { text: text + after.text, probability: reach }
      } else open.put({ text, slots: beginning.slots + 1, probability, reach })
    }
  }
  const unsearched = left > NEGLIGIBLE ? left : 0
  return {
    texts,
    dismissed: { probability: dismissed, likeliest },
    unsearched,
    unnamed: Math.max(0, 1 - named),
  }
}

interface Rest {
  readonly text: string
  readonly most: number
  readonly all: number
}

/** What a slot could hold, likeliest first; of probabilities that sum to a little more than 1, as much less. */
function alternativesInOrder({ alternatives }: LatticeSlot): LatticeSlot['alternatives'] {
  const sum = alternatives.reduce((total, { probability }) => total + probability, 0)
  if (!(sum <= 1 + 1e-6) || alternatives.some(({ probability }) => !(probability >= 0))) {
    throw new RangeError('The probabilities of a slot are negative, no numbers or more than 1 together.')
  }
  const scale = 1 / Math.max(1, sum)
  return alternatives
    .filter(({ probability }) => probability > 0)
    .map(({ text, probability }) => ({ text, probability: probability * scale }))
    .sort((a, b) => b.probability - a.probability)
}

/** A binary heap of beginnings; of those that reach as far, the longer first, so that it comes to whole texts. */
class FurthestFirst {
  readonly #heap: Beginning[] = []

  put(one: Beginning): void {
    const heap = this.#heap
    let i = heap.push(one) - 1
    while (i > 0) {
      const above = (i - 1) >> 1
      if (!goesBefore(one, element(heap, above))) break
      heap[i] = element(heap, above)
      i = above
    }
    heap[i] = one
  }

  take(): Beginning | undefined {
    const heap = this.#heap
    const first = heap[0]
    const last = heap.pop()
    if (first === undefined || last === undefined || heap.length === 0) return first
    let i = 0
    for (;;) {
      let below = 2 * i + 1
      if (below >= heap.length) break
      const right = heap[below + 1]
      if (right !== undefined && goesBefore(right, element(heap, below))) below += 1
      if (!goesBefore(element(heap, below), last)) break
      heap[i] = element(heap, below)
      i = below
    }
    heap[i] = last
    return first
  }
}

const goesBefore = (a: Beginning, b: Beginning): boolean =>
  a.reach > b.reach * (1 + 1e-12) || (a.reach >= b.reach * (1 - 1e-12) && a.slots > b.slots)
