import { describe, expect, it } from 'vitest'
import { agreementInShort, knownSizesAgree } from '../../../src/core/words/known-sizes-agree.ts'

describe('how well figured sizes agree, in words', () => {
  it('says that nothing checks sizes that only just suffice', () => {
    expect(knownSizesAgree(null)).toMatch(/^Nothing checks these sizes yet/)
    expect(agreementInShort(null)).toBe('have nothing to check them')
  })

  it.each([
    [0.538, 'agree as well as picks can tell: good sizes would differ this much 54 times in a hundred'],
    [1, 'agree as well as picks can tell: good sizes would differ this much more than 99 times in a hundred'],
    [4e-8, 'do not agree: good sizes would differ this much less than once in a thousand'],
    [0.0073, 'do not agree: good sizes would differ this much once in a hundred'],
    [0.0026, 'do not agree: good sizes would differ this much less than once in a hundred'],
  ])('says at %d that they %s', (p, said) => {
    expect(knownSizesAgree(p)).toBe(`The figured sizes ${said}.`)
    expect(said.startsWith(agreementInShort(p))).toBe(true)
  })
})
