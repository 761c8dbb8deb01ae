import type { AnyReason, Catalogue } from '../../../core/words/reason.ts'
import { howToRaise, limitInWords } from './limits-in-words.ts'
import { type PagePart, pageBegins, pageWithin } from './page-in-words.ts'

const count = (number: number): string => number.toLocaleString('en')

/** What was being read when it broke off: the first page stands for the whole scan. */
const reading = ({ scan, page }: PagePart): string =>
  page === null || page === 1 ? `The scan ${scan}` : `Page ${page} of the scan ${scan}`

/** What is said of a scan's file: of its kind, its password, its place in the job folder. */
const OF_A_FILE = {
  'scan.not-a-file': (p: { scan: string }) => `"${p.scan}" is not a file: name the scan itself.`,
  'scan.empty': (p: { scan: string }) => `The scan ${p.scan} is empty: scan or copy it again.`,
  'scan.not-read': (p: { scan: string; cause: AnyReason }, say) =>
    `The scan ${p.scan} can't be read because ${say(p.cause)}.`,
  'scan.no-picture': (p: { scan: string }) =>
    `The scan ${p.scan} is not a picture that can be read: give a PNG, JPEG, TIFF, WebP or PDF file.`,
  'scan.locked': (p: { scan: string }) => `The scan ${p.scan} is locked: give its password.`,
  'scan.wrong-password': (p: { scan: string }) =>
    `The password does not open the scan ${p.scan}: type it as whoever locked it wrote it, capitals included.`,
  'scan.outside-the-folder': (p: { scan: string; sheet: string }, say) =>
    `The scan file ${JSON.stringify(p.scan)} of ${say.item('sheet', p.sheet)} is not inside the job's scans folder: put the file there and give its name alone.`,
  'scan.leads-out': (p: { scan: string; sheet: string }, say) =>
    `The scan file ${p.scan} of ${say.item('sheet', p.sheet)} is a link that leads out of the job's scans folder: put the file itself there.`,
  'scan.no-page-chosen': (p: { scan: string }) => `No page of ${p.scan} was chosen: choose one.`,
  'scan.not-copied': (p: { scan: string; folder: string; cause: AnyReason }, say) =>
    `The scan ${p.scan} can't be copied into ${p.folder} because ${say(p.cause)}.`,
} as const satisfies Catalogue

/** What is said of a sheet's scan, which is no longer the file that was picked on. */
const OF_A_SHEET = {
  'sheet-scan.not-plain': (p: PagePart, say) =>
    `${pageBegins(p, say)} is not a plain file: put the scan itself into the job's scans folder.`,
  'sheet-scan.not-read': (p: PagePart & { cause: AnyReason }, say) =>
    `${pageBegins(p, say)} can't be read because ${say(p.cause)}: put the file back into the job's scans folder.`,
  'sheet-scan.changed': (
    p: PagePart & { sheet: string; folder: string; sha256: string; picked: string },
    say,
  ) =>
    `${pageBegins(p, say)} is no longer the file that was picked on (its SHA-256 is ${p.sha256.slice(0, 12)}…, not ${p.picked.slice(0, 12)}…): put the old file back and open the job again, or bring this one in as a new sheet; where the marks still lie right on it, "scantling accept-scan ${p.folder} ${say.label(p.sheet).replace(/^sheet /, '')}" takes it for this sheet.`,
} as const satisfies Catalogue

/** How the reading of a scan ended, in the process that reads. */
const OF_READING = {
  'reading.no-program': (p: { scan: string }) =>
    `The scan ${p.scan} can't be read because the program that reads scans is not there: build the project with "npm run build".`,
  'reading.broke-off': (p: PagePart) =>
    `${reading(p)} can't be read, because reading it broke off: it is damaged, so copy or scan it again.`,
  'reading.too-much-memory': (p: PagePart & { most: number }) =>
    `${reading(p)} takes more than ${limitInWords('memory', p.most)} of memory to read: it may be damaged; where it is only large, ${howToRaise('memory')}.`,
  /** allowed: seconds, less than the limit where the file is small */
  'reading.too-slow': (p: PagePart & { allowed: number; most: number }) => {
    const late = `${reading(p)} takes longer than ${limitInWords('seconds', p.allowed)} to read`
    return p.allowed < p.most
      ? `${late}, far more than a file of its size needs: it is damaged, so copy or scan it again.`
      : `${late}: it may be damaged; where it is only large, ${howToRaise('seconds')}.`
  },
  'scan.damaged': (p: { scan: string }) =>
    `The scan ${p.scan} is damaged, so it can't be read: copy or scan it again.`,
} as const satisfies Catalogue

