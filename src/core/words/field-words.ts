import { basisWord } from '../job/ids/basis-word.ts'
import { MAPPING_WORDS } from './mapping-words.ts'

/** What people call the fields of a thing and the settings in them: the words that stand beside them in the window. */

/** Of every kind of thing. */
const OF_ANY: Readonly<Record<string, string>> = {
  about: 'what it is about',
  adopt: 'which evidence it is taken from',
  adoptedAt: 'when it was adopted',
  adoptedBy: 'who adopted it',
  annotation: 'where it came from',
  at: 'when',
  box: 'place on the sheet',
  by: 'who',
  changedAt: 'when it was changed',
  changedBy: 'who changed it',
  candidates: 'what it could be',
  closed: 'whether it ends where it began',
  count: 'how many off',
  covariance: 'how surely',
  how: 'how it was picked',
  limit: 'maximum error',
  loss: 'loss to wear',
  pixel: 'place',
  pixels: 'place',
  repeatedBy: 'who picked again',
  repeats: 'picked again',
  sigma: 'standard uncertainty of a pick',
  stroke: 'what it was found on',
  u: 'standard uncertainty',
  withdrawn: 'why it no longer counts',
  withdrawnAt: 'when it was withdrawn',
  withdrawnBy: 'who withdrew it',
}

/** Of one kind. */
const OF_KIND: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  dimension: { label: 'what it is', name: 'name in formulas' },
  evidence: {
    formula: 'formula',
    read: 'what was read there by itself',
    readings: 'readings on the original',
    sheet: 'on which sheet',
    text: 'figure as it is printed',
  },
  job: { gauge: 'standard of sheet gauges', title: 'title', unit: 'unit it is figured in' },
  mark: { label: 'what it marks' },
  reference: {
    height: 'height as printed',
    size: 'size as printed',
    u: 'standard uncertainty of this size',
    width: 'width as printed',
  },
  relation: { text: 'equation', u: 'what it may miss by' },
  sheet: {
    creator: 'drawn by',
    date: 'date',
    dismissed: 'what is no figure',
    dpi: 'resolution',
    draughting: 'draughting uncertainty',
    drawnAt: 'drawn at',
    file: 'scan',
    identifier: 'drawing number',
    orientation: 'how the scan asks to be turned',
    paper: 'what its paper does',
    sha256: 'checksum of the scan',
    source: 'where it is kept',
    straight: 'level edge of the sheet',
  },
  view: {
    drawnScale: 'scale as the sheet states it',
    grain: 'level edge of the sheet',
    mapping: 'how the sheet has kept its shape',
  },
}

const own = <T>(words: Readonly<Record<string, T>> | undefined, name: string): T | undefined =>
  words !== undefined && Object.hasOwn(words, name) ? words[name] : undefined

/** What people call a field of a kind of thing; its name in the file where they have no other word for it. */
export const fieldWord = (kind: string, field: string): string =>
  own(own(OF_KIND, kind), field) ?? own(OF_ANY, field) ?? field

/** What settings are called, by the field that they stand in. */
const SETTINGS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'evidence legibility': { doubtful: 'hard to read' },
  'job gauge': {
    'us-standard-1893': 'US Standard of 1893',
    birmingham: 'Birmingham',
    'imperial-1884': 'Imperial Standard of 1884',
  },
  'job unit': { in: 'inches', mm: 'millimetres' },
  'mark how': { hand: 'by hand', stroke: 'found on a stroke' },
  'view mapping': Object.fromEntries(
    Object.entries(MAPPING_WORDS).map(([mapping, { name }]) => [mapping, name]),
  ),
  'dimension adopt': { found: basisWord('found') },
  'evidence basis': { found: basisWord('found') },
}

/** What a setting is called; itself where people say that. */
export const settingWord = (kind: string, field: string, setting: string): string =>
  own(own(SETTINGS, `${kind} ${field}`), setting) ?? setting

/** What a field counts as while nothing stands in it. */
const COUNTS_AS: Readonly<Record<string, string>> = {
  'dimension adopt': 'by the rules',
  'dimension count': '1',
  'dimension tolerance': 'none of its own',
  'evidence legibility': 'clear',
  'job gauge': 'US Standard of 1893, by default',
  'mark closed': 'no',
  'mark repeats': 'never',
  'sheet draughting': '0.13 mm, by default',
  'sheet paper': '0.5 %, by default',
  'view grain': '0°',
}

/** What a field without a value counts as: `1` of how many off. */
export const withoutValue = (kind: string, field: string): string =>
  own(COUNTS_AS, `${kind} ${field}`) ?? 'none'

const ANY_TEXTS = ['name', 'note', 'role', 'title', 'withdrawn']

/** Fields that hold what people write in their own words, which may have any character in it. */
const TEXTS: Readonly<Record<string, readonly string[]>> = {
  dimension: ['label'],
  mark: ['label'],
  note: ['text'],
  sheet: ['creator', 'date', 'description', 'identifier', 'rights', 'source'],
}

/** Whether people write in their own words in a field, so that what stands in it is to be quoted. */
export const isOwnWords = (kind: string, field: string): boolean =>
  ANY_TEXTS.includes(field) || own(TEXTS, kind)?.includes(field) === true
