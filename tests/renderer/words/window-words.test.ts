import { describe, expect, it } from 'vitest'
import { CoreError } from '../../../src/core/words/core-error.ts'
import { reason as coreReason } from '../../../src/core/words/core-words.ts'
import { attempted, refusalOf } from '../../../src/renderer/words/refusal.ts'
import { inWords, reason, sentenceOf } from '../../../src/renderer/words/window-words.ts'

const missing = coreReason('edit.no-such-dimension', { name: 'bore' })
const refuse = (): never => {
  throw new CoreError(missing)
}

describe('what the window says', () => {
  it('has words for its own reasons and for those of core', () => {
    expect(inWords(reason('intake.beyond-last', { page: 12, last: 9 }))).toBe(
      'There is no page 12: the last one is 9.',
    )
    expect(inWords(missing)).toContain('bore')
  })

  it('stands by itself as a sentence, and is nothing where there is nothing to say', () => {
    expect(sentenceOf(coreReason('annotation.no-target'))).toBe('It has no target.')
    expect(sentenceOf(null)).toBe('')
  })

  it('is nothing where nobody has words for a reason: that is a fault', () => {
    expect(() => inWords({ code: 'nobody.knows', parts: {} })).toThrow(RangeError)
  })
})

describe('something that core may refuse', () => {
  it('comes to what was done, or to the reason why it was not', () => {
    expect(attempted(() => 3)).toEqual({ done: 3 })
    expect(attempted(refuse)).toEqual({ refused: missing })
    expect(refusalOf(() => 3)).toBeNull()
    expect(refusalOf(refuse)).toEqual(missing)
  })

  it('does not hide a fault of the program', () => {
    expect(() =>
      refusalOf(() => {
        throw new TypeError('fault')
      }),
    ).toThrow(TypeError)
  })
})
