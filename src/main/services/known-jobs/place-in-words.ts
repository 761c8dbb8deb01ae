import { homedir } from 'node:os'
import { isAbsolute, join, relative } from 'node:path'

/** Where a folder is, to be shown: the home folder is `~`. */
export function placeInWords(folder: string, home: string = homedir()): string {
  if (home === '') return folder
  const below = relative(home, folder)
  if (below === '') return '~'
  return below.startsWith('..') || isAbsolute(below) ? folder : join('~', below)
}
