import { excerpt, shownAt } from './excerpt.ts'
import { GAUGE_NAMES } from './gauge-names.ts'
import type { AnyReason, Catalogue, ReasonOf } from './reason.ts'

const noValue = (what: string) => (p: { value: string }) =>
  `${what} of ${p.value} cannot be written; check what it was worked out from.`

const TWO_LIMITS = 'A tolerance has both limits; write'

const OTHER_GAUGES = {
  bg: 'B.G. is the Birmingham sheet and hoop gauge, another table than B.W.G.',
  awg: 'A.W.G. is the wire gauge for copper and brass.',
}

/** From which number to which a table of sheet gauges goes. */
type GaugeRange = {
  readonly standard: keyof typeof GAUGE_NAMES
  readonly first: string
  readonly last: string
}

const inRange = ({ standard, first, last }: GaugeRange): string =>
  `The ${GAUGE_NAMES[standard]} runs from No. ${first} to No. ${last}.`

/** What is said of written quantities: where reading stopped and what to write there, and what cannot be written. */
export const NOTATION_WORDS = {
  'notation.stopped': (p: { text: string; at: number; advice: AnyReason }, say) => [
    `Cannot read “${excerpt(p.text, p.at)}”: stopped ${
      p.at >= p.text.length ? 'at its end' : `at character ${p.at + 1}, “${shownAt(p.text, p.at)}”`
    }.`,
    ...say.sentences(p.advice),
  ],
  'notation.nothing-written': (p: { advice: AnyReason }, say) => [
    'Nothing is written where a quantity should stand.',
    ...say.sentences(p.advice),
  ],

  // Signs
  'notation.too-many-digits': (p: { most: number }) =>
    `A number of more than ${p.most} digits is no dimension; write it shorter.`,
  'notation.ambiguous-stop': (p: { letters: string }) =>
    `The stop may end the abbreviation or begin a decimal; write “${p.letters}. ” or “${p.letters} 0.” there.`,

  // Numbers
  'notation.denominator-missing': () => 'The number below the fraction bar is missing; write it as in 3/8.',
  'notation.denominator-zero': () => 'No fraction has 0 below its bar; write the number of parts, as in 3/8.',
  'notation.improper-fraction': (p: { stacked: boolean; write: string; orWrite: string | null }) =>
    `${p.stacked ? 'The upper' : 'The first'} number of a fraction must be smaller than the second; write ${p.write}${
      p.orWrite === null ? '' : `, or ${p.orWrite} if a gap was lost`
    }.`,
  'notation.second-number': (p: { instance: string | null }) =>
    `Two numbers stand side by side; write the fraction with its bar${
      p.instance === null ? '' : `, for instance ${p.instance}`
    }.`,
  'notation.second-fraction': () => 'A second fraction follows; write one number only.',
  'notation.second-bar': () => 'A second fraction bar follows; a fraction has one, as in 3/8.',
  'notation.second-line': () => 'A second line follows; write the quantity on one line, as in 14 3/8.',
  'notation.subtraction': () =>
    'This reads as a subtraction; write 14-3/8 without gaps for a whole number and a fraction.',
  'notation.stray-dash': () =>
    'A dash joins feet and inches, as in 1\'-2", or a whole number and a fraction, as in 1-3/8; write it so.',
  'notation.comma': () => 'Write decimals with a point or a comma, and thousands without either.',
  'notation.comma-of-thousands': (p: { whole: string; decimal: string }) =>
    `The comma may part thousands or begin decimals; write ${p.whole} or ${p.decimal}.`,
  'notation.thousands-apart': (p: { number: string }) =>
    `Two numbers stand side by side; write ${p.number} without the gap, or the fraction with its bar.`,
  'notation.question-mark': () =>
    'What is not sure is no part of the figure; write it as it is read and mark it as hard to read.',
  'notation.point-without-digits': () => 'A point needs digits after it; write 5 or 5.0.',
  'notation.capital-m': () =>
    'A capital M is a metric thread and stands right before its size, as in 8 M12; metres are m.',
  'notation.thread-of-inches': (p: { form: string }) =>
    `A ${p.form} thread is one of inches; write the unit of its size, and of its tolerance where it has one.`,
  'notation.no-unit': () => 'Only a unit may follow here: \', ", ft, in, mm, cm or m.',

  // Lengths
  'notation.length-expected': () => 'Expected a length such as 14 3/8", 1\'-2 3/8", 2.375 in or 365.1 mm.',
  'notation.length-negative': () => 'A size is never less than 0; write it without the minus.',
  'notation.fraction-of-a-foot': () =>
    'Inches follow a fraction of a foot; write whole feet and then inches.',
  'notation.inch-mark-wrong': () => 'Inches are marked " or in; write that mark here.',
  'notation.twelve-inches': (p: { inches: string; feetAndInches: string }) =>
    `Inches after feet must be less than 12; ${p.inches} inches more would be ${p.feetAndInches}.`,
  'notation.second-length': () => 'A second quantity follows; write one length only, feet before inches.',
  'notation.second-unit': () => 'A second unit follows; write one unit for each number.',
  'notation.after-length': () => 'Nothing may follow the length; take this away.',
  'notation.remainder-expected': () =>
    'Expected the remainder in decimals of an inch, as in 14 3/8" + 0.006".',
  'notation.remainder-not-decimal': () =>
    'A remainder is a decimal of less than an inch, as in 14 3/8" + 0.006"; write the sum itself.',
  'notation.remainder-unmarked': () => 'The remainder needs its inch mark, as in 14 3/8" + 0.006".',

  // Sheet gauges
  'notation.gauge-signed': () => 'A sheet gauge has no sign; write it without the minus.',
  'notation.gauge-number': () =>
    'A gauge number is a whole number or noughts; write it as in No. 16 GA or No. 4/0 GA.',
  'notation.gauge-noughts': () =>
    'Only a 0 can follow the stroke of a gauge number, as in 4/0; write the number of noughts.',
  'notation.gauge-table-unknown': (p: { gauge: keyof typeof OTHER_GAUGES }) =>
    `${OTHER_GAUGES[p.gauge]} It is not among the tables here; write the thickness instead.`,
  'notation.gauge-unmarked': () =>
    'A number may be that of a drill or a wire too; write GA after it for a sheet gauge, as in No. 16 GA.',
  'notation.gauge-outside-table': (p: GaugeRange) => `${inRange(p)} Check the number.`,
  'notation.after-gauge': () => 'Nothing may follow the gauge; take this away.',

  // Angles
  'notation.angle-expected': () => "Expected an angle such as 47° 30', 47.5° or 47 1/2 deg.",
  'notation.angle-negative': () => 'A printed angle is never less than 0; write it without the minus.',
  'notation.angle-unit-missing': () => 'The unit of the angle is missing; write ° or deg after the number.',
  'notation.angle-part-unmarked': (p: { part: string }) => `Expected the mark of ${p.part} after the number.`,
  'notation.sixty-of-a-part': (p: { part: string }) =>
    `There are fewer than 60 ${p.part} here or they would be carried over; write them so.`,
  'notation.angle-fraction-inside': () =>
    'Only the last part of an angle may hold a fraction; write whole numbers before it.',
  'notation.angle-part-stray': () =>
    'Minutes need their mark \' and seconds their mark ", in that order, as in 47° 30\' 15"; write them so.',
  'notation.after-angle': () => 'Nothing may follow the angle; take this away.',

  // Areas and counts
  'notation.area-expected': () => 'Expected an area such as 12.4 sq in or 8000 mm².',
  'notation.area-unit-missing': () => 'An area needs its unit: write sq in, sq ft, mm², cm² or m².',
  'notation.area-not-square': () => 'This is a length; write sq in or mm² for an area.',
  'notation.after-area': () => 'Nothing may follow the area; take this away.',
  'notation.count-expected': () => 'Expected a whole number such as 4, or 4 HOLES.',
  'notation.count-too-large': () => 'Nothing is drawn in such numbers; write a smaller one.',
  'notation.after-count': () => 'Only HOLES or PLACES may follow a count; take this away.',

  // Tolerances
  'notation.minus-limit-missing': () => `${TWO_LIMITS} −0 for none on the other side.`,
  'notation.plus-limit-missing': () => `${TWO_LIMITS} +0 for none on the other side.`,

  'notation.tolerance-of-nothing': () =>
    'Nothing is made without any tolerance; write the limits, or leave the tolerance out where none is stated.',
  'notation.limit-and-tolerance': () =>
    'MAX. and MIN. are limits themselves; write the limit or the tolerance, not both.',
  'notation.limits-apart': () =>
    'Two limits of one size differ, and by little; write the size that is meant, or its limits as in 1.500/1.498.',
  'notation.fit-of-millimetres': (p: { fit: string }) =>
    `${p.fit} is a fit of sizes in millimetres, and this is in inches; write the unit before it, as in 25 mm H7.`,

  // Slopes
  'notation.slope-expected': () => 'Expected a slope or taper such as 1 IN 8, 3/4" IN 12" or 3/4 PER FT.',
  'notation.ratio-unsaid': () =>
    'A ratio may be a taper or a scale; write TAPER before it, as in TAPER 1:12.',

  // Figures
  'notation.figure-expected': () =>
    'Expected a figure such as 14 3/8", Ø 7 1/2", R 3/16, 4 HOLES DRILL 9/32, No. 16 GA or 47° 30\'.',
  'notation.term-repeated': () => 'This is said twice; write it once.',
  'notation.term-of-a-length': () => 'Only a length can be that; take this away.',
  'notation.term-contradicts': () => 'This contradicts what the figure has said before; keep one of the two.',
  'notation.count-or-size': (p: { count: string; size: string }) =>
    `This is either a number of holes or one size; write ${p.count} ${
      p.count === '1' ? 'HOLE' : 'HOLES'
    } DRILL ${p.size}, or DRILL ${p.count} ${p.size}.`,
  'notation.count-or-whole': (p: { count: string; size: string; orTolerance: boolean }) =>
    `This is either ${p.count} of ${p.size} or one size; write ${p.count}X ${p.size}, or ${
      p.orTolerance
        ? `${p.count}-${p.size} without gaps; for a tolerance write +0 −${p.size} after the size`
        : 'for one size the word for one of them, as in PLATE'
    }.`,
  'notation.size-by-size': () =>
    'A size by a size is no single length; write the one that is meant, and the other in a note.',
  'notation.nominal-pipe': () =>
    'Pipe is called by a nominal bore that cannot be measured on it; write the diameter that is meant, with O.D. or I.D.',
  'notation.bracket-open': () => 'A bracket stands alone; write its other half or take it away.',
  'notation.bracket-empty': () => 'Nothing stands in the brackets; take them away.',
  'notation.bracketed-fraction': () =>
    'What stands in brackets may belong to the number before it; write them together, as in 14 3/8, or mark it, as in (365 mm).',
  'notation.gauge-of-another-thickness': (p: { standard: keyof typeof GAUGE_NAMES; stated: string }) =>
    `By the ${GAUGE_NAMES[p.standard]} this gauge is not ${p.stated}; name the table it is of, as in No. 16 B.W.G., or check the number.`,
  'notation.count-repeated': () => 'The number of them is said twice; write it once.',
  'notation.count-not-whole': (p: { counted: string }) =>
    `The number of ${p.counted} must be a whole number from 1 up; write it so.`,
  'notation.count-after-size': (p: { counted: string }) =>
    `Write how many ${p.counted} before the size, as in 4 HOLES DRILL 9/32.`,
  'notation.length-wanted': () =>
    'The words before it make this figure a length; take them away or write a length.',
  'notation.second-tolerance': () => 'A second tolerance follows; write one only.',
  'notation.tolerance-before-size': () =>
    'A tolerance follows the size that it belongs to; write the size first.',
  'notation.tolerance-not-a-length': () => 'A length has its tolerance as a length; write it so.',
  'notation.word-unknown': () =>
    'This word has no fixed meaning in a figure; take it away or write it in a note.',
  'notation.after-gauge-figure': () => 'Nothing of this kind may follow a gauge; take this away.',

  // Figured sizes
  'notation.known-size-without-length': () =>
    'A figured size is a length; write one such as 14 3/8", Ø 6" or 12" DIA.',
  'notation.known-size-is-a-radius': (p: { of: 'diameter' | 'rectangle' }) =>
    p.of === 'diameter'
      ? 'A radius is written, and the figured size is a diameter; write the diameter, twice that, if that is meant.'
      : 'A radius is written, and the figured size is the side of a rectangle; write the length of the side.',
  'notation.known-size-is-a-diameter': () =>
    'A diameter is written, and the figured size is the side of a rectangle; write the length of the side.',
  'notation.known-size-not-to-scale': () =>
    'What is said not to be drawn to scale gives no scale; take another figured size.',
  'notation.known-size-not-exact': () =>
    'A limit or a size that is about, full or bare is no exact size; write the size alone, and how uncertain it is beside it.',

  // Scales, gauge tables, and what cannot be written
  'notation.scale-unread': (p: { text: string }) => [
    `Cannot read “${p.text}” as a scale.`,
    `Write it as the title block has it: 3" = 1'-0", 1:4, 1/4 full size, or 0.25 (drawn size over true size).`,
  ],
  'notation.no-such-gauge': (p: { number: string; range: GaugeRange }) => [
    `There is no gauge “${p.number}”.`,
    inRange(p.range),
    'Check the number.',
  ],
  'notation.unwritable-length': noValue('A length'),
  'notation.unwritable-angle': noValue('An angle'),
  'notation.unwritable-area': noValue('An area'),
  'notation.unwritable-count': noValue('A count'),
  'notation.unwritable-graduation': (p: { denominator: number }) =>
    `An inch is not divided into ${p.denominator} parts; give a whole number such as 64.`,
} as const satisfies Catalogue

/** What is said of a written quantity, as data. */
export type NotationReason = ReasonOf<typeof NOTATION_WORDS>
