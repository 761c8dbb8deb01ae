import type { AnyReason, Catalogue } from '../../../core/words/reason.ts'
import { withoutStop } from '../../../core/words/without-stop.ts'
import { type PagePart, pageBegins } from './page-in-words.ts'

/** How far the pictures of a sheet are, and why they are not there. */
export const PICTURE_WORDS = {
  'pictures.making-the-whole': () => 'Making the picture of the whole sheet.',
  'pictures.reading-the-page': (p: { page: number }) => `Reading page ${p.page} out of its file.`,
  'pictures.drawing-the-page': (p: { page: number; dpi: number }) =>
    `Drawing page ${p.page} at ${p.dpi} dpi.`,
  'pictures.cutting': (p: { cut: number; of: number }) =>
    `Cutting the sheet into tiles: ${p.cut} of ${p.of}.`,
  'pictures.ready': () => 'All pictures of the sheet are made.',
  'pictures.stopped': () =>
    'The making of pictures was stopped, so the sheet is shown coarsely; show it again to go on.',
  'pictures.not-made': (p: { cause: AnyReason }, say) =>
    // A decoder's own words may run over several lines.
    `The pictures could not be made because ${withoutStop((say(p.cause).split('\n')[0] ?? '').trim())}.`,
  'pictures.scan-not-checked': (p: PagePart, say) =>
    `${pageBegins(p, say)} was not checked: open the job again.`,

  // Why not, after "because"
  'pyramid.not-built': () =>
    'the program that makes pictures is not there: build the project with "npm run build"',
  'pyramid.not-started': () => 'the process that makes pictures could not be started',
  'pyramid.ended-early': (p: { how: string }) => `the process that makes pictures ended early (${p.how})`,
  'pyramid.too-slow': () => 'the process that makes pictures takes too long',
  'pyramid.too-much-memory': (p: { most: number }) =>
    `it takes more memory than the ${Math.round(p.most / 1024 ** 2).toLocaleString('en')} MB that reading a scan may use`,
  'pyramid.unreadable': () => 'the scan is not a picture that can be read',
  'pyramid.no-whole': () => 'the picture of the whole was not made',
  'pyramid.tile-missing': () => 'not every tile was written',
  'pyramid.others-write': () => 'other processes write into the same folder',
} as const satisfies Catalogue
