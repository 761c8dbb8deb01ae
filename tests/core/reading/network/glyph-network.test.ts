import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import wabt from 'wabt'
import { GlyphNetwork } from '../../../../src/core/reading/network/glyph-network.ts'
import { fromHalfFloats } from '../../../../src/core/reading/network/half-floats.ts'
import { KERNEL } from '../../../../src/core/reading/network/kernel-module.ts'
import type { NetworkWeights } from '../../../../src/core/reading/network/weights-form.ts'

interface Small {
  weights: NetworkWeights
  width: number
  height: number
  ink: number[]
  out: number[]
}

const read = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8')
const small = JSON.parse(read('data/small-network.json')) as Small
const field = {
  width: small.width,
  height: small.height,
  ink: Float32Array.from(small.ink, (v) => v / 255),
}

describe('the network of glyphs', () => {
  // PyTorch 1.13.1, training/reading/fixture.py: the same network with numbers at random.
  it('gives what PyTorch gives', () => {
    const map = new GlyphNetwork(small.weights).look(field)
    expect([map.rows, map.columns, map.channels]).toEqual([6, 18, 8])
    expect(map.numbers).toHaveLength(small.out.length)
    // Its weights are kept to eleven binary digits.
    small.out.forEach((value, i) => {
      expect(Math.abs((map.numbers[i] ?? Number.NaN) - value)).toBeLessThan(0.004)
    })
  })

  it('gives the same again, whatever it looked at meanwhile', () => {
    const network = new GlyphNetwork(small.weights)
    const first = network.look(field).numbers
    network.look({ width: 401, height: 203, ink: new Float32Array(401 * 203).fill(0.7) })
    expect(network.look(field).numbers).toEqual(first)
  })

  it('refuses weights that are not those of its layers', () => {
    expect(() => new GlyphNetwork({ ...small.weights, stem: 16 })).toThrow(/weights are \d+ numbers/)
  })

  it('runs what its source says', async () => {
    const source = read('../../../../src/core/reading/network/kernel.wat')
    const { buffer } = (await wabt()).parseWat('kernel.wat', source, { simd: true }).toBinary({})
    expect(KERNEL).toBe(Buffer.from(buffer).toString('base64'))
  })
})

describe('numbers of 16 bits', () => {
  // IEEE 754-2008, binary16: values from its definition.
  it('are read as the standard says', () => {
    const bits = [0x3c00, 0xc000, 0x7bff, 0x0400, 0x0001, 0x8000, 0x7c00, 0x3555]
    const bytes = new Uint8Array(bits.flatMap((v) => [v & 255, v >> 8]))
    const values = [1, -2, 65_504, 2 ** -14, 2 ** -24, -0, Number.POSITIVE_INFINITY, 0.333251953125]
    expect([...fromHalfFloats(bytes)]).toEqual(values)
  })
})
