import { builtinModules } from 'node:module'

export type Layer =
  | 'core'
  | 'contract'
  | 'services'
  | 'electron'
  | 'preload'
  | 'local'
  | 'launch'
  | 'cli'
  | 'renderer'

const CORE_FOLDERS = [
  'quantity',
  'uncertainty',
  'geometry',
  'linear-algebra',
  'mapping',
  'measuring',
  'calibration',
  'formula',
  'words',
  'imaging',
  'reading',
  'ledger',
  'prove',
  'shop',
  'job',
  'handoff',
].join('|')

const FOLDERS: readonly [RegExp, Layer][] = [
  [new RegExp(`^src/core/(?:(?:${CORE_FOLDERS})/.+|[^/]+)$`), 'core'],
  [/^src\/contract\//, 'contract'],
  [/^src\/main\/services\//, 'services'],
  [/^src\/main\/electron\/preload\//, 'preload'],
  [/^src\/main\/electron\//, 'electron'],
  [/^src\/main\/local\//, 'local'],
  [/^src\/main\/launch\//, 'launch'],
  [/^src\/main\/cli\//, 'cli'],
  [/^src\/renderer\//, 'renderer'],
]

/** The layer that a file belongs to by its folder; undefined when it lies in none. */
export function layerOf(path: string): Layer | undefined {
  return FOLDERS.find(([folder]) => folder.test(path))?.[1]
}

/** Which layers may be imported from each. */
const MAY_IMPORT: Record<Layer, readonly Layer[]> = {
  core: ['core'],
  contract: ['core', 'contract'],
  services: ['core', 'contract', 'services'],
  electron: ['core', 'contract', 'services', 'electron'],
  preload: ['contract', 'preload'],
  local: ['core', 'contract', 'services', 'local'],
  launch: ['core', 'contract', 'services', 'local', 'launch'],
  cli: ['core', 'services', 'launch', 'cli'],
  renderer: ['core', 'contract', 'renderer'],
}

export function mayImportLayer(from: Layer, to: Layer): boolean {
  return MAY_IMPORT[from].includes(to)
}

const HOSTS: readonly Layer[] = ['electron', 'local', 'launch', 'cli']

/** Whether a file of this layer may import this file that is no source: a host tells its version from package.json. */
export function mayImportOther(from: Layer, path: string): boolean {
  return path === 'package.json' && HOSTS.includes(from)
}

const CORE_PACKAGES = new Set([
  'fraction.js',
  'htmlparser2',
  'jsonc-parser',
  'jstat',
  'ml-matrix',
  'pure-rand',
  'svg-pathdata',
  'zod',
])
const BUILT_IN = new Set(builtinModules)

/** `@scope/name` or `name` of a package, without the path inside it. */
function packageName(module: string): string {
  return module.split('/', module.startsWith('@') ? 2 : 1).join('/')
}

/** Whether a file of this layer may import this package or module of Node. */
export function mayImportPackage(from: Layer, module: string): boolean {
  const name = packageName(module)
  const node = module.startsWith('node:') || BUILT_IN.has(name)
  const electron = name === 'electron' || name.startsWith('electron-') || name.startsWith('@electron/')
  if (from === 'core') return CORE_PACKAGES.has(name)
  if (from === 'contract') return name === 'zod'
  if (from === 'preload') return name === 'electron'
  if (from === 'renderer') return !node && !electron
  return from === 'electron' || !electron
}
