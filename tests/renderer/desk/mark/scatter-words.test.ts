import { expect, it } from 'vitest'
import { peopleInWords } from '../../../../src/renderer/desk/mark/scatter-words.ts'

const people = { n: 2, s: 1, within: 0.5, between: 2.1, p: 0.01, by: 'groups' as const }

it('people who do not pick a mark alike are told from the scatter of one hand', () => {
  expect(peopleInWords(people)).toBe(
    "By 2 people: within one person's hand by 0.50 px, between people by 2.1 px. They do not pick it alike. How far the people agree says how sure their mean is.",
  )
})

it('what may be chance is called so', () => {
  expect(peopleInWords({ ...people, between: 0.2, p: 0.3 })).toBe(
    "By 2 people: within one person's hand by 0.50 px, between people by 0.20 px, which may be chance. How far the people agree says how sure their mean is.",
  )
  expect(peopleInWords({ ...people, between: 0, p: 0.8, by: 'all' })).toBe(
    "By 2 people: within one person's hand by 0.50 px, between people by no more than that explains.",
  )
})

it('people who picked it once each can’t be told from their hands', () => {
  expect(peopleInWords({ ...people, n: 3, within: null, between: null, p: null })).toBe(
    'By 3 people, once each: whether they pick it alike can be told when one of them picks it again.',
  )
})
