import { describe, expect, it } from 'vitest'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { JobError } from '../../../../src/core/job/text/job-error.ts'
import { withNode } from '../edits/edited-json.ts'
import { winchJob } from '../winch-job.ts'

type Path = (string | number)[]

function refusalOf(...changes: [Path, unknown][]): string {
  let json: unknown = winchJob()
  for (const [path, value] of changes) json = withNode(json, path, value)
  try {
    readJob(json)
  } catch (error) {
    expect(error).toBeInstanceOf(JobError)
    return (error as JobError).message
  }
  throw new Error('the job was read, and should have been refused')
}

const PRINTED: Path = ['dimensions', 0, 'evidence', 0]
const SCALED: Path = ['dimensions', 0, 'evidence', 1]
const FOUND: Path = ['dimensions', 0, 'evidence', 4]
const inScaled = 'evidence "S1" of dimension "drum_length"'

describe('ids and names', () => {
  it.each<[Path, string, string]>([
    [
      ['people', 1, 'id'],
      'ada',
      'person "ada" stands twice in its list, 1st and 2nd: give one of them another id.',
    ],
    [
      ['sheets', 1, 'id'],
      's1',
      'sheet "s1" stands twice in its list, 1st and 2nd: give one of them another id.',
    ],
    [
      ['views', 1, 'id'],
      'v1',
      'view "v1" stands twice in its list, 1st and 2nd: give one of them another id.',
    ],
    [
      ['marks', 9, 'id'],
      'A',
      'mark "A" stands twice in its list, 1st and 10th: give one of them another id.',
    ],
    [
      ['views', 0, 'references', 2, 'id'],
      'R1',
      'figured size "R1" of view "v1" stands twice in its list, 1st and 3rd: give one of them another id.',
    ],
    [
      [...PRINTED, 'id'],
      'S1',
      'evidence "S1" of dimension "drum_length" stands twice in its list, 1st and 2nd: give one of them another id.',
    ],
    [
      ['dimensions', 1, 'name'],
      'drum_length',
      'dimension "drum_length" stands twice in its list, 1st and 2nd: give one of them another name.',
    ],
    [
      [...SCALED, 'id'],
      'mean',
      'evidence "mean" of dimension "drum_length" has the name of a rule of adoption for its id: give it another.',
    ],
  ])('%j as %j', (path, value, message) => {
    expect(refusalOf([path, value])).toBe(message)
  })

  it.each(['2nd_ring', 'drum-length', 'drum length', 'Ø', ' drum', 'drum_o.d'])(
    'a dimension cannot be called %j, for formulas could not use it',
    (name) => {
      expect(refusalOf([['dimensions', 7, 'name'], name])).toBe(
        `dimension ${JSON.stringify(name)} has a name that formulas cannot use: write letters a to z, digits and underscores, not starting with a digit.`,
      )
    },
  )

  it.each([
    'pi',
    'e',
    'tau',
    'in',
    'inch',
    'mm',
    'cm',
    'm',
    'ft',
    'deg',
    'rad',
    'sqrt',
    'sin',
    'constructor',
  ])('a dimension cannot be called %s, for that means something already', (name) => {
    expect(refusalOf([['dimensions', 7, 'name'], name])).toBe(
      `dimension "${name}" has a name that already means something in formulas: give it another.`,
    )
  })

  it('what is adopted is a rule or evidence of the same dimension', () => {
    expect(refusalOf([['dimensions', 0, 'adopt'], 'D1'])).toBe(
      'dimension "drum_length": adopt is "D1", which is neither a rule (printed, scaled, found, derived, mean) nor the id of evidence for this dimension.',
    )
  })
})

