import { posix } from 'node:path'
import { pastTheFace } from './faces.ts'
import { folderCircles } from './folder-circles.ts'
import { layerOf, mayImportLayer, mayImportOther, mayImportPackage } from './layers.ts'
import { readSource } from './read-source.ts'

const CODE = /\.[cm]?tsx?$/

/** The file that a relative import names, from the root of the project; undefined for a package. */
function target(from: string, module: string): string | undefined {
  if (!module.startsWith('.')) return undefined
  return posix.join(posix.dirname(from), module.replace(/\?.*$/, ''))
}

/** Each ring of files that import one another, once, as `a → b → a`. */
function rings(graph: ReadonlyMap<string, readonly string[]>): string[] {
  const done = new Set<string>()
  const found: string[] = []
  const visit = (file: string, trail: readonly string[]): void => {
    const start = trail.indexOf(file)
    if (start >= 0) {
      found.push([...trail.slice(start), file].join(' → '))
      return
    }
    if (done.has(file)) return
    for (const next of graph.get(file) ?? []) visit(next, [...trail, file])
    done.add(file)
  }
  for (const file of graph.keys()) visit(file, [])
  return found
}

/**
 * Every breach of the rules between the folders of the source, as sentences.
 *
 * @param files path from the root of the project, with `/`, to the text of the file
 */
export function breaches(files: ReadonlyMap<string, string>): string[] {
  const found: string[] = []
  const graph = new Map<string, readonly string[]>()
  const declared = new Map<string, string>()
  for (const [file, code] of files) {
    if (!CODE.test(file)) continue
    const layer = layerOf(file)
    if (layer === undefined) {
      found.push(`${file} lies in no folder that the structure knows.`)
      continue
    }
    const source = readSource(file, code)
    const targets: string[] = []
    for (const module of source.imports) {
      const to = target(file, module)
      if (to === undefined) {
        if (!mayImportPackage(layer, module))
          found.push(`${file} (${layer}) must not import the package ${module}.`)
        continue
      }
      if (mayImportOther(layer, to)) continue
      const other = layerOf(to)
      if (other === undefined || !mayImportLayer(layer, other)) {
        found.push(`${file} (${layer}) must not import ${to}${other ? ` (${other})` : ''}.`)
      } else if (!files.has(to)) {
        found.push(`${file} imports ${to}, which is not there.`)
      }
      const inner = pastTheFace(file, to)
      if (inner !== undefined) found.push(`${file} imports ${to}, past the face of ${inner}.`)
      targets.push(to)
    }
    for (const type of source.exportedTypes) {
      const first = declared.get(type)
      if (first === undefined) declared.set(type, file)
      else found.push(`${file} declares the type ${type} again, which ${first} exports.`)
    }
    graph.set(file, targets)
    if (source.blindImports > 0 && (layer === 'core' || layer === 'contract' || layer === 'renderer')) {
      found.push(`${file} (${layer}) imports something that only the run can tell.`)
    }
    if (layer === 'core') {
      for (const use of source.impure) found.push(`${file} (core) must not use ${use}.`)
    }
  }
  for (const ring of rings(graph)) found.push(`Files import one another in a ring: ${ring}.`)
  found.push(...folderCircles(graph))
  return found
}
