/** Why a view can't be calibrated, and how its figured sizes do not fit. */
import { capital } from './capital.ts'
import { howOften } from './how-often.ts'
import { mappingName } from './mapping-words.ts'
import type { AnyReason, Say } from './reason.ts'

type Suspect = Readonly<{ id: string; part?: string }>

const NOUN = 'figured size'

/** What a figured size is called, with its noun before it: `figured size 14 1/4"`; a label has it already. */
const figured = (name: string): string => (name.startsWith(NOUN) ? name : `${NOUN} ${name}`)

/** `14 1/4"`, and of a rectangle `2" × 3" (width)`. */
function nameOf({ id, part }: Suspect, say: Say): string {
  const name = say.label(id)
  return part === undefined ? name : `${name} (${part})`
}

/** Each name once: 14 1/4", 2" × 3" (width) and 6". */
function namesOf(suspects: readonly Suspect[], say: Say): string {
  const names = [...new Set(suspects.map((suspect) => nameOf(suspect, say)))]
  return names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1)}` : (names[0] ?? '')
}

/** `Figured sizes 14 1/4" and 6"`; of those that go by their labels, `Figured size 1 and figured size 2`. */
function everyReference(suspects: readonly Suspect[], say: Say): string {
  const plain = suspects.every(({ id }) => !say.label(id).startsWith(NOUN))
  return plain ? `Figured sizes ${namesOf(suspects, say)}` : capital(namesOf(suspects, say))
}

/** From a standard uncertainty to what holds 19 times in 20. */
const NINETEEN_IN_TWENTY = 1.96

/** What a probability says of a misfit. */
const byChance = (p: number): string => `by chance ${howOften(p)}`

/** `14 1/4", or 6" and 2" together`. */
const eitherInWords = (either: readonly (readonly Suspect[])[], say: Say): string =>
  either.map((suspects) => `${namesOf(suspects, say)}${suspects.length > 1 ? ' together' : ''}`).join(', or ')

/** What may be wrong, and where to look first where no setting aside makes the rest agree. */
function whichIsWrong(
  { suspects, either }: { suspects: readonly Suspect[]; either: readonly (readonly Suspect[])[] },
  say: Say,
): string {
  const [only] = either
  if (only !== undefined && either.length === 1) {
    return ` Without ${namesOf(only, say)} the rest agree: misread figure${only.length > 1 ? 's' : ''}, or not to scale?`
  }
  if (either.length > 1) {
    return ` Nothing decides which is wrong: ${eitherInWords(either, say)}. Read these figures again, and look whether they are drawn to scale.`
  }
  return suspects.length === 0
    ? ''
    : ` Look first at ${namesOf(suspects, say)}: misread figure, or not to scale?`
}

/** What may be wrong in place of the one that is set aside. */
function instead(either: readonly (readonly Suspect[])[], say: Say): string {
  if (either.length === 0) return ''
  const together = either.every((suspects) => suspects.length > 1)
  return ` But ${either.map((suspects) => namesOf(suspects, say)).join(', or ')} may be wrong in its place${together ? ', if misread alike' : ''}: read these figures again before you rely on it.`
}

/** By how much lengths come out otherwise: `1.1 % longer along the sheet and as they are across it`. */
function longer({ along, across }: { along: number; across: number }): string {
  const by = (share: number): string =>
    Math.abs(share) < 0.0001
      ? 'no other'
      : `${ofPercent(Math.abs(share))} ${share < 0 ? 'shorter' : 'longer'}`
  return by(along) === by(across) ? by(along) : `${by(along)} along the sheet and ${by(across)} across it`
}

const needs = ({ mapping, sizes }: { mapping: string; sizes: number }): string =>
  `${mappingName(mapping)} needs ${sizes} independent size${sizes > 1 ? 's' : ''}`

function directionWords(degrees: number): string {
  if (degrees === 0) return 'along the sheet'
  if (degrees === 90) return 'up and down the sheet'
  return `at ${degrees}° to the sheet's horizontal edge`
}

function runWords(degrees: number): string {
  if (degrees === 0) return "along the sheet's horizontal edge"
  if (degrees === 90) return "at right angles to the sheet's horizontal edge"
  return `at about ${degrees}° to the sheet's horizontal edge`
}

/** A share of a length as a percentage of two figures. */
const ofPercent = (share: number): string =>
  `${share < 0 ? '−' : ''}${Math.abs(100 * share) < 0.005 ? '0' : Math.abs(100 * share).toPrecision(2)} %`

/**
 * Which way the paper has shrunk more, and by how much: `0.31 % ± 0.50 % more across than along`.
 * @param stretch ln of the scale along over the scale across, in true size a pixel: above 0 where it shrank more along
 */
const shrunkMore = (stretch: number, U: number): string =>
  `${ofPercent(Math.abs(stretch))} ± ${ofPercent(U)} more ${stretch < 0 ? 'across than along' : 'along than across'}`

