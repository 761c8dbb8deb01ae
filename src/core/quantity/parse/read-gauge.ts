import { type GaugeStandard, gaugeNumber, gaugeRange, gaugeStep, gaugeThickness } from '../gauges.ts'
import { type Length, lengthFromInches } from '../length.ts'
import type { NotationReader } from '../notation/token-reader.ts'

/** A sheet gauge as called out, with the thickness it stands for. */
export interface Gauge {
  /** `16`, `0`, `4/0` */
  readonly number: string
  readonly standard: GaugeStandard
  readonly thickness: Length
}

const NUMBER_WORDS: ReadonlySet<string> = new Set(['no', 'nr'])
const GAUGE_WORDS: ReadonlySet<string> = new Set(['ga', 'gauge', 'gage'])
const STANDARD_WORDS = new Map<string, GaugeStandard>([
  ['bwg', 'birmingham'],
  ['usg', 'us-standard-1893'],
  ['uss', 'us-standard-1893'],
  ['ussg', 'us-standard-1893'],
])
const OTHER_GAUGES = new Map<string, string>([
  ['bg', 'B.G. is the Birmingham sheet and hoop gauge, another table than B.W.G.'],
  ['swg', 'S.W.G. is the Imperial standard wire gauge.'],
  ['awg', 'A.W.G. is the wire gauge for copper and brass.'],
])

const isGaugeWord = (word: string): boolean =>
  GAUGE_WORDS.has(word) || STANDARD_WORDS.has(word) || OTHER_GAUGES.has(word)

/** Whether what follows is a sheet gauge: `No. 16 GA`, `16 GA.`, `4/0 B.W.G.`, `#16 gauge`. */
export function gaugeFollows(reader: NotationReader): boolean {
  const first = reader.peek()
  if (first.kind === 'number-sign') return true
  if (first.kind === 'word') return NUMBER_WORDS.has(first.text)
  if (first.kind !== 'number') return false
  const unit = reader.peek(1).kind === 'slash' ? reader.peek(3) : reader.peek(1)
  return unit.kind === 'word' && isGaugeWord(unit.text)
}

const cache = new Map<string, Length>()

function sheet(number: string, standard: GaugeStandard): Length {
  const key = `${standard} ${number}`
  const known = cache.get(key)
  if (known) return known
  const inches = lengthFromInches(gaugeThickness(number, standard), gaugeStep(number, standard))
  const thickness = { ...inches, fraction: standard === 'us-standard-1893' }
  cache.set(key, thickness)
  return thickness
}

/**
 * Reads a sheet gauge. `GA`, `GAUGE` and `GAGE` mean the standard of the job; `B.W.G.` and `U.S.S.G.` name their own.
 *
 * @param standard what a gauge means that does not name its standard
 * @throws NotationError
 */
export function readGauge(reader: NotationReader, standard: GaugeStandard): Gauge {
  if (reader.peek().kind === 'number-sign' || reader.peek().kind === 'word') reader.take()
  const first = reader.peek()
  if (first.kind !== 'number' || first.places > 0) {
    throw reader.error('A gauge number is a whole number or noughts; write it as in No. 16 GA or No. 4/0 GA.')
  }
  reader.take()
  let no = first.text
  if (reader.accept('slash')) {
    const nought = reader.peek()
    if (nought.kind !== 'number' || nought.text !== '0') {
      throw reader.error(
        'Only a 0 can follow the stroke of a gauge number, as in 4/0; write the number of noughts.',
      )
    }
    reader.take()
    no = `${no}/0`
  }
  const word = reader.peek()
  const other = word.kind === 'word' ? OTHER_GAUGES.get(word.text) : undefined
  if (other) throw reader.error(`${other} It is not among the tables here; write the thickness instead.`)
  if (word.kind !== 'word' || !isGaugeWord(word.text)) {
    throw reader.error(
      'A number may be that of a drill or a wire too; write GA after it for a sheet gauge, as in No. 16 GA.',
    )
  }
  reader.take()
  let named = STANDARD_WORDS.get(word.text)
  if (named === undefined && reader.peek().kind === 'word') {
    named = STANDARD_WORDS.get(reader.peek().text)
    if (named !== undefined) reader.take()
  }
  const meant = named ?? standard
  const number = gaugeNumber(no, meant)
  if (number === undefined) throw reader.error(`${gaugeRange(meant)} Check the number.`, first)
  return { number, standard: meant, thickness: sheet(number, meant) }
}
