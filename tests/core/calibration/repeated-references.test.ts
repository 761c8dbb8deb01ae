import { describe, expect, it } from 'vitest'
import { calibrate } from '../../../src/core/calibration/calibrate.ts'
import { distanceReference } from '../../../src/core/calibration/reference.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'
import { exact } from '../../../src/core/uncertainty/uncertain.ts'
import { repeatedPoint, viewOf, type XY } from '../measuring/marks.ts'

describe('eight honest references, each end picked twice', () => {
  it('are not called suspect or misfitting more often than chance allows', () => {
    const random = randomStream(1911)
    const sheets = 1000
    let suspect = 0
    let misfit = 0
    for (let i = 0; i < sheets; i++) {
      const pick = ([x, y]: XY): XY => [x + random.normal(), y + random.normal()]
      const twice = (id: string, p: XY) => repeatedPoint(id, [pick(p), pick(p)])
      const sizes = Array.from({ length: 8 }, (_, r) => {
        const a = (Math.PI * r) / 8
        const [c, s] = [900 * Math.cos(a), 900 * Math.sin(a)]
        return distanceReference(
          `R${r}`,
          twice(`A${r}`, [2000 - c, 2000 - s]),
          twice(`B${r}`, [2000 + c, 2000 + s]),
          exact(180),
        )
      }).flat()
      const { p, references } = calibrate(viewOf('uniform', sizes), sizes)
      if (references.some((r) => r.suspect)) suspect++
      if (p !== null && p < 0.05) misfit++
    }
    console.log(
      `picked twice: a suspect in ${((100 * suspect) / sheets).toFixed(1)} %, p < 0.05 in ${((100 * misfit) / sheets).toFixed(1)} %`,
    )
    // Eight tests at 0.1 % each, and one at 5 %; three standard deviations of 1000 sheets above.
    expect(suspect / sheets).toBeLessThan(0.017)
    expect(misfit / sheets).toBeLessThan(0.071)
  })
})
