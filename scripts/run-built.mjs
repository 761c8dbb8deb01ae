/** Bundles one of this project's programs as the shipped code is bundled, then runs it: for figures of speed. */
import { mkdir, mkdtemp, rm } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { build } from 'vite'

const [file, ...rest] = process.argv.slice(2)
if (file === undefined) {
  console.error('run-built: name the TypeScript file to run.')
  process.exit(2)
}
await mkdir('out', { recursive: true })
const folder = await mkdtemp(join('out', 'bench-'))
try {
  await build({
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: resolve(file),
      outDir: folder,
      minify: false,
      rolldownOptions: { output: { entryFileNames: 'program.mjs' } },
    },
  })
  process.argv = [process.argv[0] ?? 'node', resolve(file), ...rest]
  await import(pathToFileURL(resolve(folder, 'program.mjs')).href)
} finally {
  await rm(folder, { recursive: true, force: true })
}
