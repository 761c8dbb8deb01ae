import { withPresentWords } from './former-labels.ts'
import { afterNoun, type Labelled, labelOf } from './label.ts'

/** In one case, as people say the same name now so and now so. */
export const inOneCase = (text: string): string => text.trim().toLowerCase()

/** Something that people also call by words of their own: a name, a title, what it marks. */
interface Worded extends Labelled {
  readonly title?: string | undefined
  readonly label?: string | undefined
}

/** The words that people have for a thing beside its label: its name or title, what it marks. */
export const ownWords = ({ name, title, label }: Worded): string[] =>
  [name, title, label].filter((text) => text !== undefined && text.trim() !== '') as string[]

/**
 * The things that a person may mean by a text: the one whose id it is; else those whose label it is, or the number in it;
 * else those that go by it in words of their own, whatever its case. More than one where it does not tell them apart.
 */
export function thingsCalled<T extends Worded>(items: readonly T[], said: string): readonly T[] {
  const byId = items.find(({ id }) => id === said)
  if (byId !== undefined) return [byId]
  const wanted = inOneCase(said)
  const label = withPresentWords(wanted)
  const byLabel = items.filter(
    (item) => inOneCase(labelOf(item)) === label || afterNoun(item) === said.trim(),
  )
  return byLabel.length > 0
    ? byLabel
    : items.filter((item) => ownWords(item).some((words) => inOneCase(words) === wanted))
}