/** What keeps a page from being a sheet. */
const OF_A_PAGE = {
  'page.not-there': (p: { scan: string; pages: number; page: number }) =>
    `The scan ${p.scan} has ${p.pages === 1 ? 'one page' : `${p.pages} pages`}, and no page ${p.page}.`,
  'page.beyond-the-limit': (p: { scan: string; page: number; most: number }) =>
    `Page ${p.page} of ${p.scan} is beyond the ${count(p.most)} pages of a scan that are looked at: ${howToRaise('pages')}.`,
  'page.not-shown': (p: { scan: string; page: number }) => `Page ${p.page} of ${p.scan} can't be shown.`,
  'page.not-drawn': (p: { scan: string }) => `The scan ${p.scan} is a picture, and is not drawn.`,
  /** instead: what makes fewer of them */
  'page.too-many-pixels': (
    p: PagePart & { width: number; height: number; most: number; instead: 'scan' | 'draw' },
    say,
  ) =>
    `${pageBegins(p, say)} has ${count(p.width)} × ${count(p.height)} pixels, more than the ${count(p.most)} that are taken in: ${p.instead} it with fewer dots to the inch, or ${howToRaise('pixels')}.`,
  'page.other-size': (
    p: PagePart & {
      width: number
      height: number
      said: { readonly width: number; readonly height: number }
    },
    say,
  ) =>
    `${pageBegins(p, say)} has ${p.width} × ${p.height} pixels, and the job says ${p.said.width} × ${p.said.height}, so no mark would lie where it was picked: bring the scan in as a new sheet.`,
} as const satisfies Catalogue

/** What is wrong with a scan whose pages are pictures. */
const OF_A_RASTER = {
  'raster.truncated': (p: { scan: string }) =>
    `The scan ${p.scan} is truncated or damaged, so it can't be read: copy or scan it again.`,
  'raster.not-all-there': (p: { scan: string }) =>
    `The scan ${p.scan} is truncated or damaged, so not all of its picture can be read: copy or scan it again.`,
  'raster.planes-in-tiles': (p: PagePart, say) =>
    `${pageBegins(p, say)} holds its colours in planes apart, in tiles, which can't be read: save it with the colours of each pixel together.`,
  'raster.old-jpeg': (p: PagePart, say) =>
    `${pageBegins(p, say)} is compressed by the old kind of JPEG in TIFF, which can't be read: save it with another compression.`,
} as const satisfies Catalogue

/** What is wrong with a PDF, or with a page of it. */
const OF_A_PDF = {
  'pdf.unsound': (p: { scan: string }) =>
    `The scan ${p.scan} is not a sound PDF, so it can't be read: copy it again, or save it anew.`,
  'pdf.page-damaged': (p: PagePart, say) =>
    `${pageBegins(p, say)} is damaged, so it can't be read: copy the file again, or save it anew.`,
  'pdf.picture-damaged': (p: PagePart) =>
    `The picture on ${pageWithin(p)} is damaged, so it can't be read: copy or scan it again.`,
  'pdf.page-empty': (p: PagePart, say) => `${pageBegins(p, say)} is empty, so no sheet can be made of it.`,
  'pdf.page-larger-than-any': (p: PagePart, say) =>
    `${pageBegins(p, say)} says that it is larger than a page of a PDF can be, so it is damaged: save it anew.`,
  'pdf.drawn-at-nothing': (p: PagePart, say) =>
    `${pageBegins(p, say)} is drawn and not scanned, and the job does not say at how many dots to the inch: bring it in as a new sheet.`,
  'pdf.drawing-too-large': () =>
    'The page is too large for the file that it is drawn into: draw it with fewer dots to the inch.',
} as const satisfies Catalogue

/** What a person should know of a scan that was taken in. */
const REMARKS = {
  /** x, y: pixels per inch across and down */
  'page.unequal-resolution': (p: PagePart & { x: number; y: number }, say) => {
    const [across, down] = [p.x, p.y].map((dpi) => String(Number(dpi.toPrecision(5))))
    return `${pageBegins(p, say)} has ${across} pixels to the inch across and ${down} down; the mean of both is noted: calibrate its views along both directions.`
  },
  /** part: what it is of the other page */
  'page.part-of-another': (p: PagePart & { part: string }, say) =>
    `${pageBegins(p, say)} is, as the file says, a ${p.part} of another page: bring that one in, unless this one is meant.`,
  'page.asks-to-be-turned': (p: PagePart, say) =>
    `${pageBegins(p, say)} asks to be shown turned, and its pixels are used as they are stored.`,
  'scan.more-pages': (p: { scan: string; pages: number; page: number }) =>
    `The scan ${p.scan} has ${p.pages} pages, and only page ${p.page} has a sheet.`,
  'scan.given-twice': (p: { scan: string }) =>
    `"${p.scan}" is a scan that was given before it, and has no second sheet.`,
} as const satisfies Catalogue

/** What is said of scans: files of strangers that become sheets. */
export const SCAN_WORDS = {
  ...OF_A_FILE,
  ...OF_A_SHEET,
  ...OF_READING,
  ...OF_A_PAGE,
  ...OF_A_RASTER,
  ...OF_A_PDF,
  ...REMARKS,
} as const
