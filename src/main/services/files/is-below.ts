import { isAbsolute, relative, sep } from 'node:path'

/** Whether a folder is another one, or somewhere below it. Both absolute, with links followed. */
export function isBelow(folder: string, above: string): boolean {
  const way = relative(above, folder)
  return way === '' || (way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way))
}
