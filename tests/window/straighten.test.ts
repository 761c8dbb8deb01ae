import { join } from 'node:path'
import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../src/core/geometry/frames.ts'
import { newJob } from '../../src/core/job/model/new-job.ts'
import { createJob } from '../../src/main/services/job-folder/create-job.ts'
import { readJobFolder } from '../../src/main/services/job-folder/read-job-folder.ts'
import { temporaryFolder } from '../main/fixtures/temporary-folder.ts'
import { inEachHost } from './harness/at-the-bench.ts'
import { placeOf } from './harness/sheet-hand.ts'
import { desk, sheetReady } from './steps.ts'

const SIZE = { width: 1800, height: 1300 }
/** How far round the sheet was laid on the scanner, degrees clockwise. */
const LAID = 3.3

const [MIDDLE_X, MIDDLE_Y] = [SIZE.width / 2, SIZE.height / 2]

/** Where something drawn on the sheet came to lie on the scan. */
function onScan(x: number, y: number): Pixel {
  const [cos, sin] = [Math.cos((LAID * Math.PI) / 180), Math.sin((LAID * Math.PI) / 180)]
  const [dx, dy] = [x - MIDDLE_X, y - MIDDLE_Y]
  return pixel(MIDDLE_X + cos * dx - sin * dy, MIDDLE_Y + sin * dx + cos * dy)
}

/** A job of a sheet with a border that was laid askew on the scanner, with one view. @returns its folder */
async function askewJob(): Promise<string> {
  const parent = await temporaryFolder()
  const scan = join(parent, 'askew.png')
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${SIZE.width}" height="${SIZE.height}">
    <rect width="100%" height="100%" fill="#e9e2d0"/>
    <g fill="none" stroke="#2a2823" stroke-width="4" transform="rotate(${LAID} ${MIDDLE_X} ${MIDDLE_Y})">
      <rect x="200" y="200" width="1400" height="900"/>
    </g>
  </svg>`
  await sharp(Buffer.from(svg)).png().toFile(scan)
  const folder = join(parent, 'job')
  await createJob(folder, [scan], ([added]) => {
    if (added === undefined) throw new Error('the scan was not added')
    return {
      ...newJob('Askew', 'mm'),
      people: [{ id: 'AR', name: 'A. Rivet' }],
      sheets: [{ id: 'S1', title: 'Askew', record: {}, scan: added.scan }],
      views: [{ id: 'V1', sheet: 'S1', name: 'Plan', mapping: 'two-axis', references: [] }],
    }
  })
  return folder
}

describe('A sheet that was laid askew on the scanner', () => {
  inEachHost((session) => {
    it('is squared up along its border, stays so when it is opened again, and can be taken back', async () => {
      const folder = await askewJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        const alongALine = person.button('Along an edge or line…')
        await person.click(alongALine)
        const [from, to] = [await placeOf(page, onScan(300, 200)), await placeOf(page, onScan(1500, 200))]
        await page.mouse.move(...from)
        await page.mouse.down()
        await page.mouse.move(...to, { steps: 4 })
        await page.mouse.up()
        const form = page.getByRole('form', { name: 'Square up the sheet' })
        await form.getByText(/3\.\d\d° clockwise on the scan/).waitFor()
        await person.press('Enter')
        await form.waitFor({ state: 'detached' })

        const { job } = await readJobFolder(folder)
        const straight = job.sheets[0]?.straight ?? Number.NaN
        // Two ends picked by hand, each a pixel of the screen or two of the scan off at most, 1200 pixels apart.
        expect(Math.abs(straight - LAID)).toBeLessThan(0.15)
        expect(job.views[0]?.grain).toBe(straight)
        await desk(page).getByText('3.3° anticlockwise').waitFor()
        await person.button(/^Undo square up sheet “/).waitFor()

        await person.click(alongALine)
        const [left, right] = [await placeOf(page, onScan(300, 200)), await placeOf(page, onScan(1500, 200))]
        // The lens says places to a tenth of a pixel.
        expect(Math.abs(right[1] - left[1])).toBeLessThan(3)
        await person.press('Escape')

        await page.reload()
        await sheetReady(page)
        await desk(page).getByText('3.3° anticlockwise').waitFor()

        await person.click(person.button('Take it back'))
        await desk(page).getByText('not turned').waitFor()
        const after = await readJobFolder(folder)
        expect(after.job.sheets[0]?.straight).toBeUndefined()
        expect(after.job.views[0]?.grain).toBeUndefined()
      })
    })
  })
})