describe('what is referred to exists', () => {
  it.each<[Path, string, string]>([
    [['views', 1, 'sheet'], 's9', 'view "v2": sheet is "s9", and the job has no such sheet.'],
    [['marks', 0, 'sheet'], 's9', 'mark "A": sheet is "s9", and the job has no such sheet.'],
    [['notes', 0, 'sheet'], 's9', 'note "N1": sheet is "s9", and the job has no such sheet.'],
    [
      [...PRINTED, 'sheet'],
      's9',
      'evidence "P1" of dimension "drum_length": sheet is "s9", and the job has no such sheet.',
    ],
    [[...SCALED, 'view'], 'v9', `${inScaled}: view is "v9", and the job has no such view.`],
    [[...SCALED, 'marks', 1], 'Z', `${inScaled}: the 2nd mark is "Z", and the job has no such mark.`],
    [
      ['views', 0, 'references', 0, 'marks', 1],
      'Z',
      'figured size "R1" of view "v1": the 2nd mark is "Z", and the job has no such mark.',
    ],
    [
      [...FOUND, 'instrument'],
      'rule',
      'evidence "F1" of dimension "drum_length": instrument is "rule", and the job has no such instrument.',
    ],
    [
      ['marks', 0, 'by'],
      'eve',
      'mark "A": by is "eve", who is not among the people of this job: add them, or correct the id.',
    ],
    [
      [...PRINTED, 'by'],
      'eve',
      'evidence "P1" of dimension "drum_length": by is "eve", who is not among the people of this job: add them, or correct the id.',
    ],
    [
      ['notes', 0, 'by'],
      'eve',
      'note "N1": by is "eve", who is not among the people of this job: add them, or correct the id.',
    ],
  ])('%j as %j', (path, value, message) => {
    expect(refusalOf([path, value])).toBe(message)
  })

  it.each(['../other/scan.png', '/etc/hosts', 'C:\\scan.png', 'a\\b.png', './a.png', 'a//b.png', 'a\nb.png'])(
    'a scan lies in the folder of its job, not at %j',
    (file) => {
      expect(refusalOf([['sheets', 0, 'scan', 'file'], file])).toBe(
        'sheet "s1": file of the scan must be the plain name of a file below the folder "scans".',
      )
    },
  )
})

describe('marks suit what is measured between them', () => {
  it.each<[string, string[], string]>([
    [
      'distance',
      ['A', 'base'],
      'must be a point and a point for the measure "distance", and this is a point and a line',
    ],
    [
      'spacing',
      ['A', 'B'],
      'must be a line and a line, or a line and a point, or a point and a line for the measure "spacing", and this is a point and a point',
    ],
    ['diameter', ['A'], 'must be a circle for the measure "diameter", and this is a point'],
    ['radius', ['rim'], 'must be a circle for the measure "radius", and this is a path'],
    ['radius', ['drum', 'pinion'], 'must be a circle for the measure "radius", and 2 marks are named'],
    [
      'centres',
      ['drum', 'A'],
      'must be a circle and a circle for the measure "centres", and this is a circle and a point',
    ],
    ['run', ['base'], 'must be a path for the measure "run", and this is a line'],
    ['distance', [], 'must be a point and a point for the measure "distance", and 0 marks are named'],
    ['distance', ['A', 'A'], 'names mark "A" twice: pick the other one'],
  ])('%s between %j', (measure, marks, problem) => {
    expect(refusalOf([[...SCALED, 'measure'], measure], [[...SCALED, 'marks'], marks])).toBe(
      `${inScaled}: marks ${problem}.`,
    )
  })

  it('an area needs its path closed', () => {
    expect(refusalOf([['marks', 8, 'closed'], false])).toBe(
      'evidence "S1" of dimension "side_area": marks must be a closed path for the measure "area", and this is a path.',
    )
  })

  it('marks lie on the sheet of the view', () => {
    expect(refusalOf([[...SCALED, 'marks', 1], 'elsewhere'])).toBe(
      `${inScaled}: the 2nd mark is "elsewhere", a mark on sheet "s2", but the view is on sheet "s1".`,
    )
    expect(refusalOf([['views', 0, 'references', 2, 'marks', 3], 'elsewhere'])).toBe(
      'figured size "R3" of view "v1": the 4th mark is "elsewhere", a mark on sheet "s2", but the view is on sheet "s1".',
    )
  })

  it.each<[Path, unknown, string]>([
    [
      ['references', 0, 'marks', 0],
      'drum',
      'figured size "R1" of view "v1": marks must be a point and a point for a figured size of kind distance, and this is a circle and a point',
    ],
    [
      ['references', 1, 'marks', 0],
      'A',
      'figured size "R2" of view "v1": marks must be a circle for a figured size of kind diameter, and this is a point',
    ],
    [
      ['references', 2, 'marks', 2],
      'base',
      'figured size "R3" of view "v1": marks must be a point and a point and a point and a point for a figured size of kind rectangle, and this is a point and a point and a line and a point',
    ],
    [
      ['references', 0, 'marks', 1],
      'A',
      'figured size "R1" of view "v1": marks names mark "A" twice: pick the other one',
    ],
  ])('a reference %j of %j', (path, value, problem) => {
    expect(refusalOf([['views', 0, ...path], value])).toBe(`${problem}.`)
  })

  it('a measure suits the kind of the dimension', () => {
    expect(refusalOf([['dimensions', 4, 'evidence', 0, 'measure'], 'spacing'])).toBe(
      'evidence "S1" of dimension "rake": measure is "spacing", which gives a length, but the dimension is an angle.',
    )
    expect(refusalOf([['dimensions', 3, 'evidence', 0, 'measure'], 'angle'])).toBe(
      'evidence "S1" of dimension "shafts_apart": measure is "angle", which gives an angle, but the dimension is a length.',
    )
  })

  it('a count is not scaled', () => {
    expect(refusalOf([['dimensions', 3, 'kind'], 'count'])).toBe(
      'evidence "S1" of dimension "shafts_apart" is scaled, but a count is not measured: count it, or change the kind of the dimension.',
    )
  })
})

