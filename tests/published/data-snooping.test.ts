import statistics from 'jstat'
import { describe, expect, it } from 'vitest'
import { calibrate } from '../../src/core/calibration/calibrate.ts'
import { SUSPECT_ABOVE } from '../../src/core/calibration/data-snooping.ts'
import { lengthReference, viewOf } from '../core/measuring/marks.ts'

const { normal } = statistics.jStat

describe('suspect observations after Baarda, "A testing procedure for use in geodetic networks" (1968)', () => {
  it('are those beyond the two-sided 0.1 % point of the normal distribution, 3.29', () => {
    expect(normal.inv(1 - 0.001 / 2, 0, 1).toFixed(2)).toBe('3.29')
    expect(SUSPECT_ABOVE).toBe(3.29)
    expect(2 * normal.cdf(-SUSPECT_ABOVE, 0, 1)).toBeCloseTo(0.001, 5)
  })

  // Exact picks and stated sizes of u 0.1 mm: size = scale · length is linear in the scale.
  const u = 0.1
  const lengths = [500, 800, 650, 1000]

  function both(stated: number[]) {
    const sizes = lengths.flatMap((length, i) =>
      lengthReference(`R${i + 1}`, [100, 100 * i], [100 + length, 100 * i], stated[i] ?? 0, u, 0),
    )
    const squares = lengths.reduce((s, l) => s + l * l, 0)
    const scale = lengths.reduce((s, l, i) => s + l * (stated[i] ?? 0), 0) / squares
    const residuals = lengths.map((l, i) => (stated[i] ?? 0) - scale * l)
    return {
      calibration: calibrate(viewOf('uniform', sizes), sizes),
      w: residuals.map((r, i) => r / (u * Math.sqrt(1 - (lengths[i] ?? 0) ** 2 / squares))),
      chi2: residuals.reduce((s, r) => s + (r / u) ** 2, 0),
    }
  }

  it('are found by w = r / √Q_r, which a line through the origin lets one work by hand', () => {
    const { calibration, w, chi2 } = both([50.05, 79.9, 65.12, 100.02])
    calibration.references.forEach((reference, i) => {
      expect(reference.w).toBeCloseTo(w[i] ?? 0, 6)
      expect(reference.suspect).toBe(false)
    })
    expect(calibration.chi2).toBeCloseTo(chi2, 6)
    expect(calibration.dof).toBe(3)
  })

  it('are named when w passes the bound', () => {
    const { calibration, w } = both([50.05, 79.9, 65.4, 100.02])
    expect(w[2]).toBeGreaterThan(3.29)
    expect(calibration.references[2]?.w).toBeCloseTo(w[2] ?? 0, 6)
    expect(calibration.references.map((r) => r.suspect)).toEqual([false, false, true, false])
  })
})