const viewsInWords = (names: readonly string[]): string =>
  `view${names.length > 1 ? 's' : ''} ${names.map((name) => `"${name}"`).join(' and ')}`

/** What else speaks of a scale that nothing checks, and what to do. */
function oneMore(coarse: string): string {
  const add = 'one more figured size would tell'
  if (coarse === 'agrees')
    return `A misread figure would not show unless it is out by a tenth, by the drawn scale and the scan's dpi; ${add}.`
  return coarse === 'contradicts'
    ? `The drawn scale and the scan's dpi disagree with it: read the figures again for a wrong digit or a wrong unit.`
    : `A misread figure would not show: ${add}.`
}

/** Figured sizes that close on themselves, with lengths as they are written. */
type Closes = Readonly<{
  by: readonly Suspect[]
  given: readonly Suspect[]
  expected: string
  stated: string
  /** What they miss by; null where that is nothing. */
  out: string | null
  closes: boolean
}>

const outBy = ({ out, closes }: Closes): string =>
  closes ? 'that is within the rounding of the figures' : `out by ${out}`

/** What is printed in place of what others come to: `8'-4 1/4"`, with its length where that is written otherwise. */
function printed({ given, stated }: Closes, say: Say): string {
  const names = namesOf(given, say)
  if (given.length > 1) return `${names} come to ${stated}`
  return `${names.startsWith(stated) ? names : `${names}, ${stated},`} is printed`
}

const percent = (share: number): string => `${(100 * share).toFixed(0)} %`

