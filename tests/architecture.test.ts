import { readdirSync, readFileSync } from 'node:fs'
import { join, relative, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { breaches } from './architecture/breaches.ts'

const ROOT = fileURLToPath(new URL('..', import.meta.url))

function sourceFiles(): Map<string, string> {
  const files = new Map<string, string>()
  for (const entry of readdirSync(join(ROOT, 'src'), { withFileTypes: true, recursive: true })) {
    if (!entry.isFile()) continue
    const path = join(entry.parentPath, entry.name)
    files.set(relative(ROOT, path).split(sep).join('/'), readFileSync(path, 'utf8'))
  }
  return files
}

describe('the source', () => {
  const files = sourceFiles()

  it('is there to be checked', () => {
    expect(files.has('src/core/quantity/parse/parse-length.ts')).toBe(true)
    expect([...files.keys()].some((file) => file.startsWith('src/main/services/'))).toBe(true)
  })

  it('keeps the arrows between its folders, has no rings, and a core without clock, chance or console', () => {
    expect(breaches(files)).toEqual([])
  })
})

const found = (files: Record<string, string>): string[] => breaches(new Map(Object.entries(files)))

const CORE = 'src/core/quantity/a.ts'
const CORE_B = 'src/core/job/b.ts'
const SERVICE = 'src/main/services/a.ts'
const empty = 'export {}\n'

describe('the check passes what the structure allows', () => {
  it.each<[string, Record<string, string>]>([
    ['core using core', { [CORE]: "import type { B } from '../job/b.ts'", [CORE_B]: empty }],
    [
      'core using its libraries',
      { [CORE]: "import F from 'fraction.js'\nimport { Matrix } from 'ml-matrix'" },
    ],
    [
      'a service using core and Node',
      { [SERVICE]: "import '../../core/job/b.ts'\nimport 'node:fs'", [CORE_B]: empty },
    ],
    ['a service using a package', { [SERVICE]: "import sharp from 'sharp'" }],
    ['a host telling its version', { 'src/main/cli/a.ts': "import own from '../../../package.json'" }],
    ['the desktop host using Electron', { 'src/main/electron/a.ts': "import { app } from 'electron'" }],
    ['a host using services', { 'src/main/cli/a.ts': "import '../services/a.ts'", [SERVICE]: empty }],
    [
      'the window using core',
      { 'src/renderer/a.tsx': "import '../core/job/b.ts'\nimport 'react'", [CORE_B]: empty },
    ],
    [
      'the window using the contract',
      { 'src/renderer/a.ts': "import '../contract/a.ts'", 'src/contract/a.ts': "import 'zod'" },
    ],
    [
      'a host keeping the contract',
      { 'src/main/local/a.ts': "import '../../contract/a.ts'", 'src/contract/a.ts': empty },
    ],
    [
      'what goes into the desktop window speaking to Electron alone',
      { 'src/main/electron/preload/a.ts': "import { ipcRenderer } from 'electron'" },
    ],
    ['the window using a style', { 'src/renderer/a.tsx': "import './a.css'", 'src/renderer/a.css': '' }],
    [
      'the face of a folder, and its own inside',
      {
        'src/core/ledger/a.ts': "import '../imaging/b.ts'",
        'src/core/imaging/b.ts': "import './trace/c.ts'",
        'src/core/imaging/trace/c.ts': empty,
      },
    ],
    [
      'one type handed on, and two of one name that stay at home',
      {
        [CORE]: 'export interface Size { width: number }\ninterface Own { a: 1 }',
        [CORE_B]: "export type { Size } from '../quantity/a.ts'\ninterface Own { b: 2 }",
      },
    ],
    [
      'core speaking of the clock',
      { [CORE]: "// Date.now()\nexport const text = 'Math.random() and new Date()'" },
    ],
    [
      'core using a property called process',
      { [CORE]: 'export const f = (job: { process: string }) => job.process' },
    ],
  ])('%s', (_, files) => {
    expect(found(files)).toEqual([])
  })
})

describe('the check refuses', () => {
  it.each<[string, Record<string, string>, RegExp]>([
    [
      'core using Node',
      { [CORE]: "import { readFile } from 'node:fs/promises'" },
      /must not import the package node:fs/,
    ],
    ['core using Node by its old name', { [CORE]: "import fs from 'fs'" }, /must not import the package fs/],
    [
      'core using another package',
      { [CORE]: "import sharp from 'sharp'" },
      /must not import the package sharp/,
    ],
    ['core using a package that begins like one of its own', { [CORE]: "import 'zodiac'" }, /package zodiac/],
    [
      'core using a service',
      { [CORE]: "import '../../main/services/a.ts'", [SERVICE]: empty },
      /core.*must not.*services/,
    ],
    [
      'core re-exporting a service',
      { [CORE]: "export * from '../../main/services/a.ts'", [SERVICE]: empty },
      /services/,
    ],
    [
      'core using a type of a service',
      { [CORE]: "type A = import('../../main/services/a.ts').A", [SERVICE]: empty },
      /services/,
    ],
    [
      'core loading a service later',
      { [CORE]: "export const a = import('../../main/services/a.ts')", [SERVICE]: empty },
      /services/,
    ],
    [
      'core requiring Node',
      { [CORE]: "declare const require: (m: string) => unknown\nrequire('fs')" },
      /package fs/,
    ],
    [
      'core loading what it is told',
      { [CORE]: 'export const load = (m: string) => import(m)' },
      /only the run can tell/,
    ],
    [
      'core leaving the source',
      { [CORE]: "import '../../../tests/helper.ts'" },
      /must not import tests\/helper\.ts/,
    ],
    [
      'core telling the version',
      { [CORE]: "import own from '../../../package.json'" },
      /must not import package\.json/,
    ],
    ['core asking the time', { [CORE]: 'export const t = Date.now()' }, /must not use Date\.now/],
    ['core making a date', { [CORE]: 'export const t = new Date()' }, /must not use new Date/],
    ['core throwing dice', { [CORE]: 'export const r = Math.random()' }, /must not use Math\.random/],
    [
      'core throwing dice in a roundabout way',
      { [CORE]: "export const r = Math['random']()" },
      /must not use Math\.random/,
    ],
    ['core asking the process', { [CORE]: 'export const e = process.env' }, /must not use process\.env/],
    ['core printing', { [CORE]: "console.log('x')" }, /must not use console\.log/],
    ['core waiting', { [CORE]: 'setTimeout(() => {}, 1)' }, /must not use setTimeout/],
    [
      'a service using Electron',
      { [SERVICE]: "import { app } from 'electron'" },
      /must not import the package electron/,
    ],
    ['a service using Electron’s inside', { [SERVICE]: "import 'electron/main'" }, /package electron\/main/],
    [
      'a service using a host',
      { [SERVICE]: "import '../cli/a.ts'", 'src/main/cli/a.ts': empty },
      /services.*must not.*cli/,
    ],
    [
      'a service using the window',
      { [SERVICE]: "import '../../renderer/a.ts'", 'src/renderer/a.ts': empty },
      /renderer/,
    ],
    [
      'one host using another',
      { 'src/main/cli/a.ts': "import '../local/a.ts'", 'src/main/local/a.ts': empty },
      /cli.*must not.*local/,
    ],
    ['the contract using Node', { 'src/contract/a.ts': "import 'node:fs'" }, /package node:fs/],
    [
      'the contract using services',
      { 'src/contract/a.ts': "import '../main/services/a.ts'", [SERVICE]: empty },
      /contract.*services/,
    ],
    [
      'core using the contract',
      { [CORE]: "import '../../contract/a.ts'", 'src/contract/a.ts': empty },
      /core.*contract/,
    ],
    [
      'what goes into the desktop window using services',
      { 'src/main/electron/preload/a.ts': "import '../../services/a.ts'", [SERVICE]: empty },
      /preload.*services/,
    ],
    [
      'what goes into the desktop window using Node',
      { 'src/main/electron/preload/a.ts': "import 'node:fs'" },
      /package node:fs/,
    ],
    ['the loopback host using Electron', { 'src/main/local/a.ts': "import 'electron'" }, /package electron/],
    [
      'the window using a service',
      { 'src/renderer/a.ts': "import '../main/services/a.ts'", [SERVICE]: empty },
      /renderer.*services/,
    ],
    [
      'the window using a type of a service',
      { 'src/renderer/a.ts': "import type { A } from '../main/services/a.ts'", [SERVICE]: empty },
      /renderer.*services/,
    ],
    ['the window using Node', { 'src/renderer/a.tsx': "import 'node:path'" }, /package node:path/],
    ['the window using Electron', { 'src/renderer/a.tsx': "import 'electron'" }, /package electron/],
    ['a file in no known folder', { 'src/helpers/a.ts': empty }, /lies in no folder/],
    ['a folder of core that nobody planned', { 'src/core/utils/a.ts': empty }, /lies in no folder/],
    ['a file between the folders of main', { 'src/main/a.ts': empty }, /lies in no folder/],
    ['an import of nothing', { [CORE]: "import './gone.ts'" }, /gone\.ts, which is not there/],
    [
      'an import without its extension',
      { [CORE]: "import '../job/b'", [CORE_B]: empty },
      /job\/b, which is not there/,
    ],
    [
      'two files in a ring',
      { [CORE]: "import '../job/b.ts'", [CORE_B]: "import '../quantity/a.ts'" },
      /ring: .*a\.ts → .*b\.ts → .*a\.ts/,
    ],
    [
      'a ring of types',
      {
        [CORE]: "import type { B } from '../job/b.ts'",
        [CORE_B]: "export type { A } from '../quantity/a.ts'",
      },
      /ring/,
    ],
    [
      'two folders in a circle, though no files are in a ring',
      {
        [CORE]: "import '../job/b.ts'",
        [CORE_B]: empty,
        'src/core/job/c.ts': "import type { D } from '../quantity/d.ts'",
        'src/core/quantity/d.ts': empty,
      },
      /circle, src\/core\/quantity → src\/core\/job → src\/core\/quantity: .*a\.ts imports .*b\.ts; .*c\.ts imports .*d\.ts/,
    ],
    [
      'a folder in a circle with one inside it',
      {
        'src/core/job/a.ts': "import './text/b.ts'",
        'src/core/job/text/b.ts': empty,
        'src/core/job/text/c.ts': "import '../d.ts'",
        'src/core/job/d.ts': empty,
      },
      /circle, src\/core\/job → src\/core\/job\/text → src\/core\/job/,
    ],
    [
      'a circle of three folders',
      {
        [CORE]: "import '../job/b.ts'",
        [CORE_B]: "import '../words/c.ts'",
        'src/core/words/c.ts': "import '../quantity/d.ts'",
        'src/core/quantity/d.ts': empty,
      },
      /circle, src\/core\/quantity → src\/core\/job → src\/core\/words → src\/core\/quantity/,
    ],
    [
      'an import of what is inside a folder with a face',
      {
        'src/core/ledger/a.ts': "import '../imaging/trace/b.ts'",
        'src/core/imaging/trace/b.ts': empty,
      },
      /a\.ts imports src\/core\/imaging\/trace\/b\.ts, past the face of src\/core\/imaging/,
    ],
    [
      'a type that is declared twice',
      {
        [CORE]: 'export interface Size { width: number }',
        'src/renderer/a.ts': 'export type Size = readonly [number, number]',
      },
      /a\.ts declares the type Size again, which src\/core\/quantity\/a\.ts exports/,
    ],
    ['a file that imports itself', { [CORE]: "import './a.ts'" }, /ring: .*a\.ts → .*a\.ts/],
  ])('%s', (_, files, breach) => {
    expect(found(files).join('\n')).toMatch(breach)
  })

  it('a long ring once, naming every file of it', () => {
    const files: Record<string, string> = {}
    for (const i of [0, 1, 2, 3]) files[`src/core/shop/f${i}.ts`] = `import './f${(i + 1) % 4}.ts'`
    files['src/core/shop/outside.ts'] = "import './f2.ts'"
    expect(found(files)).toHaveLength(1)
    expect(found(files)[0]).toMatch(/f0\.ts → .*f1\.ts → .*f2\.ts → .*f3\.ts → .*f0\.ts/)
  })

  it('to pass a file that it cannot parse', () => {
    expect(() => found({ [CORE]: 'import {' })).toThrow(/cannot be parsed/)
  })
})
