import { asSentence } from '../../../core/words/as-sentence.ts'
import { plainText } from '../../../core/words/plain-text.ts'
import { withoutStop } from '../../../core/words/without-stop.ts'

const isSmall = (sign: string): boolean => sign !== sign.toUpperCase() || sign === ',' || sign === "'"

/** A sentence as it goes on after a semicolon: small at its start, where that is a plain word and no name. */
function goingOn(sentence: string): string {
  const [word = ''] = sentence.split(' ', 1)
  const [first = '', ...others] = word
  return others.every(isSmall) ? first.toLowerCase() + sentence.slice(first.length) : sentence
}

/** Sentences that follow one another as one, on one line: `The view has no scale; add a reference.` */
export const oneSentence = ([first = '', ...rest]: readonly string[]): string =>
  asSentence([first, ...rest.map(goingOn)].map((text) => withoutStop(plainText(text))).join('; '))
