import { beforeEach, describe, expect, it } from 'vitest'
import { radians } from '../../../src/core/geometry/angle-units.ts'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { useBench } from '../../../src/renderer/bench/bench-store.ts'
import { cameras, setCamera } from '../../../src/renderer/camera/camera-store.ts'
import { lookCloser } from '../../../src/renderer/camera/look-at.ts'
import { sampleJob } from '../sample-job.ts'

const SHEET = sampleJob.sheets[0]?.id ?? ''

describe('looking closer by one key', () => {
  beforeEach(() => {
    const opened = { job: sampleJob } as NonNullable<ReturnType<typeof useBench.getState>['opened']>
    useBench.setState({ opened, sheet: SHEET })
    cameras.setState({ box: { width: 974, height: 472 } })
  })

  it('comes close and leads back, at whatever size the sheet was seen', () => {
    for (let k = 0; k < 200; k++) {
      const camera = {
        centre: pixel(1200, 900),
        zoom: 0.1 + 0.0037 * k,
        turn: radians(0),
        mirror: false,
      } as const
      setCamera(SHEET, camera)
      lookCloser(pixel(1300, 950))
      expect(cameras.getState().of[SHEET]?.zoom).toBeCloseTo(1, 9)
      lookCloser(pixel(1300, 950))
      expect(cameras.getState().of[SHEET]).toEqual(camera)
    }
  })
})
