import { execFile } from 'node:child_process'
import { readdir, stat } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { promisify } from 'node:util'
import chromium from '@sparticuz/chromium'

const ROOT = resolve(import.meta.dirname, '../..')

/** What the build is made of. */
const SOURCES = ['src', 'package.json', 'package-lock.json', 'electron.vite.config.ts', 'tsconfig.json']

/** Written by every build, each in a folder of its own. */
const BUILT = ['out/main/cli.js', 'out/main/electron.js', 'out/preload/index.cjs', 'out/renderer/index.html']

const changedAt = async (path: string): Promise<number> => (await stat(path)).mtimeMs

/** When anything at or below a path was last changed; a folder changes when a file comes or goes. */
async function newest(path: string): Promise<number> {
  const below = await readdir(path, { withFileTypes: true, recursive: true }).catch(() => [])
  const paths = [path, ...below.map((entry) => join(entry.parentPath, entry.name))]
  return Math.max(...(await Promise.all(paths.map(changedAt))))
}

async function isBuilt(): Promise<boolean> {
  try {
    const built = Math.min(...(await Promise.all(BUILT.map((path) => changedAt(join(ROOT, path))))))
    const sources = Math.max(...(await Promise.all(SOURCES.map((path) => newest(join(ROOT, path))))))
    return built > sources
  } catch {
    return false
  }
}

/**
 * Builds the program where what was built is older than its sources, and unpacks the browser: test files that run side by
 * side would unpack it over each other.
 */
export default async function setup(): Promise<void> {
  await chromium.executablePath()
  if (await isBuilt()) return
  const electronVite = join(ROOT, 'node_modules/electron-vite/bin/electron-vite.js')
  await promisify(execFile)(process.execPath, [electronVite, 'build', '--logLevel', 'warn'], { cwd: ROOT })
}
