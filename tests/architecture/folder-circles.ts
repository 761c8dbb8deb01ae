import { posix } from 'node:path'

/** The arrows between folders: from each, to each that one of its files imports from, with the first such import. */
type Arrows = ReadonlyMap<string, ReadonlyMap<string, string>>

function arrowsOf(graph: ReadonlyMap<string, readonly string[]>): Arrows {
  const arrows = new Map<string, Map<string, string>>()
  for (const [file, targets] of graph) {
    const from = posix.dirname(file)
    for (const target of targets) {
      const to = posix.dirname(target)
      if (to === from) continue
      const out = arrows.get(from) ?? new Map<string, string>()
      if (!out.has(to)) out.set(to, `${file} imports ${target}`)
      arrows.set(from, out)
    }
  }
  return arrows
}

/** The shortest way back to a folder along the arrows, with the imports that it is made of; null where there is none. */
function circleFrom(start: string, arrows: Arrows): string[] | null {
  const before = new Map<string, string>()
  const queue = [start]
  for (const folder of queue) {
    for (const next of arrows.get(folder)?.keys() ?? []) {
      if (next === start) {
        const way = [start, folder]
        while (way.at(-1) !== start) way.push(before.get(way.at(-1) ?? '') ?? start)
        return way.reverse()
      }
      if (before.has(next)) continue
      before.set(next, folder)
      queue.push(next)
    }
  }
  return null
}

/** Each circle of folders that import from one another, the shortest through each folder, once. */
export function folderCircles(graph: ReadonlyMap<string, readonly string[]>): string[] {
  const arrows = arrowsOf(graph)
  const told = new Set<string>()
  const found: string[] = []
  for (const folder of arrows.keys()) {
    const way = circleFrom(folder, arrows)
    if (way === null) continue
    const members = [...new Set(way)].sort().join(' ')
    if (told.has(members)) continue
    told.add(members)
    const imports = way.slice(1).map((to, i) => arrows.get(way[i] ?? '')?.get(to) ?? '')
    found.push(`Folders import from one another in a circle, ${way.join(' → ')}: ${imports.join('; ')}.`)
  }
  return found
}
