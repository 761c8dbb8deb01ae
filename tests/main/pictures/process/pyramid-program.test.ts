import { mkdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { pyramidProgram } from '../../../../src/main/services/pictures/process/pyramid-program.ts'
import { temporaryFolder } from '../../fixtures/temporary-folder.ts'

test('the program that cuts tiles is found from the built programs, their shared parts and the source', async () => {
  const root = await temporaryFolder()
  const built = join(root, 'out', 'main')
  const source = join(root, 'src', 'main', 'services', 'pictures', 'process')
  for (const folder of [join(built, 'chunks'), source]) await mkdir(folder, { recursive: true })
  // One that lies in a folder above belongs to somebody else.
  await writeFile(join(root, 'pyramid.js'), '')
  for (const from of [built, join(built, 'chunks'), source]) expect(pyramidProgram(from)).toBeUndefined()
  await writeFile(join(built, 'pyramid.js'), '')
  for (const from of [built, join(built, 'chunks'), source]) {
    expect(pyramidProgram(from)).toBe(join(built, 'pyramid.js'))
  }
})
