import { existsSync } from 'node:fs'
import { resolve } from 'node:path'

/** Beside the program that runs, above its shared parts, or where the build puts it when this runs from source. */
const PLACES = ['pyramid.js', '../pyramid.js', '../../../../../out/main/pyramid.js']

/** The built program that cuts tiles; undefined when the project was not built. */
export const pyramidProgram = (from: string = import.meta.dirname): string | undefined =>
  PLACES.map((place) => resolve(from, place)).find((path) => existsSync(path))
