import type { Fastener, Looseness } from '../figure.ts'

/** A word beside a size that says what it is of or how it is made. */
export type FigureTerm =
  | 'diameter'
  | 'radius'
  | 'centres'
  | 'typical'
  | 'drilled'
  | 'outside'
  | 'inside'
  | 'square'

/** What a word or a few words in a figure say. */
export type WordMeaning =
  | { readonly says: 'term'; readonly term: FigureTerm }
  /** What the size is of, beside the note that is kept: a bore is a diameter. */
  | {
      readonly says: 'note'
      readonly note: string
      readonly of?: 'diameter' | 'radius' | 'centres' | 'length'
      /** Of more than one thing: how many there are is to stand with it. */
      readonly several?: true
    }
  | { readonly says: 'limit'; readonly limit: 'max' | 'min' }
  | { readonly says: 'reference' }
  | { readonly says: 'not-to-scale' }
  | { readonly says: 'looseness'; readonly looseness: Looseness }
  | { readonly says: 'fastener'; readonly fastener: Fastener; readonly several: boolean }
  | { readonly says: 'thread'; readonly form: string }
  | { readonly says: 'slope'; readonly taper: boolean }
  /** A word that makes the number beside it another than the size of what is drawn. */
  | { readonly says: 'pipe' }

const WORDS = new Map<string, WordMeaning>()

/** Letters alone: words stand here as they are joined, without spaces, stops and strokes. */
const put = (words: string, meaning: WordMeaning): void => {
  for (const word of words.split(' ')) WORDS.set(word, meaning)
}
const term = (words: string, name: FigureTerm): void => put(words, { says: 'term', term: name })
const note = (words: string, written: string): void => put(words, { says: 'note', note: written })
const several = (words: string, written: string): void =>
  put(words, { says: 'note', note: written, several: true })
const noteOf = (words: string, written: string, of: 'diameter' | 'radius' | 'centres' | 'length'): void =>
  put(words, { says: 'note', note: written, of })
const thread = (words: string, form: string): void => put(words, { says: 'thread', form })
const fastener = (one: string, several: string, of: Fastener): void => {
  put(one, { says: 'fastener', fastener: of, several: false })
  put(several, { says: 'fastener', fastener: of, several: true })
}

term('dia diam diameter d', 'diameter')
term('r rad radius', 'radius')
term('cc ctoc ctrs ctr crs centres centers centrestocentres centretocentre centertocenter', 'centres')
term('typ typical', 'typical')
term('drill drilled', 'drilled')
term('od outsidedia outsidediam outsidediameter', 'outside')
term('id insidedia insidediam insidediameter', 'inside')
term('sq square', 'square')

noteOf('bore bored', 'BORE', 'diameter')
noteOf('ream reamed', 'REAM', 'diameter')
noteOf('tap tapped', 'TAP', 'diameter')
noteOf('punch punched', 'PUNCH', 'diameter')
noteOf('hole', 'HOLE', 'diameter')
noteOf('bc boltcircle', 'B.C.', 'diameter')
noteOf('pcd pc pitchcircle pitchcircledia', 'P.C.D.', 'diameter')
noteOf('sr sphr spherr sphericalradius sphericalrad', 'SPHER. R', 'radius')
noteOf('hex hexagon', 'HEX', 'length')
noteOf('af acrossflats', 'A/F', 'length')
noteOf('acrosscorners ac', 'ACROSS CORNERS', 'length')

note('thru through thro', 'THRU')
note('csk csunk countersunk countersink', 'CSK.')
note('cbore counterbore counterbored', 'CBORE')
note('spotface spotfaced', 'SPOT FACE')
note('faced face', 'FACE')
note('eqsp eqspaced eqsps equallyspaced equalspaces eqspaces equalsp', 'EQ. SP.')
note('sp spaces spaced spacing', 'SPACES')
note('apart', 'APART')
note('pitch', 'PITCH')
note('plate pl', 'PLATE')
several('plates', 'PLATE')
note('sheet', 'SHEET')
note('bar', 'BAR')
several('bars', 'BAR')
note('rod', 'ROD')
several('rods', 'ROD')
note('flat', 'FLAT')
note('strip', 'STRIP')
several('strips', 'STRIP')
note('thick thk', 'THICK')
note('long lg', 'LONG')
note('deep', 'DEEP')
note('wide', 'WIDE')
note('high', 'HIGH')
note('overall oa', 'OVER ALL')
note('fin finish finished', 'FIN.')
note('rough', 'ROUGH')
note('cham chamf chamfer', 'CHAM.')
note('incl included inclusive', 'INCL.')
note('each ea', 'EACH')
note('bothends', 'BOTH ENDS')
note('bothsides', 'BOTH SIDES')
note('farside fs', 'FAR SIDE')
note('nearside ns', 'NEAR SIDE')
note('steel', 'STEEL')
note('brass', 'BRASS')
note('copper', 'COPPER')
note('castiron ci', 'C.I.')
note('wroughtiron wi', 'W.I.')
note('mildsteel ms', 'M.S.')
note('galv galvanised galvanized', 'GALV.')

put('max maximum', { says: 'limit', limit: 'max' })
put('min minimum', { says: 'limit', limit: 'min' })
put('ref reference', { says: 'reference' })
put('nts nottoscale', { says: 'not-to-scale' })
put('abt about approx approximately circa', { says: 'looseness', looseness: 'about' })
put('full', { says: 'looseness', looseness: 'full' })
put('bare scant', { says: 'looseness', looseness: 'bare' })

fastener('bolt', 'bolts', 'bolts')
fastener('rivet riv', 'rivets rivs', 'rivets')
fastener('screw', 'screws', 'screws')
fastener('stud', 'studs', 'studs')
fastener('pin', 'pins', 'pins')

thread('unc', 'UNC')
thread('unf', 'UNF')
thread('unef', 'UNEF')
thread('nc', 'NC')
thread('nf', 'NF')
thread('uss usstd', 'U.S.S.')
thread('sae', 'S.A.E.')
thread('bsw', 'B.S.W.')
thread('bsf', 'B.S.F.')
thread('whit whitworth whitw', 'WHIT.')
thread('thd thds thread threads tpi', 'THD.')

put('taper tapered', { says: 'slope', taper: true })
put('slope', { says: 'slope', taper: false })
put('pipe gaspipe npt bsp gas', { says: 'pipe' })

/** What words say that stand so joined; undefined for what has no fixed meaning in a figure. */
export const meaningOfWords = (joined: string): WordMeaning | undefined => WORDS.get(joined)
