/**
 * What the library takes by itself, in a process of its own: `decode FILE`, or `tile FILE FOLDER`. Prints milliseconds.
 */
import { join } from 'node:path'
import sharp from 'sharp'
import { TILE } from '../../src/contract/picture-pyramid.ts'

const [what, file = '', folder = ''] = process.argv.slice(2)
const picture = sharp(file, { limitInputPixels: false, sequentialRead: true })
const began = performance.now()
if (what === 'decode') await picture.raw().toBuffer()
else await picture.tile({ size: TILE }).toFile(join(folder, 'alone.dz'))
console.log(performance.now() - began)
