import { describe, expect, it } from 'vitest'
import { newJob } from '../../../src/core/job/model/new-job.ts'
import { nameOfLabel, nameProblem } from '../../../src/renderer/entering/name-of-label.ts'
import { sentenceOf } from '../../../src/renderer/words/window-words.ts'

describe('the name in formulas of what a person calls a dimension', () => {
  it.each([
    ['Length of drum', 'length_of_drum'],
    ['Neck, outside Ø', 'neck_outside_dia'],
    ['  Bolt circle (8 holes) ', 'bolt_circle_8_holes'],
    ['2nd rivet', 'd_2nd_rivet'],
    ['Größe', 'grosse'],
    ['Écart', 'ecart'],
    ['pi', 'pi_dim'],
    ['constructor', 'constructor_dim'],
    ['—', ''],
    ['', ''],
  ])('%s → %s', (label, name) => {
    expect(nameOfLabel(label)).toBe(name)
  })

  it.each(['Length of drum', '2nd rivet', 'pi', 'sin', 'toString', 'in', 'Größe'])(
    'is one that formulas can use: %s',
    (label) => {
      expect(nameProblem(newJob('Winch', 'in'), nameOfLabel(label))).toBeNull()
    },
  )

  it('is refused when it is taken, or when formulas could not read it', () => {
    const job = newJob('Winch', 'in')
    job.dimensions.push({ name: 'bore', label: 'Bore', kind: 'length', evidence: [] })
    expect(sentenceOf(nameProblem(job, 'bore'))).toBe('There is a dimension bore already.')
    expect(sentenceOf(nameProblem(job, 'bore depth'))).toMatch(/write letters a to z, digits and underscores/)
    expect(sentenceOf(nameProblem(job, 'pi'))).toMatch(/already means something in formulas/)
  })
})
