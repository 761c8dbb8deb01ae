import { mkdir, symlink, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { contentType } from '../../../src/main/services/page/content-types.ts'
import { readPageFiles } from '../../../src/main/services/page/page-files.ts'
import { ServiceError } from '../../../src/main/services/service-error.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'

async function page(): Promise<string> {
  const folder = await temporaryFolder()
  await mkdir(join(folder, 'assets/fonts'), { recursive: true })
  await writeFile(join(folder, 'index.html'), '<!doctype html>')
  await writeFile(join(folder, 'assets/page.js'), 'export {}')
  await writeFile(join(folder, 'assets/fonts/plan.woff2'), new Uint8Array([1, 2, 3]))
  return folder
}

test('every file of the page has its address and media type, and the page itself stands at /', async () => {
  const files = await readPageFiles(await page())
  expect([...files].map(([address, { type }]) => [address, type]).sort()).toEqual([
    ['/', 'text/html; charset=utf-8'],
    ['/assets/fonts/plan.woff2', 'font/woff2'],
    ['/assets/page.js', 'text/javascript; charset=utf-8'],
    ['/index.html', 'text/html; charset=utf-8'],
  ])
  expect([...(files.get('/assets/fonts/plan.woff2')?.bytes ?? [])]).toEqual([1, 2, 3])
})

test('a link that leads out of the page is no file of it', async () => {
  const folder = await page()
  const outside = await temporaryFolder()
  await writeFile(join(outside, 'job.json'), '{}')
  await symlink(join(outside, 'job.json'), join(folder, 'assets/job.json'))
  await symlink(outside, join(folder, 'outside'))
  expect([...(await readPageFiles(folder)).keys()].filter((address) => /job/.test(address))).toEqual([])
})

test.each(['.', 'none'])('a page that was not built is said with what to do (%s)', async (name) => {
  const asked = readPageFiles(join(await temporaryFolder(), name))
  await expect(asked).rejects.toThrow(ServiceError)
  await expect(asked).rejects.toThrow('run npm run build')
})

test('what has no known extension is bytes, never a page', () => {
  expect(contentType('LICENSE')).toBe('application/octet-stream')
  expect(contentType('page.html.bak')).toBe('application/octet-stream')
  expect(contentType('PAGE.JS')).toBe('text/javascript; charset=utf-8')
})
