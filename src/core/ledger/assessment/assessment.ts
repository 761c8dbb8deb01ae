import { evaluationOrder } from '../../formula/evaluation-order.ts'
import { FormulaError } from '../../formula/formula-error.ts'
import { type Labels, labelsOfJob } from '../../job/ids/labels-of-job.ts'
import { conventionsOf, meanTheSame } from '../../job/model/conventions.ts'
import type { Dimension, Job, Sheet, Unit } from '../../job/model/types.ts'
import { finestInUse } from '../../quantity/graduation.ts'
import { reason } from '../../words/core-words.ts'
import type { FoundSpread } from '../evidence/found-spread.ts'
import { instrumentLimits } from '../evidence/instrument-limits.ts'
import { type ScatterPools, scatterPools } from '../evidence/scatter-pools.ts'
import type { Asking, Consulted } from '../kept/consulted.ts'
import { Keeping } from '../kept/keeping.ts'
import { type FiguresAs, type Look, sameLook } from '../units/look.ts'
import { type CalibratedView, calibrateView } from '../views/calibrate-view.ts'
import { type PreparedView, prepareView, type ViewContext } from '../views/prepare-view.ts'
import { type SheetStretch, sheetStretch } from '../views/sheet-stretch.ts'
import type { Assessed } from './assessed.ts'
import { DimensionAssessor } from './dimension-assessor.ts'
import { featureAsked } from './feature-asked.ts'
import { type InCommon, SharedSources } from './shared-sources.ts'
import { readSingles, type Singles, singleOf } from './singles.ts'
import { newPlaces, placeOf, placesAfter, type SourcePlaces } from './source-places.ts'
import { type Things, thingsOf } from './things.ts'

/** A whole job, evaluated. All uncertain numbers in it share their sources. */
export interface Assessment extends InCommon {
  job: Job
  /** The unit that lengths are looked at in. A bare number in a figure means the job's own whatever this is. */
  unit: Unit
  figuresAs: FiguresAs
  /** What people call what is in it, by its ids. */
  labels: Labels
  views: ReadonlyMap<string, CalibratedView>
  /** By the id of the view. */
  prepared: ReadonlyMap<string, PreparedView>
  /** By the id of the sheet. */
  stretches: ReadonlyMap<string, SheetStretch>
  dimensions: ReadonlyMap<string, Assessed>
  /** The finest fraction of an inch that its figures use: 16 for sixteenths; null when they use none. */
  finest: number | null
  /** The shortest length that its figures write in feet, mm; null when they write none. */
  feetFrom: number | null
  singles: Singles
  /** How readings on the original scatter, by what they are pooled with. */
  scatters: ScatterPools
  places: SourcePlaces
  /** What each of its views and dimensions was worked out from. */
  consulted: ReadonlyMap<Kept, readonly Consulted<Things>[]>
}

/**
 * Evaluates every view and every dimension of a job.
 * @param look how it is looked at; in the job's own unit unless said otherwise
 * @param before of the same job before some edits: what they leave alone is taken from it and not worked out anew. It
 *   comes to the same, to the last bit where no mark has more than 65,536 sources of error
 * @throws FormulaError when formulas run in a circle; a job that `readJob` accepted never does
 */
