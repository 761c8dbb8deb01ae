/** Builds the program where what was built is not there, or is older than its sources. */
import { spawnSync } from 'node:child_process'
import { readdir, stat } from 'node:fs/promises'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '..')

/** What the build is made of. */
const SOURCES = ['src', 'package.json', 'package-lock.json', 'electron.vite.config.ts', 'tsconfig.json']

/** Written by every build, each in a folder of its own. */
const BUILT = ['out/main/cli.js', 'out/main/electron.js', 'out/preload/index.cjs', 'out/renderer/index.html']

/** @param {string} path */
const changedAt = async (path) => (await stat(path)).mtimeMs

/**
 * When anything at or below a path was last changed; a folder changes when a file comes or goes.
 * @param {string} path
 */
async function newest(path) {
  const below = await readdir(path, { withFileTypes: true, recursive: true }).catch(() => [])
  const paths = [path, ...below.map((entry) => join(entry.parentPath, entry.name))]
  return Math.max(...(await Promise.all(paths.map(changedAt))))
}

async function isFresh() {
  try {
    const built = Math.min(...(await Promise.all(BUILT.map((path) => changedAt(join(ROOT, path))))))
    const sources = Math.max(...(await Promise.all(SOURCES.map((path) => newest(join(ROOT, path))))))
    return built > sources
  } catch {
    return false
  }
}

if (!(await isFresh())) {
  const electronVite = join(ROOT, 'node_modules/electron-vite/bin/electron-vite.js')
  const { status } = spawnSync(process.execPath, [electronVite, 'build', '--logLevel', 'warn'], {
    cwd: ROOT,
    stdio: 'inherit',
  })
  process.exitCode = status ?? 1
}
