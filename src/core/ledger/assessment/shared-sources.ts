import { GeometryError } from '../../geometry/geometry-error.ts'
import type { Instrument, Mark, Sheet } from '../../job/model/types.ts'
import { type Feature, featureOf } from '../../measuring/features/feature-of-mark.ts'
import { type Source, sourcesAt } from '../../uncertainty/source.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import { limitOfError } from '../evidence/found-evidence.ts'
import type { Consulted } from '../kept/consulted.ts'
import { paperStretch } from '../views/paper.ts'
import { placeOf, type SourcePlaces } from './source-places.ts'
import type { Things } from './things.ts'

/** What views and dimensions share sources of error by, in the order in which it is used. */
export interface InCommon {
  readonly features: ReadonlyMap<Mark, Feature>
  readonly limits: ReadonlyMap<Instrument, Source>
  readonly papers: ReadonlyMap<Sheet, Uncertain>
}

/** Makes each feature and each limit once: that is how two measures of one mark come to share its errors. */
export class SharedSources {
  readonly #features = new Map<Mark, Feature>()
  readonly #limits = new Map<Instrument, Source>()
  readonly #papers = new Map<Sheet, Uncertain>()
  readonly #places: SourcePlaces
  #before: InCommon | undefined

  /** @param before of the same job before some edits: what is still of the same thing is taken from it */
  constructor(places: SourcePlaces, before: InCommon | undefined) {
    this.#places = places
    this.#before = before
  }

  /** @throws GeometryError when the mark determines no feature */
  featureOf(mark: Mark): Feature {
    const known = this.#features.get(mark) ?? this.#before?.features.get(mark)
    const feature = known ?? sourcesAt(placeOf(this.#places.mark, mark.id), featureOf, mark)
    this.#features.set(mark, feature)
    return feature
  }

  /** What an instrument is off by is common to all that was measured with it. */
  limitOf(instrument: Instrument): Source {
    const known = this.#limits.get(instrument) ?? this.#before?.limits.get(instrument)
    const limit =
      known ?? sourcesAt(placeOf(this.#places.instrument, instrument.id), limitOfError, instrument)
    this.#limits.set(instrument, limit)
    return limit
  }

  /** What paper does is common to all views of a sheet. */
  paperOf(sheet: Sheet): Uncertain {
    const known = this.#papers.get(sheet) ?? this.#before?.papers.get(sheet)
    const paper = known ?? sourcesAt(placeOf(this.#places.sheet, sheet.id), paperStretch, sheet)
    this.#papers.set(sheet, paper)
    return paper
  }

  /** All that is shared by what was worked out; what was before is let go of. */
  settled(consulted: Iterable<readonly Consulted<Things>[]>): InCommon {
    // Where nothing was before, all was made in the order of its use.
    if (this.#before === undefined)
      return { features: this.#features, limits: this.#limits, papers: this.#papers }
    const features = new Map<Mark, Feature>()
    const limits = new Map<Instrument, Source>()
    for (const ofOne of consulted) {
      for (const { of, was } of ofOne) {
        if (was === undefined) continue
        if (of === 'instrument') limits.set(was, this.limitOf(was))
        if (of !== 'mark' || features.has(was)) continue
        const feature = this.#featureOrNone(was)
        if (feature !== null) features.set(was, feature)
      }
    }
    this.#before = undefined
    return { features, limits, papers: this.#papers }
  }

  /** Null where the picks determine none: what was to be measured by it says so. */
  #featureOrNone(mark: Mark): Feature | null {
    try {
      return this.featureOf(mark)
    } catch (error) {
      if (error instanceof GeometryError) return null
      throw error
    }
  }
}