describe('picked points suffice', () => {
  it.each<[number, [number, number][], string]>([
    [4, [[0, 0]], 'mark "base" is not sound: a line needs 2 picked points or more, and this has 1.'],
    [
      4,
      [
        [3, 4],
        [3, 4],
      ],
      'mark "base" is not sound: all points of this line are the same: pick at least two different ones.',
    ],
    [
      6,
      [
        [0, 0],
        [1, 1],
      ],
      'mark "drum" is not sound: a circle needs 3 picked points or more, and this has 2.',
    ],
    [
      6,
      [
        [1, 1],
        [1, 1],
        [1, 1],
      ],
      'mark "drum" is not sound: all points of this circle are the same: pick at least two different ones.',
    ],
    [
      8,
      [
        [0, 0],
        [1, 1],
      ],
      'mark "rim" is not sound: a closed path needs 3 picked points or more, and this has 2.',
    ],
  ])('mark %i through %j', (mark, pixels, message) => {
    expect(refusalOf([['marks', mark, 'pixels'], pixels])).toBe(message)
  })

  it('a view is bounded by three corners or more', () => {
    expect(refusalOf([['views', 0, 'outline'], [[0, 0]]])).toBe(
      'view "v1": outline must have three corners or more.',
    )
  })
})

describe('written quantities can be read', () => {
  it.each<[Path, string, RegExp]>([
    [
      ['tolerance'],
      'tight',
      /^tolerance is not written as a tolerance\. Cannot read “tight”: stopped at character 1/,
    ],
    [
      ['instruments', 0, 'resolution'],
      'fine',
      /^instrument "cal": resolution is not written as a length or an angle\. /,
    ],
    [['instruments', 0, 'limit'], '±', /^instrument "cal": limit is not written as a length or an angle\. /],
    [['sheets', 0, 'draughting'], '0.13 cubits', /^sheet "s1": draughting is not written as a length\. /],
    [
      ['views', 0, 'references', 0, 'u'],
      '?',
      /^figured size "R1" of view "v1": u is not written as a length\. /,
    ],
    [
      ['views', 0, 'references', 0, 'size'],
      '1 38"',
      /^figured size "R1" of view "v1": size is not written as a length\. Cannot read “1 38"”/,
    ],
    [
      ['views', 0, 'references', 2, 'width'],
      'wide',
      /figured size "R3" of view "v1": width is not written as a length\. /,
    ],
    [
      ['views', 0, 'references', 2, 'height'],
      'high',
      /figured size "R3" of view "v1": height is not written as a length\. /,
    ],
    [
      ['dimensions', 0, 'tolerance'],
      '1/0"',
      /^dimension "drum_length": tolerance is not written as a tolerance\. /,
    ],
    [
      [...FOUND, 'readings', 1],
      '14.3.6',
      /evidence "F1" of dimension "drum_length": the 2nd reading is not written as a length\. /,
    ],
    [
      [...FOUND, 'worn', 'loss'],
      'some',
      /evidence "F1" of dimension "drum_length": loss of the wear is not written as a length\. /,
    ],
    [
      [...FOUND, 'worn', 'u'],
      'some',
      /evidence "F1" of dimension "drum_length": u of the wear is not written as a length\. /,
    ],
    [
      ['dimensions', 4, 'evidence', 1, 'readings', 0],
      '3 in',
      /"F1" of dimension "\w+": the 1st reading is not written as an angle\. /,
    ],
    [
      ['dimensions', 6, 'evidence', 1, 'readings', 0],
      '3 in',
      /"F1" of dimension "\w+": the 1st reading is not written as an area\. /,
    ],
    [
      ['dimensions', 7, 'evidence', 0, 'readings', 0],
      '5.5',
      /"F1" of dimension "\w+": the 1st reading is not written as a count\. /,
    ],
    [['relations', 0, 'u'], 'hair', /^relation "E1": u is not written as a length, an angle or an area\. /],
  ])('%j as %j', (path, value, message) => {
    expect(refusalOf([path, value])).toMatch(message)
  })

  it.each<[Path, string]>([
    [['tolerance'], '±1/32'],
    [['tolerance'], '+0 −1/64"'],
    [['dimensions', 0, 'tolerance'], '+.005 −.002'],
    [['dimensions', 4, 'tolerance'], '±1°'],
    [[...FOUND, 'worn', 'loss'], '-1/64"'],
    [['relations', 0, 'u'], "30'"],
    [['instruments', 0, 'resolution'], "5'"],
    [['views', 0, 'references', 1, 'size'], 'No. 16 GA'],
  ])('%j may be %j', (path, value) => {
    const json = withNode(winchJob(), path, value)
    expect(readJob(json)).toEqual(json)
  })

  it.each<Path>([
    ['views', 0, 'references', 0, 'size'],
    ['views', 0, 'references', 1, 'size'],
    ['views', 0, 'references', 2, 'width'],
    ['views', 0, 'references', 2, 'height'],
  ])('a figured size is more than nothing: %j %j %j %j %j', (...path) => {
    expect(refusalOf([path, '0 in'])).toMatch(/(size|width|height) is "0 in", and must be greater than 0\.$/)
  })
})

