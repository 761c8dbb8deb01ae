#!/usr/bin/env node
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const built = new URL('../out/main/cli.js', import.meta.url)
if (existsSync(fileURLToPath(built))) {
  await import(built.href)
} else {
  process.stderr.write('Scantling has not been built yet: run npm run build\n')
  process.exitCode = 2
}
