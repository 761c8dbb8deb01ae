import { readdir, readFile } from 'node:fs/promises'
import { builtinModules } from 'node:module'
import { dirname, join, resolve } from 'node:path'
import { expect, test } from 'vitest'

const ROOT = resolve(import.meta.dirname, '../../..')

/** The modules that a built file names in its imports and requires. */
const named = (code: string): string[] =>
  [
    /^\s*(?:import|export)\b[^'"();]*?\bfrom\s*["']([^"']+)["']/gm,
    /^\s*import\s*["']([^"']+)["']/gm,
    /\b(?:import|require)\(\s*["']([^"']+)["']\s*\)/g,
  ].flatMap((pattern) => [...code.matchAll(pattern)].map(([, module = '']) => module))

test('the built preload is CommonJS and requires nothing but electron', async () => {
  const folder = join(ROOT, 'out/preload')
  expect(await readdir(folder)).toEqual(['index.cjs'])
  const code = await readFile(join(folder, 'index.cjs'), 'utf8')
  expect(named(code)).toEqual(['electron'])
  expect(code).not.toMatch(/^\s*(import|export)\b/m)
  const exposed: string[] = []
  const electron = {
    contextBridge: { exposeInMainWorld: (name: string) => exposed.push(name) },
    ipcRenderer: {},
  }
  // As the sandbox does: a function around it, and a require that knows electron alone.
  new Function('require', code)((module: string) => {
    if (module !== 'electron') throw new Error(`A sandboxed preload can't require ${module}.`)
    return electron
  })
  expect(exposed).toEqual(['scantling'])
})

test('the built desktop host imports Node, electron and what is installed with the program', async () => {
  const { dependencies } = JSON.parse(await readFile(join(ROOT, 'package.json'), 'utf8'))
  const seen = new Set<string>()
  const outside = new Set<string>()
  const visit = async (path: string): Promise<void> => {
    if (seen.has(path)) return
    seen.add(path)
    for (const module of named(await readFile(path, 'utf8'))) {
      if (module.startsWith('.')) await visit(resolve(dirname(path), module))
      else outside.add(module)
    }
  }
  await visit(join(ROOT, 'out/main/electron.js'))
  const packaged = new Set(['electron', ...Object.keys(dependencies)])
  /** `pure-rand/generator/xoroshiro128plus` is a part of `pure-rand`. */
  const packageOf = (module: string): string =>
    module
      .split('/')
      .slice(0, module.startsWith('@') ? 2 : 1)
      .join('/')
  const isPackaged = (module: string): boolean =>
    module.startsWith('node:') || builtinModules.includes(module) || packaged.has(packageOf(module))
  expect([...outside].filter((module) => !isPackaged(module))).toEqual([])
  expect([...outside]).toEqual(expect.arrayContaining(['electron', 'sharp']))
  expect(seen.size).toBeGreaterThan(1)
})

test('the program’s entry for Electron is what the build gives', async () => {
  const { main } = JSON.parse(await readFile(join(ROOT, 'package.json'), 'utf8'))
  expect(main).toBe('out/main/electron.js')
})

test('the built page loads everything as files of its own, so that its policy holds', async () => {
  const html = await readFile(join(ROOT, 'out/renderer/index.html'), 'utf8')
  expect(html).toMatch(/<script type="module"[^>]* src="\.\/assets\//)
  expect(html).not.toMatch(/<script(?![^>]*\bsrc=)|<style|\bstyle=|\son[a-z]+=|https?:/)
  const assets = await readdir(join(ROOT, 'out/renderer/assets'))
  expect(assets).toEqual(expect.arrayContaining([expect.stringMatching(/^worker-.*\.js$/)]))
  for (const name of assets.filter((name) => name.endsWith('.css'))) {
    const css = await readFile(join(ROOT, 'out/renderer/assets', name), 'utf8')
    expect(css).not.toMatch(/url\(\s*["']?(data:|https?:|\/)/)
  }
  for (const name of assets.filter((name) => name.endsWith('.js'))) {
    const code = await readFile(join(ROOT, 'out/renderer/assets', name), 'utf8')
    expect(code).not.toMatch(/new Worker\([^)]*(data:|blob:)/)
  }
})
