import { asSentence } from '../../../core/words/as-sentence.ts'

const oneLine = (message: string): string =>
  message
    .replace(/^error:\s*/i, '')
    .replace(/[\p{Cc}\s]+/gu, ' ')
    .trim()

/**
 * Where one sentence ends and another begins; not after an initial, as in `A. Rivet`. The first letter is caught
 * only of a plain word, for a name keeps its case.
 */
const NEXT_SENTENCE =
  /(?<!(?:^|[\s(])\p{Lu})\. (?:([A-Z])(?=[a-z]*(?:'[a-z]+)?[,;.?!]?(?: |$))|(?=\p{Lu}|["'`]))/gu

/** A message as a part of a longer sentence: full stops inside become semicolons, the one at the end goes. */
export const oneClause = (message: string): string =>
  oneLine(message)
    .replace(NEXT_SENTENCE, (_, letter: string | undefined) => `; ${(letter ?? '').toLowerCase()}`)
    .replace(/\.$/, '')

/**
 * A message as one sentence on one line: no `error:` before it, a capital at its start, a full stop at its end.
 * Names and paths keep their case; a message that could begin with one puts it in quotes.
 */
export const oneSentence = (message: string): string => asSentence(oneClause(message))
