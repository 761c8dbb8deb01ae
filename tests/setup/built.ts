import { execFile } from 'node:child_process'
import { resolve } from 'node:path'
import { promisify } from 'node:util'
import chromium from '@sparticuz/chromium'

const BUILD = resolve(import.meta.dirname, '../../scripts/build-if-stale.mjs')

/**
 * Builds the program where what was built is older than its sources, and unpacks the browser: test files that run side by
 * side would unpack it over each other.
 */
export default async function setup(): Promise<void> {
  await chromium.executablePath()
  await promisify(execFile)(process.execPath, [BUILD])
}
