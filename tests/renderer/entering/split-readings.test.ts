import { describe, expect, it } from 'vitest'
import { newJob } from '../../../src/core/job/model/new-job.ts'
import { readReading } from '../../../src/core/ledger/evidence/found-reading.ts'
import { splitReadings } from '../../../src/renderer/entering/split-readings.ts'

describe('readings in one line', () => {
  it.each([
    ['140,2 140.25 140,18', ['140,2', '140.25', '140,18']],
    ['11 1/2 11 17/32', ['11 1/2', '11 17/32']],
    ['3/8 1/2 2 3/8 ½ 11 ½', ['3/8', '1/2', '2 3/8', '½', '11 ½']],
    ['11 1/2" 11 17/32"', ['11 1/2"', '11 17/32"']],
    ["1'-2 3/8\" 1' 2 3/8\" 2' 3'", ['1\'-2 3/8"', '1\' 2 3/8"', "2'", "3'"]],
    ['1 ft 2 in 1 ft 3 in', ['1 ft 2 in', '1 ft 3 in']],
    ['  140.2 mm   140.3mm ', ['140.2 mm', '140.3mm']],
    ['140.2; 140.3\n140.4', ['140.2', '140.3', '140.4']],
    ['.375 .376', ['.375', '.376']],
    ['', []],
  ])('%j', (text, readings) => {
    expect(splitReadings(text, 'length')).toEqual(readings)
  })

  it('of angles keep minutes with their degrees', () => {
    expect(splitReadings("47° 30' 47° 45' 48°", 'angle')).toEqual(["47° 30'", "47° 45'", '48°'])
    expect(splitReadings('47 48', 'angle')).toEqual(['47', '48'])
  })

  it('of counts stay apart', () => {
    expect(splitReadings('12 12', 'count')).toEqual(['12', '12'])
  })

  it('take three digits after a comma for decimals only where the job writes decimals so', () => {
    expect(splitReadings('140,225 140.2', 'length', true)).toEqual(['140.225', '140.2'])
    const [left] = splitReadings('140,225', 'length')
    expect(() => readReading(left ?? '', 'length', newJob('Drum', 'mm'))).toThrow(/comma/)
  })

  it('are each a size that can be read', () => {
    const inches = newJob('Drum', 'in')
    const read = (text: string) =>
      splitReadings(text, 'length').map(
        (one) => Math.round((readReading(one, 'length', inches).value / 25.4) * 1e6) / 1e6,
      )
    expect(read('11 1/2 11 17/32 1\'-2 3/8"')).toEqual([11.5, 11.53125, 14.375])
  })
})