export function assess(job: Job, look: Partial<Look> = {}, before?: Assessment): Assessment {
  const { unit = job.unit, figuresAs = 'fractions' } = look
  const { handed, places } = handedOn(job, { unit, figuresAs }, before)
  const conventions = conventionsOf(job)
  const singles = readSingles(job.dimensions, conventions, handed?.singles)
  const scatters = scatterPools(
    spreadsOf(singles),
    instrumentLimits(job.instruments, conventions),
    handed?.scatters,
  )
  const shared = new SharedSources(places, handed)
  const order = inOrder(job, singles)
  const finest = finestInUse([...singles.values()].flatMap(({ figures }) => figures.fractions))
  const feetFrom = leastOf([...singles.values()].flatMap(({ figures }) => figures.inFeet))
  const prepared = new Map<string, PreparedView>()
  const stretches = new Map<string, SheetStretch>()
  const views = new Map<string, CalibratedView>()
  const dimensions = new Map<string, Assessed>()
  const things = thingsOf(job, { prepared, stretches, views }, scatters, dimensions)
  const keeping = new Keeping<Kept, Things>(things, handed?.consulted)
  for (const view of job.views) {
    const was = handed?.prepared.get(view.id)
    const context = (asking: Asking<Things>): ViewContext => ({
      conventions,
      sheet: asking.get('sheet', view.sheet),
      featureOf: (id) => featureAsked(asking.get('mark', id), id, shared),
    })
    const make = (asking: Asking<Things>): PreparedView => prepareView(view, context(asking))
    const at = placeOf(places.view, view.id)
    prepared.set(view.id, keeping.orMade(was?.view === view ? was : undefined, at, make))
  }
  for (const [id, { sheet, own }] of bySheet(prepared.values())) {
    const paper = sheet === undefined ? null : shared.paperOf(sheet)
    stretches.set(id, sheetStretch(own, paper, handed?.stretches.get(id)))
  }
  for (const view of job.views) {
    const was = handed?.views.get(view.id)
    const make = (asking: Asking<Things>): CalibratedView =>
      calibrateView(known(asking.get('prepared', view.id), view.id), () =>
        known(asking.get('stretch', view.sheet), view.sheet),
      )
    const at = placeOf(places.view, view.id) + BESIDE
    views.set(view.id, keeping.orMade(was?.view === view ? was : undefined, at, make))
  }
  const assessor = new DimensionAssessor({ conventions, unit, figuresAs, finest, singles, shared })
  // A figure of whole inches counts as written to the finest fraction that the job uses, and values are set as it is.
  const figuresMeanTheSame = handed?.finest === finest && handed.feetFrom === feetFrom
  for (const dimension of order) {
    const was = figuresMeanTheSame ? handed?.dimensions.get(dimension.name) : undefined
    const at = placeOf(places.dimension, dimension.name)
    const make = (asking: Asking<Things>): Assessed => assessor.assess(dimension, asking)
    dimensions.set(dimension.name, keeping.orMade(was?.dimension === dimension ? was : undefined, at, make))
  }
  const { consulted } = keeping
  const { features, limits, papers } = shared.settled(consulted.values())
  const labels = labelsOfJob(job)
  return {
    job,
    unit,
    figuresAs,
    labels,
    views,
    prepared,
    stretches,
    dimensions,
    finest,
    feetFrom,
    singles,
    scatters,
    places,
    features,
    limits,
    papers,
    consulted,
  }
}

/** What is worked out and kept as long as all that it was worked out from stands. */
type Kept = PreparedView | CalibratedView | Assessed

/** Where the sources of a calibrated view stand after those of its figured sizes, with which they are combined. */
const BESIDE = 0.5

/** The views of each sheet in the order of the job, by the id of the sheet. */
function bySheet(
  prepared: Iterable<PreparedView>,
): Map<string, { sheet: Sheet | undefined; own: PreparedView[] }> {
  const sheets = new Map<string, { sheet: Sheet | undefined; own: PreparedView[] }>()
  for (const one of prepared) {
    const of = sheets.get(one.view.sheet) ?? { sheet: one.sheet, own: [] }
    of.own.push(one)
    sheets.set(one.view.sheet, of)
  }
  return sheets
}

function known<T>(thing: T | undefined, id: string): T {
  if (thing === undefined) throw new RangeError(`Nothing was prepared for ${id}.`)
  return thing
}

/** What of an assessment before can stand, and the places of the sources that go with it. */
function handedOn(
  job: Job,
  look: Look,
  before: Assessment | undefined,
): { handed: Assessment | undefined; places: SourcePlaces } {
  if (before !== undefined && sameLook(before, look) && meanTheSame(before.job, job)) {
    const places = placesAfter(job, before.places)
    if (places !== null) return { handed: before, places }
  }
  // Where no place is left between two things, all get new ones.
  return { handed: undefined, places: newPlaces(job) }
}

/** In the order of the job. */
function* spreadsOf(singles: Singles): Iterable<FoundSpread> {
  for (const { spreads } of singles.values()) yield* spreads
}

const leastOf = (lengths: readonly number[]): number | null =>
  lengths.length === 0 ? null : lengths.reduce((least, length) => Math.min(least, length))

function inOrder({ dimensions }: Job, singles: Singles): readonly Dimension[] {
  const order = evaluationOrder(dimensions, (dimension) => singleOf(singles, dimension).uses)
  if ('circle' in order) throw new FormulaError(reason('formula.circle', { names: order.circle }))
  return order.order
}
