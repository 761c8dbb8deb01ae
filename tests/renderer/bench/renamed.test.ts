import { describe, expect, it } from 'vitest'
import { renamed } from '../../../src/renderer/bench/renamed.ts'

describe('a dimension that is chosen', () => {
  const rename = (name: string, to: string) => ({ do: 'rename-dimension' as const, name, to })

  it('stays chosen under its new name, also where several edits are made as one', () => {
    expect(renamed('drum', rename('drum', 'cone'))).toBe('cone')
    const both = { do: 'several' as const, name: 'swap', edits: [rename('drum', 'x'), rename('x', 'cone')] }
    expect(renamed('drum', both)).toBe('cone')
  })

  it('keeps its name when another is renamed or something else is done', () => {
    expect(renamed('drum', rename('neck', 'throat'))).toBe('drum')
    expect(renamed('drum', { do: 'adopt', dimension: 'drum', adopt: 'mean' })).toBe('drum')
  })
})
