import { describe, expect, it } from 'vitest'
import { evaluationOrder } from '../../../src/core/formula/evaluation-order.ts'
import { checkFormulas as reasonAgainst } from '../../../src/core/job/checks/check-formulas.ts'
import { itemsOf } from '../../../src/core/job/checks/check-names.ts'
import type { Dimension, Job } from '../../../src/core/job/model/types.ts'
import { inWords } from '../../../src/core/words/core-words.ts'

const checkFormulas = (job: Job): string | null => {
  const reason = reasonAgainst({ job, items: itemsOf(job) })
  return reason === null ? null : inWords(reason)
}

const derived = (name: string, ...formulas: string[]): Dimension => ({
  name,
  label: name,
  kind: 'length',
  evidence: formulas.map((formula, i) => ({ id: `${name}-${i}`, basis: 'derived', formula })),
})
const job = (...dimensions: Dimension[]) => ({
  format: 'scantling-job' as const,
  version: 1 as const,
  title: 'Ventilator',
  unit: 'mm' as const,
  people: [],
  instruments: [],
  sheets: [],
  views: [],
  marks: [],
  dimensions,
  relations: [],
  notes: [],
})
const orderOf = (dimensions: Dimension[]): string[] => {
  const found = evaluationOrder(dimensions)
  if ('circle' in found) throw new Error(found.circle.join(' '))
  return found.order.map((d) => d.name)
}

describe('formulas that use one another', () => {
  it('are worked out in an order in which each follows what it uses', () => {
    const order = orderOf([
      derived('overall', 'drum + rim'),
      derived('rim', 'neck / 2'),
      derived('neck'),
      derived('drum', 'neck * 3'),
    ])
    const at = (name: string): number => order.indexOf(name)
    expect(at('neck')).toBeLessThan(at('rim'))
    expect(at('neck')).toBeLessThan(at('drum'))
    expect(at('overall')).toBe(3)
  })

  it('are refused when they run in a circle, and the circle is named', () => {
    const problem = checkFormulas(
      job(derived('neck', 'drum / 3'), derived('drum', 'rim * 2'), derived('rim', 'neck + 2 mm')),
    )
    expect(problem).toBe(
      'neck refers to itself by way of drum, then rim. Change or withdraw one of these formulas.',
    )
  })

  it('are refused when one uses itself', () => {
    expect(checkFormulas(job(derived('neck', 'neck * 1')))).toMatch(/^neck refers to itself\./)
  })

  it('are free again when one is withdrawn', () => {
    const withdrawn = derived('rim', 'neck + 2 mm')
    withdrawn.evidence = withdrawn.evidence.map((e) => ({ ...e, withdrawn: 'a slip' }))
    expect(checkFormulas(job(derived('neck', 'rim / 3'), withdrawn))).toBeNull()
  })

  it('may form a chain of thousands', () => {
    const chain = Array.from({ length: 5000 }, (_, i) =>
      i === 0 ? derived('d0') : derived(`d${i}`, `d${i - 1} + 1 mm`),
    ).reverse()
    expect(orderOf(chain)[0]).toBe('d0')
  })

  it('name what is wrong: an unknown name, a wrong kind, mixed units', () => {
    expect(checkFormulas(job(derived('rim', 'nekc * 2'), derived('neck')))).toMatch(
      /Dimension "rim".*uses nekc, but no dimension has that name/,
    )
    expect(checkFormulas(job(derived('rim', 'neck * neck'), derived('neck')))).toMatch(
      /gives an area, but the dimension is a length/,
    )
    expect(checkFormulas(job(derived('rim', 'neck + 3'), derived('neck')))).toMatch(/mixes units/)
  })
})