describe('formulas hold together', () => {
  it.each<[string, RegExp]>([
    ['pi * drum_odd', /^Dimension "drum_girth", evidence "D1": .*drum_odd/],
    ['drum_girth + drum_od', /^drum_girth refers to itself\./],
    ['rake + drum_od', /^Dimension "drum_girth", evidence "D1": .*mixes units/],
    ['pi * (', /^Dimension "drum_girth", evidence "D1": /],
    ['drum_od ^ 2', /^Dimension "drum_girth", evidence "D1": .*area/],
  ])('%s', (formula, message) => {
    expect(refusalOf([['dimensions', 2, 'evidence', 0, 'formula'], formula])).toMatch(message)
  })

  it.each(['drum_girth', 'drum_girth = rake', 'drum_girth = nothing_known'])('relation %s', (text) => {
    expect(refusalOf([['relations', 0, 'text'], text])).toMatch(/^Relation "E1": /)
  })

  it('a formula too long to be anybody’s is refused before it is read', () => {
    const long = `drum_od${' + drum_od'.repeat(100_000)}`
    expect(refusalOf([['dimensions', 2, 'evidence', 0, 'formula'], long])).toBe(
      'evidence "D1" of dimension "drum_girth": formula must have 4000 characters, no more.',
    )
    const brackets = `${'('.repeat(1900)}drum_od${')'.repeat(1900)}`
    expect(() =>
      readJob(withNode(winchJob(), ['dimensions', 2, 'evidence', 0, 'formula'], brackets)),
    ).not.toThrow(RangeError)
  })
})
