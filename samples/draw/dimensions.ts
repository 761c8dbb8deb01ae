import type { Dimension, Evidence, Measure } from '../../src/core/job/model/types.ts'
import type { QuantityKind } from '../../src/core/quantity/quantity-kind.ts'
import type { Chance } from './chance.ts'
import { ARCHIVIST, RESTORER } from './picks.ts'
import { type FigurePlace, PRINTED } from './printed-figures.ts'
import { readingsOf } from './surviving-original.ts'
import type { DimensionName } from './true-values.ts'
import { SIZES } from './ventilator.ts'

/** The box of a printed figure, pixels. */
export type BoxOf = (place: FigurePlace) => [x: number, y: number, width: number, height: number]

const om = { by: ARCHIVIST, at: '2026-03-09T16:20:00Z' }
const jt = { by: RESTORER, at: '2026-03-11T16:45:00Z' }
const yard = { by: RESTORER, at: '2026-04-02T11:10:00Z' }

/** The dimensions of the ventilator with every reason the two people found for them. */
export function dimensions(boxOf: BoxOf, original: Chance): Dimension[] {
  const printed = (id: string, place: FigurePlace, extra: Record<string, unknown> = {}): Evidence => ({
    id,
    basis: 'printed',
    text: PRINTED[place],
    sheet: 'sheet-1',
    box: boxOf(place),
    legibility: 'clear',
    ...om,
    ...extra,
  })
  const scaled = (id: string, view: string, measure: Measure, ...marks: string[]): Evidence => ({
    id,
    basis: 'scaled',
    view,
    measure,
    marks,
    ...jt,
  })
  const derived = (id: string, formula: string): Evidence => ({ id, basis: 'derived', formula, ...jt })
  const caliper = (id: string, size: number, n: number, scatter = 0.0015): Evidence => ({
    id,
    basis: 'found',
    instrument: 'caliper',
    readings: readingsOf(size, original, { n, scatter }),
    ...yard,
  })
  const worn = (id: string, size: number, n: number, loss: number, u: number): Evidence => ({
    id,
    basis: 'found',
    instrument: 'caliper',
    readings: readingsOf(size, original, { n, scatter: 0.0015, loss, spread: u }),
    worn: { loss: `${loss} in`, u: `${u} in` },
    ...yard,
  })
  const dimension = (
    name: DimensionName,
    label: string,
    evidence: Evidence[],
    extra: Partial<Dimension> & { kind?: QuantityKind } = {},
  ): Dimension => {
    // Whoever gave the first reason entered the dimension.
    const [{ by, at } = om] = evidence
    return { name, label, kind: 'length', ...extra, by, at, evidence }
  }
  const s = SIZES

  return [
    dimension('overall_height', 'Height over all', [printed('p1', 'elevation/overall_height')]),
    dimension('flange_od', 'Foot flange, outside diameter', [
      printed('p1', 'elevation/flange_od'),
      printed('p2', 'foot-plan/flange_od'),
    ]),
    dimension('flange_thickness', 'Foot flange, thickness', [
      printed('p1', 'elevation/flange_thickness'),
      scaled('s1', 'elevation', 'spacing', 'M29', 'M30'),
      {
        ...worn('f1', s.flangeThickness, 4, 0.03, 0.01),
        note: 'Underside wasted; taken at the four soundest places.',
      },
    ]),
    dimension('flange_bore', 'Foot flange, bore', [scaled('s1', 'foot-plan', 'diameter', 'M38')]),
    dimension('bolt_circle', 'Bolt circle', [
      printed('p1', 'foot-plan/bolt_circle'),
      printed('p2', 'foot-plan/bolt_circle', {
        text: '10 1/4" DIA.',
        by: RESTORER,
        at: '2026-03-11T14:02:00Z',
        withdrawn: 'Read again by both under raking light: the numerator is a 3.',
        withdrawnBy: ARCHIVIST,
        withdrawnAt: '2026-03-12T09:15:00Z',
      }),
      scaled('s1', 'foot-plan', 'diameter', 'M37'),
    ]),
    dimension('edge_margin', 'Bolt circle to rim', [printed('p1', 'foot-plan/edge_margin')]),
    dimension('hole_count', 'Holes in foot flange', [printed('p1', 'foot-plan/hole_count')], {
      kind: 'count',
    }),
    dimension(
      'hole_dia',
      'Hole in foot flange, diameter',
      [
        printed('p1', 'foot-plan/hole_dia'),
        scaled('s1', 'foot-plan', 'diameter', 'M41'),
        caliper('f1', s.holeDia, 3),
      ],
      { count: 8 },
    ),
    dimension('hole_chord', 'Chord between neighbouring holes', [
      derived('d1', 'bolt_circle * sin(180 deg / hole_count)'),
    ]),
    dimension('hole_chord_two', 'Chord over two pitches', [
      scaled('s1', 'foot-plan', 'centres', 'M39', 'M40'),
      derived('d1', 'bolt_circle * sin(360 deg / hole_count)'),
    ]),
    dimension('guard_bar_width', 'Guard bar, width', [scaled('s1', 'foot-plan', 'spacing', 'M43', 'M44')]),
    dimension('sheet_thickness', 'Sheet of drum, cone, neck and hood', [
      printed('p1', 'elevation/sheet_thickness'),
      { ...worn('f1', s.sheet, 5, 0.008, 0.003), note: 'Inside of the neck, under the old paint.' },
    ]),
    dimension('drum_od', 'Drum, outside diameter', [
      printed('p1', 'elevation/drum_od'),
      scaled('s1', 'foot-plan', 'diameter', 'M42'),
    ]),
    dimension('drum_bore', 'Drum, inside diameter', [derived('d1', 'drum_od - 2 * sheet_thickness')]),
    dimension('drum_height', 'Drum, height', [
      printed('p1', 'elevation/drum_height'),
      scaled('s1', 'elevation', 'spacing', 'M16', 'M17'),
    ]),
    dimension(
      'drum_blank_length',
      'Drum blank, length on the neutral fibre',
      [derived('d1', 'pi * (drum_od - sheet_thickness)')],
      { note: 'Butt seam: no lap allowed for.' },
    ),
    dimension('cone_height', 'Cone, height', [
      printed('p1', 'elevation/cone_height'),
      scaled('s1', 'elevation', 'spacing', 'M17', 'M18'),
    ]),
    dimension('cone_slant', 'Cone, slant height', [
      derived('d1', 'sqrt(cone_height^2 + ((drum_od - neck_od) / 2)^2)'),
      scaled('s1', 'elevation', 'distance', 'M6', 'M9'),
    ]),
    dimension(
      'cone_angle',
      'Cone, angle between its sides',
      [scaled('s1', 'elevation', 'angle', 'M23', 'M24')],
      {
        kind: 'angle',
      },
    ),
    dimension('neck_od', 'Neck, outside diameter', [printed('p1', 'elevation/neck_od')]),
    dimension('neck_height', 'Neck, height', [
      printed('p1', 'elevation/neck_height'),
      scaled('s1', 'elevation', 'spacing', 'M19', 'M9'),
    ]),
    dimension('opening_height', 'Opening between neck and hood', [
      printed('p1', 'elevation/opening_height'),
      scaled('s1', 'elevation', 'spacing', 'M19', 'M20'),
    ]),
    dimension('hood_od', 'Hood, outside diameter', [
      printed('p1', 'elevation/hood_od', {
        legibility: 'doubtful',
        candidates: [
          { text: '11 1/2"', probability: 0.55 },
          { text: '11 7/8"', probability: 0.25 },
          { text: '14 1/2"', probability: 0.2 },
        ],
        note: 'Under a stain; the fraction and the second figure are guesswork.',
      }),
      scaled('s1', 'elevation', 'distance', 'M14', 'M15'),
    ]),
    dimension('hood_height', 'Hood, height with lip and cap', [
      printed('p1', 'elevation/hood_height'),
      scaled('s1', 'elevation', 'spacing', 'M21', 'M22'),
    ]),
    dimension('hood_slant', 'Hood, slant height', [printed('p1', 'elevation/hood_slant')]),
    dimension('lever_centres', 'Damper lever, between centres', [printed('p1', 'elevation/lever_centres')]),
    dimension(
      'lever_angle',
      'Damper lever, angle above level',
      [printed('p1', 'elevation/lever_angle'), scaled('s1', 'elevation', 'angle', 'M25', 'M26')],
      { kind: 'angle' },
    ),
    dimension('stay_length', 'Stay, length along the outer face', [scaled('s1', 'elevation', 'run', 'M31')], {
      count: 4,
    }),
    dimension('stay_standoff', 'Stay, outer face to neck', [
      scaled('s1', 'elevation', 'spacing', 'M27', 'M28'),
    ]),
    dimension(
      'gasket_area',
      'Gasket under the foot flange, area',
      [derived('d1', 'pi / 4 * (flange_od^2 - flange_bore^2)')],
      { kind: 'area' },
    ),
    dimension('palm_width', 'Bracket palm, width', [
      printed('p1', 'bracket/palm_width'),
      caliper('f1', s.palmWidth, 3, 0.002),
    ]),
    dimension('palm_height', 'Bracket palm, height', [printed('p1', 'bracket/palm_height')]),
    dimension('palm_pitch', 'Bracket palm, pitch of holes upwards', [printed('p1', 'bracket/palm_pitch')]),
    dimension('palm_pitch_across', 'Bracket palm, pitch of holes across', [
      printed('p1', 'bracket/palm_pitch_across'),
    ]),
    dimension('palm_margin', 'Bracket palm, hole to foot', [printed('p1', 'bracket/palm_margin')]),
    dimension('plate_thickness', 'Bracket palm, thickness', [
      printed('p1', 'bracket/plate_thickness'),
      scaled('s1', 'bracket', 'spacing', 'M54', 'M55'),
    ]),
    dimension('boss_reach', 'Bracket, back of palm to centre of boss', [
      printed('p1', 'bracket/boss_reach'),
      scaled('s1', 'bracket', 'spacing', 'M54', 'M56'),
    ]),
    dimension('boss_radius', 'Bracket boss, radius', [
      printed('p1', 'bracket/boss_radius'),
      scaled('s1', 'bracket', 'radius', 'M52'),
    ]),
    dimension('boss_bore', 'Bracket boss, bore', [
      printed('p1', 'bracket/boss_bore'),
      scaled('s1', 'bracket', 'diameter', 'M53'),
      caliper('f1', s.bossBore, 4),
    ]),
    dimension(
      'underside_angle',
      'Bracket, underside of arm to palm',
      [scaled('s1', 'bracket', 'angle', 'M55', 'M57')],
      { kind: 'angle' },
    ),
    dimension('recess_area', 'Bracket, recess in the web, area', [scaled('s1', 'bracket', 'area', 'M58')], {
      kind: 'area',
    }),
  ]
}
