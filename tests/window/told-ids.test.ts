import { describe, expect, it } from 'vitest'
import { inHost } from './harness/at-the-bench.ts'
import { localLauncher } from './harness/local-launcher.ts'

const IDS = [
  'm-23456789bcdfg',
  'by person htkz',
  'adopted evidence 9kdt for collar',
  'figured size 2b2b: 3 mm',
]
const NAMES = [
  'point 4',
  'person Eve',
  'sheet 2345',
  'view from the side',
  'line 25 mm',
  'evidence that counts',
]

describe('The end of an id that a person is told', () => {
  inHost(localLauncher(), (session) => {
    it('is a fault like a whole one, and a number or a name is none', async () => {
      await session({ opens: 'start' }, async ({ page, window }) => {
        await page.getByRole('main').waitFor()
        await page.evaluate(
          (texts) => document.body.append(...texts.map((text) => new Text(text))),
          [...IDS, ...NAMES],
        )
        const found = window.faults.found as string[]
        await expect.poll(() => found.length).toBeGreaterThanOrEqual(IDS.length)
        const told = found.splice(0)
        expect(told).toEqual(IDS.map((text) => expect.stringContaining(text)))
      })
    })
  })
})
