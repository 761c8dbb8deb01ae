/** Runs one of this project's TypeScript programs without a build: `node scripts/run-ts.mjs FILE [ARGUMENT…]`. */
import { resolve } from 'node:path'
import { runnerImport } from 'vite'

const [file, ...rest] = process.argv.slice(2)
if (file === undefined) {
  console.error('run-ts: name the TypeScript file to run.')
  process.exit(2)
}
process.argv = [process.argv[0] ?? 'node', resolve(file), ...rest]
await runnerImport(resolve(file), { configFile: false, logLevel: 'error' })
