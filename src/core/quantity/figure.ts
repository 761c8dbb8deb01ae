import type { Angle } from './angle.ts'
import type { GaugeStandard } from './gauges.ts'
import type { Length } from './length.ts'

/** How far above and below the stated size is allowed; both are sizes without sign. */
export interface Tolerance<T> {
  readonly plus: T
  readonly minus: T
}

/** What a figure is the size of, or that it is none: an angle, a gauge, a number of things, a slope. */
export type FigureOf = 'length' | 'diameter' | 'radius' | 'centres' | 'angle' | 'gauge' | 'count' | 'slope'

/** What holds sheets together, of which a figure gives the size and perhaps the number. */
export type Fastener = 'bolts' | 'rivets' | 'screws' | 'studs' | 'pins'

/**
 * How a size is not quite what it says: `about` it; `full`, a little over; `bare`, a little under.
 */
export type Looseness = 'about' | 'full' | 'bare'

/** A thread as it is called out beside its nominal diameter. */
export interface Thread {
  /** Threads in an inch: 13 of `1/2-13 UNC`. */
  readonly perInch?: number
  /** Of a metric thread, millimetres: 1.75 of `M12 × 1.75`, as it is written. */
  readonly pitch?: string
  /** `UNC`, `B.S.W.`, `M`: as it is usually written. */
  readonly form: string
}

/** A class of fit as it is called out after a size: `H7`, `H7/g6`. */
export interface Fit {
  readonly code: string
  /** Limits above the stated size, millimetres with their sign; absent where the class is not in the table here. */
  readonly limits?: { readonly upper: number; readonly lower: number }
}

/** A slope or taper: so much in so much of the same unit. Both are exact numbers as they are written: `3/4`, `1.5`. */
export interface Slope {
  readonly rise: string
  readonly run: string
  /** Said to be a taper, which narrows by that much on its diameter or width. */
  readonly taper: boolean
}

/** A printed dimension, as written and as understood. */
export interface Figure {
  readonly text: string
  /** 'count' when it says nothing but how many. */
  readonly of: FigureOf
  /** Absent for angles, slopes and bare counts; the thickness, for a gauge; the middle, between two limits. */
  readonly length?: Length
  readonly angle?: Angle
  readonly gauge?: {
    readonly number: string
    readonly standard: GaugeStandard
    /** Neither the figure nor the job says which table is meant, so the usual one was taken. */
    readonly assumed?: true
  }
  /** How many alike. */
  readonly count?: number
  readonly counted?: 'holes' | 'places'
  /** Of what it is the size and the count: `8 BOLTS 5/8`. */
  readonly fastener?: Fastener
  readonly tolerance?: Tolerance<Length>
  readonly angleTolerance?: Tolerance<Angle>
  readonly typical: boolean
  readonly drilled: boolean
  /** O.D. or I.D. */
  readonly side?: 'outside' | 'inside'
  /** SQ.: the side of a square. */
  readonly square?: boolean
  /** MAX. or MIN.: a limit on one side, no size. */
  readonly limit?: 'max' | 'min'
  /** Written as two limits, `1.500/1.498`: the size is their middle, the tolerance half their difference. */
  readonly twoLimits?: true
  /** REF. or in brackets: for information, so that no tolerance applies. */
  readonly reference?: true
  readonly looseness?: Looseness
  /** N.T.S. */
  readonly notToScale?: true
  readonly thread?: Thread
  readonly fit?: Fit
  readonly slope?: Slope
  /** Its number may be no count but a first size, as in `4 x 9/16`. */
  readonly mayBeSection?: true
  /** A bare fraction on a metric sheet: of a millimetre as it stands, and hardly ever meant. */
  readonly bareFraction?: true
  /** Its point may part thousands, as in `1.250` on a sheet with decimal commas. */
  readonly mayBeThousands?: true
  /** It is written with decimal commas. */
  readonly decimalComma?: true
  /** What else stands in it and is kept as a note, as it is usually written: `TAP`, `EQ. SP.` */
  readonly notes?: readonly string[]
}