export const CALIBRATION_WORDS = {
  // Go on from "can't be calibrated: "
  'calibration.no-references': () =>
    'it has no figured sizes. Add the ends of a dimension whose true size is known.',
  'calibration.size-not-above-nothing': (p: { reference: string; stated: number }, say: Say) =>
    `${figured(say.label(p.reference))} is stated to be ${p.stated} mm. State its true size, or remove it.`,
  'calibration.no-size-on-the-sheet': (p: { reference: string; problem: AnyReason }, say: Say) =>
    `${figured(say.label(p.reference))} has no size on the sheet: ${say(p.problem)} Pick its marks again, or remove it.`,
  'calibration.tilt-free': (p: { mapping: string; sizes: number }) =>
    `its figured sizes leave the tilt of the sheet free (${needs(p)}). Add a rectangle, or known lengths in other parts of the view, or choose a simpler mapping.`,
  'calibration.scale-free': (p: { mapping: string; sizes: number; degrees: number }) =>
    `its figured sizes do not fix the scale ${directionWords(p.degrees)} (${needs(p)}). Add a figured size that runs ${runWords(p.degrees)}, or choose a simpler mapping.`,
  'calibration.contradictory': (p: { mapping: string }) =>
    `its figured sizes contradict one another: ${mappingName(p.mapping)} can't give all of them at once. Check their figures and marks.`,
  'calibration.not-settled': (p: { mapping: string }) =>
    `its figured sizes do not settle the scales of ${mappingName(p.mapping)}. Check their figures and marks, or choose a simpler mapping.`,
  'calibration.too-uncertain': (p: { share: number }) =>
    `its figured sizes leave a scale or tilt uncertain by ${percent(p.share)}: they are too short, too close to one another or too roughly picked. Add a longer figured size, or choose a simpler mapping.`,
  'calibration.disagrees-too-much': (p: { share: number }) =>
    `its figured sizes disagree so much that a scale or tilt would be uncertain by ${p.share > 1 ? 'more than itself' : percent(p.share)}: misread figures, or marks on the wrong features? Check their figures and marks, and add one that you are sure of.`,

  // Whole sentences
  'calibration.beyond-all-bounds': () =>
    'The figured sizes come out beyond all bounds: check their picks and sizes.',
  'misfit.set-aside': (p: { reference: Suspect; either: readonly (readonly Suspect[])[] }, say: Say) =>
    `${capital(figured(nameOf(p.reference, say)))} does not fit the others: misread figure, or not to scale? It is set aside, and the rest agree without it.${instead(p.either, say)}`,
  'misfit.set-aside-and-enlarged': (
    p: { reference: Suspect; either: readonly (readonly Suspect[])[]; enlarged: number; p: number },
    say: Say,
  ) =>
    `${capital(figured(nameOf(p.reference, say)))} does not fit the others: misread figure, or not to scale? It is set aside, and the uncertainty of the scale is enlarged ${p.enlarged.toFixed(1)} times, because the rest do not quite agree either (${byChance(p.p)}).${instead(p.either, say)}`,
  'misfit.enlarged': (
    p: {
      suspects: readonly Suspect[]
      either: readonly (readonly Suspect[])[]
      enlarged: number
      p: number
    },
    say: Say,
  ) =>
    `The figured sizes do not agree within their uncertainties (${byChance(p.p)}), so the uncertainty of the scale is enlarged ${p.enlarged.toFixed(1)} times.${whichIsWrong(p, say)}`,
  'misfit.alternative': (
    p: {
      leftOut: readonly Suspect[]
      along: number
      across: number
      stretch: { value: number; U: number; seldom: boolean } | null
    },
    say: Say,
  ) =>
    `Without ${namesOf(p.leftOut, say)} the rest agree, and lengths come out ${longer(p)} than now${p.stretch === null ? '' : `; the sheet has then shrunk ${shrunkMore(p.stretch.value, p.stretch.U)}${p.stretch.seldom ? ', which paper seldom does' : ''}`}.`,
  // Go on from "nothing checks this scale: "
  'unchecked.one-size': (p: { coarse: string }) => `it rests on one figured size. ${oneMore(p.coarse)}`,
  'unchecked.others-tell-otherwise': () =>
    'its figured sizes are no more than it takes, and the other views of its sheet tell otherwise how the paper has shrunk: look for a misread figure.',
  'unchecked.figures-alone': (p: { coarse: string }) =>
    `its figured sizes check one another's figures, but not where they are picked and what the sheet is scaled by. ${oneMore(p.coarse)}`,
  'unchecked.no-more-than-needed': (p: { mapping: string; coarse: string }) =>
    `it has no more figured sizes than ${mappingName(p.mapping)} needs. ${oneMore(p.coarse)}`,

  'stretch.by-paper': (p: { U: number }) =>
    `Neither its figured sizes nor another view of the sheet tell how much more the paper shrank one way than the other, so ±${ofPercent(p.U)} is allowed for: a figured size each way would tell.`,
  'stretch.by-views': (p: { views: readonly string[]; own: boolean; stretch: number; U: number }) =>
    `By ${viewsInWords(p.views)}${p.own ? ' and its own figured sizes' : ''} the sheet has shrunk ${shrunkMore(p.stretch, p.U)}.`,
  'stretch.unlikely': (
    p: { stretch: number; U: number; paper: number; setAside: readonly string[] },
    say: Say,
  ) => {
    const left = p.setAside.map((id) => figured(say.label(id))).join(' and ')
    return `By its figured sizes the sheet has shrunk ${shrunkMore(p.stretch, p.U)}, and paper seldom does more than ${ofPercent(NINETEEN_IN_TWENTY * p.paper)}: look for figures that are misread alike${left === '' ? '' : `, and do not take ${left} for the wrong one because the others outvote it`}.`
  },
  'stretch.odd': (
    p: {
      view: string
      others: readonly string[]
      stretch: number
      U: number
      p: number
      problem: AnyReason | null
    },
    say: Say,
  ) =>
    `By view "${p.view}" the sheet has shrunk ${shrunkMore(p.stretch, p.U)}; ${viewsInWords(p.others)} of the same sheet ${p.others.length > 1 ? 'tell' : 'tells'} otherwise (${byChance(p.p)}). It keeps its own scales: look for a misread figure in it or in them.${p.problem === null ? '' : ` ${say(p.problem)}`}`,

  'closing.same': (p: Closes, say: Say) =>
    p.out === null
      ? `${capital(namesOf(p.by, say))} and ${namesOf(p.given, say)} give one length between the same marks, and say the same, ${p.stated}.`
      : `${capital(namesOf(p.by, say))} is printed, and between the same marks ${printed(p, say)}: ${outBy(p)}.`,
  'closing.sum': (p: Closes, say: Say) =>
    p.out === null
      ? `${capital(namesOf(p.by, say))} add up to ${p.expected}, ${p.given.length > 1 ? `and so do ${namesOf(p.given, say)}` : 'as is printed'}: the figures agree.`
      : `${capital(namesOf(p.by, say))} add up to ${p.expected}, but ${printed(p, say)}: ${outBy(p)}.`,
  'closing.shape': (p: Closes, say: Say) =>
    p.out === null
      ? `By the shape that ${namesOf(p.by, say)} give it is ${p.expected}, as is printed: the figures agree.`
      : `By the shape that ${namesOf(p.by, say)} give it is ${p.expected}, but ${printed(p, say)}: ${outBy(p)}.`,
  'closing.does-not-close': (
    p: { closings: readonly AnyReason[]; setAside: boolean; fit: AnyReason | null },
    say: Say,
  ) =>
    [
      ...p.closings.map(say),
      p.setAside
        ? []
        : `No picks can bring that about: read the figures again. The uncertainty of the scale takes in what they miss by.`,
      p.fit === null ? [] : say(p.fit),
    ]
      .flat()
      .join(' '),
  'misfit.suspects': (p: { suspects: readonly Suspect[] }, say: Say) => {
    const [first] = p.suspects
    return first !== undefined && new Set(p.suspects.map((suspect) => nameOf(suspect, say))).size === 1
      ? `${capital(figured(nameOf(first, say)))} does not fit the others: misread figure, or not to scale?`
      : `${everyReference(p.suspects, say)} do not fit one another: misread figures, or not to scale?`
  },
} as const
