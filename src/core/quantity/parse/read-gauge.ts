import { reason } from '../../words/core-words.ts'
import { type GaugeStandard, gaugeNumber, gaugeRange, gaugeStep, gaugeThickness } from '../gauges.ts'
import { type Length, lengthFromInches } from '../length.ts'
import type { TokenReader } from '../notation/token-reader.ts'

/** A sheet gauge as called out, with the thickness it stands for. */
export interface Gauge {
  /** `16`, `0`, `4/0` */
  readonly number: string
  readonly standard: GaugeStandard
  readonly thickness: Length
  /** Neither it nor the job names the standard. */
  readonly assumed?: true
}

const NUMBER_WORDS: ReadonlySet<string> = new Set(['no', 'nr'])
const GAUGE_WORDS: ReadonlySet<string> = new Set(['ga', 'gauge', 'gage'])
const STANDARD_WORDS = new Map<string, GaugeStandard>([
  ['bwg', 'birmingham'],
  ['swg', 'imperial-1884'],
  ['iswg', 'imperial-1884'],
  ['usg', 'us-standard-1893'],
  ['uss', 'us-standard-1893'],
  ['ussg', 'us-standard-1893'],
])
/** Gauges of tables that are not here. */
const OTHER_GAUGES: ReadonlyMap<string, 'bg' | 'awg'> = new Map([
  ['bg', 'bg'],
  ['awg', 'awg'],
])

/** What a gauge is taken for that names no standard in a job that names none. */
const USUAL_GAUGE: GaugeStandard = 'us-standard-1893'

const isGaugeWord = (word: string): boolean =>
  GAUGE_WORDS.has(word) || STANDARD_WORDS.has(word) || OTHER_GAUGES.has(word)

/** Whether what follows is a sheet gauge: `No. 16 GA`, `16 GA.`, `4/0 B.W.G.`, `#16 gauge`. */
export function gaugeFollows(reader: TokenReader): boolean {
  const first = reader.peek()
  if (first.kind === 'number-sign') return true
  if (first.kind === 'word') return NUMBER_WORDS.has(first.text)
  if (first.kind !== 'number') return false
  const unit = reader.peek(1).kind === 'slash' ? reader.peek(3) : reader.peek(1)
  return unit.kind === 'word' && isGaugeWord(unit.text)
}

function thicknessOf(number: string, standard: GaugeStandard): Length {
  const inches = gaugeThickness(number, standard)
  // The Act states fractions, and no rule has the eightieths of No. 20.
  const onRule = (inches.d & (inches.d - 1n)) === 0n
  const length = lengthFromInches(inches, gaugeStep(number, standard))
  return { ...length, fraction: standard === 'us-standard-1893' && onRule }
}

/**
 * Reads a sheet gauge. `GA`, `GAUGE` and `GAGE` mean the standard of the job; `B.W.G.`, `S.W.G.` and `U.S.S.G.` name their own.
 *
 * @param standard what a gauge means that does not name its standard; undefined where the job does not say
 * @throws NotationError
 */
export function readGauge(reader: TokenReader, standard: GaugeStandard | undefined): Gauge {
  if (reader.peek().kind === 'number-sign' || reader.peek().kind === 'word') reader.take()
  const first = reader.peek()
  if (first.kind !== 'number' || first.places > 0) {
    throw reader.error(reason('notation.gauge-number'))
  }
  reader.take()
  let no = first.text
  if (reader.accept('slash')) {
    const nought = reader.peek()
    if (nought.kind !== 'number' || nought.text !== '0') {
      throw reader.error(reason('notation.gauge-noughts'))
    }
    reader.take()
    no = `${no}/0`
  }
  const word = reader.peek()
  const other = word.kind === 'word' ? OTHER_GAUGES.get(word.text) : undefined
  if (other !== undefined) throw reader.error(reason('notation.gauge-table-unknown', { gauge: other }))
  if (word.kind !== 'word' || !isGaugeWord(word.text)) {
    throw reader.error(reason('notation.gauge-unmarked'))
  }
  reader.take()
  let named = STANDARD_WORDS.get(word.text)
  if (named === undefined && reader.peek().kind === 'word') {
    named = STANDARD_WORDS.get(reader.peek().text)
    if (named !== undefined) reader.take()
  }
  const meant = named ?? standard ?? USUAL_GAUGE
  const assumed = named === undefined && standard === undefined
  const number = gaugeNumber(no, meant)
  if (number === undefined) {
    throw reader.error(reason('notation.gauge-outside-table', gaugeRange(meant)), first)
  }
  return {
    number,
    standard: meant,
    thickness: thicknessOf(number, meant),
    ...(assumed && { assumed }),
  }
}
