import { NORMAL_95 } from '../../uncertainty/distributions.ts'
import { jointTest } from '../../uncertainty/joint-test.ts'
import { detectedNoncentrality } from '../../uncertainty/noncentrality.ts'
import { squaredU } from '../../uncertainty/normalised-error.ts'
import { type EvaluatedEvidence, isDoubted } from '../evidence/evaluated-evidence.ts'
import { type Duplicate, figureScales, witnessesAmong } from './witnesses.ts'

/** How the evidence of a dimension stands: two or more agree; only one; two or more do not; none usable. */
export type Agreement = 'agreed' | 'single' | 'disputed' | 'open'

/** Two pieces of evidence, and E_n of them. */
export interface Pair {
  a: EvaluatedEvidence
  b: EvaluatedEvidence
  en: number
}

/** How the evidence of a dimension agrees. */
export interface Concordance {
  status: Agreement
  /** Evidence that says something of its own. */
  witnesses: readonly EvaluatedEvidence[]
  duplicates: readonly Duplicate[]
  /** Of three or more witnesses that don't agree: those that stand out, the worst first. */
  odd: readonly EvaluatedEvidence[]
}

/** E_n above this is a dispute. Source: ISO/IEC 17043. */
export const DISPUTED_ABOVE = 1

/** Whether one of the two is a limit that the other does not keep. */
export const isBeyondLimit = ({ a, b, en }: Pair): boolean =>
  en > DISPUTED_ABOVE && (a.limit ?? b.limit) !== undefined

/** Evidence that agrees is called disputed as often as this. */
const LEVEL = 0.05

/**
 * Two witnesses are held against each other by E_n, three or more by one joint test: of many pairs that agree one is
 * above 1 by chance.
 * @param values usable evidence that gives a value
 * @param pairs all usable evidence, limits too
 */
export function concordanceOf(values: readonly EvaluatedEvidence[], pairs: readonly Pair[]): Concordance {
  // Beside a figure that is not to scale, what is scaled says nothing.
  const drawn = values.some((w) => w.notToScale === true)
    ? values.filter((w) => w.evidence.basis !== 'scaled')
    : values
  const { witnesses, duplicates } = witnessesAmong(drawn)
  const odd = witnesses.length > 2 ? oddOnes(witnesses) : []
  const disputed =
    pairs.some(isBeyondLimit) ||
    odd.length > 0 ||
    (witnesses.length === 2 && pairOf(witnesses, pairs) > DISPUTED_ABOVE)
  const status: Agreement =
    witnesses.length === 0
      ? 'open'
      : disputed
        ? 'disputed'
        : tellingAmong(witnesses) < 2
          ? 'single'
          : 'agreed'
  return { status, witnesses, duplicates, odd }
}

/** An expanded uncertainty above this share of a value leaves little to agree with. */
const VAGUE = 0.2

/** Whether evidence is so uncertain that next to anything agrees with it. */
export const isVague = ({ compared, coverage }: EvaluatedEvidence): boolean =>
  compared !== null && coverage !== null && coverage.U > VAGUE * Math.abs(compared.value)

/** Whether evidence is by a scale that is spoken against: it may dispute, but confirms nothing. */
const byDoubtedScale = ({ unchecked }: EvaluatedEvidence): boolean =>
  unchecked !== undefined && isDoubted(unchecked)

/** How many say something; one at least, where there is any. */
const tellingAmong = (witnesses: readonly EvaluatedEvidence[]): number =>
  witnesses.length < 2 ? witnesses.length : witnesses.filter((w) => !isVague(w) && !byDoubtedScale(w)).length

const pairOf = (two: readonly EvaluatedEvidence[], pairs: readonly Pair[]): number =>
  pairs.find(({ a, b }) => two.includes(a) && two.includes(b))?.en ?? 0

/** Pieces that have to be left out for the rest to agree, each time the one without which the rest agrees best. */
function oddOnes(witnesses: readonly EvaluatedEvidence[]): EvaluatedEvidence[] {
  const odd: EvaluatedEvidence[] = []
  let rest = [...witnesses]
  while (rest.length > 1 && !agree(rest)) {
    const worst = rest.reduce<{ chi2: number; one: EvaluatedEvidence } | null>((best, one) => {
      const { chi2 } = testOf(rest.filter((w) => w !== one))
      return best === null || chi2 < best.chi2 ? { chi2, one } : best
    }, null)
    if (worst === null) break
    odd.push(worst.one)
    rest = rest.filter((w) => w !== worst.one)
  }
  return odd
}

const agree = (witnesses: readonly EvaluatedEvidence[]): boolean => testOf(witnesses).p >= LEVEL

function testOf(witnesses: readonly EvaluatedEvidence[]) {
  const read = witnesses.flatMap(({ compared, coverage }) =>
    compared === null || coverage === null ? [] : [{ compared, coverage }],
  )
  return jointTest(
    read.map(({ compared }) => compared),
    read.map(({ coverage }) => coverage),
  )
}

/**
 * The error of a piece that the others would have shown 19 times in 20, in the unit of the values; null where there is
 * no telling.
 * Source: the minimal detectable bias of Baarda (1968), for the joint test.
 */
export function detectableError(
  one: EvaluatedEvidence,
  witnesses: readonly EvaluatedEvidence[],
): number | null {
  const step = one.coverage?.U ?? 0
  if (!witnesses.includes(one) || witnesses.length < 2 || step === 0) return null
  const other = witnesses.length === 2 ? witnesses.find((w) => w !== one) : undefined
  if (other !== undefined) return besideOther(one, other)
  // Chi-square is quadratic in the error of one value: with all others right it is what stands before the square.
  const { chi2, dof } = testOf(witnesses.map((w) => offBy(w, w === one ? step : 0)))
  return chi2 > 0 && Number.isFinite(chi2) ? step * Math.sqrt(detectedNoncentrality(dof) / chi2) : null
}

/** The same of two: of a figure that has a part in the scale, the rest of it must show as much. */
function besideOther(one: EvaluatedEvidence, other: EvaluatedEvidence): number | null {
  const shown = detectableBeside(one, other)
  const follows = Math.max(figureScales(one, other), figureScales(other, one))
  return shown === null ? null : shown / (1 - follows)
}

/** The same of two, of which there are thousands in a table. */
function detectableBeside(a: EvaluatedEvidence, b: EvaluatedEvidence): number | null {
  if (a.compared === null || b.compared === null || a.coverage === null || b.coverage === null) return null
  const square = squaredU(a.compared, b.compared, a.coverage, b.coverage)
  return square > 0 ? (Math.sqrt(square) / NORMAL_95) * Math.sqrt(detectedNoncentrality(1)) : null
}

const offBy = (one: EvaluatedEvidence, error: number): EvaluatedEvidence =>
  one.compared === null ? one : { ...one, compared: { ...one.compared, value: error } }
