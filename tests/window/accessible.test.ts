import { describe, expect, it } from 'vitest'
import { inEachHost } from './harness/at-the-bench.ts'
import { bringRow, tableSettled } from './harness/table-in-window.ts'
import { type Found, inBothLights } from './harness/violations.ts'
import { oneOf, sheetReady } from './steps.ts'

/** Some forty looks at the whole window, each of a second and more on a machine that does much else; milliseconds. */
const PATIENCE = 240_000

const STATIONS = ['Sheet', 'Scale', 'Pick', 'Read']

describe('Somebody who hears the window, or sees it badly, finds nothing in the way', () => {
  inEachHost((session) => {
    it('on the start page, light and dark', async () => {
      await session({ opens: 'start' }, async ({ page, person }) => {
        await person.button('Open the sample').waitFor()
        expect(await inBothLights(page, 'start page')).toEqual([])
        await person.press('Shift+?')
        await page.getByRole('dialog', { name: 'Keys' }).waitFor()
        expect(await inBothLights(page, 'keys')).toEqual([])
      })
    })

    it(
      'at each station, on the card and in the dialogs, light and dark',
      async () => {
        await session({ opens: 'sample', withoutPictures: true }, async ({ page, person }) => {
          await page.getByRole('application').waitFor()
          const found: Found[] = await inBothLights(page, 'while pictures are made')
          await sheetReady(page)
          await tableSettled(page)
          for (const station of STATIONS) {
            await person.station(station)
            found.push(...(await inBothLights(page, station)))
          }
          await person.station('Scale')
          await person.click(oneOf(page, 'Add a figured size', 'Two points'))
          found.push(...(await inBothLights(page, 'picking a figured size')))
          await person.station('Pick')
          await person.click(oneOf(page, 'What to measure', 'Between points'))
          await person.click(page.getByRole('application'))
          await person.press('p')
          await page.getByRole('form', { name: 'What was picked' }).waitFor()
          found.push(...(await inBothLights(page, 'naming what was picked')))
          await person.click(person.button('Cancel'))
          await person.station('Sheet')

          await person.click(person.button(/^Notes \(/))
          await person.click(page.getByRole('list', { name: 'Notes' }).getByRole('button').first())
          await page.getByRole('article', { name: 'Note 1' }).waitFor()
          found.push(...(await inBothLights(page, 'card of a note')))
          await person.click(person.button('Write a note'))
          found.push(...(await inBothLights(page, 'picking the region of a note')))
          await person.click(person.button('The whole sheet'))
          await page.getByRole('form', { name: 'Note' }).waitFor()
          found.push(...(await inBothLights(page, 'writing a note')))
          await person.click(person.button('Cancel'))
          await person.click(person.button(/^Notes \(/))
          await person.click(person.button('Back to Sheet'))
          await person.click(person.button('Size limits…'))
          await page.getByRole('dialog', { name: 'Size limits' }).waitFor()
          found.push(...(await inBothLights(page, 'limits')))
          await person.press('Escape')

          for (const name of ['hood_od', 'flange_bore']) {
            await person.click(await bringRow(page, name))
            await page.getByRole('article', { name: `Card of ${name}` }).waitFor()
            found.push(...(await inBothLights(page, `card of ${name}`)))
          }
          await person.click(person.button('Add evidence').first())
          found.push(...(await inBothLights(page, 'adding evidence')))
          await person.click(person.button(/, change the instrument$/))
          await page.getByRole('dialog', { name: 'Instruments of this job' }).waitFor()
          found.push(...(await inBothLights(page, 'instruments')))
          await person.click(person.button('New instrument…'))
          found.push(...(await inBothLights(page, 'new instrument')))
          await person.press('Escape')
          await person.click(person.button('New dimension…'))
          await page.getByRole('form', { name: 'New dimension' }).waitFor()
          found.push(...(await inBothLights(page, 'new dimension')))
          await person.press('Escape')
          await person.click(person.button(/^All cautions/))
          await page.getByRole('dialog', { name: 'Cautions' }).waitFor()
          found.push(...(await inBothLights(page, 'cautions')))
          await person.press('Escape')
          await person.click(person.button(/^At work/))
          await page.getByRole('menu').waitFor()
          found.push(...(await inBothLights(page, 'menu')))
          await person.click(page.getByText('Somebody else…'))
          await page.getByRole('dialog', { name: 'Who is at work?' }).waitFor()
          found.push(...(await inBothLights(page, 'who is at work')))
          expect(found).toEqual([])
        })
      },
      PATIENCE,
    )
  })
})
