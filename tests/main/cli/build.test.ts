import { randomBytes } from 'node:crypto'
import { rm } from 'node:fs/promises'
import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { runProgram } from '../fixtures/run-program.ts'

const ROOT = resolve(import.meta.dirname, '../../..')

test('the build needs no Electron runtime, warns of nothing, and gives a command line that runs', async () => {
  const outDir = resolve(ROOT, 'out/tests', randomBytes(6).toString('hex'))
  try {
    const electronVite = resolve(ROOT, 'node_modules/electron-vite/bin/electron-vite.js')
    const build = await runProgram(
      electronVite,
      ['build', '--logLevel', 'warn', '--outDir', outDir],
      '',
      ROOT,
    )
    expect(build).toEqual({ code: 0, stdout: '', stderr: '' })
    const { code, stdout } = await runProgram(resolve(outDir, 'main/cli.js'), ['--version'])
    expect([code, stdout]).toEqual([0, expect.stringMatching(/^\d+\.\d+\.\d+\n$/)])
  } finally {
    await rm(outDir, { recursive: true, force: true })
  }
})
