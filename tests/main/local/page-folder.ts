import { mkdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'

/** A page as the build lays it down, and beside it a file that is nobody's business. */
export async function pageFolder(): Promise<string> {
  const parent = await temporaryFolder()
  const folder = join(parent, 'page')
  await mkdir(join(folder, 'assets'), { recursive: true })
  await writeFile(join(folder, 'index.html'), '<!doctype html><title>Workbench</title>')
  await writeFile(join(folder, 'assets', 'index.js'), 'export {}')
  await writeFile(join(parent, 'secret.txt'), 'FROM OUTSIDE')
  return folder
}
