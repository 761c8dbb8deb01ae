import { posix } from 'node:path'

/**
 * Folders with a face: what lies directly in them is for everybody, the folders inside them are their own business.
 */
const WITH_A_FACE = ['src/core/imaging', 'src/core/job/edits']

const isInside = (folder: string, path: string): boolean => path.startsWith(`${folder}/`)

/** The folder whose face an import goes past; undefined where it goes past none. */
export function pastTheFace(from: string, to: string): string | undefined {
  return WITH_A_FACE.find(
    (folder) => isInside(folder, to) && posix.dirname(to) !== folder && !isInside(folder, from),
  )
}
