import { degrees } from '../../../src/core/geometry/angle-units.ts'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { Job } from '../../../src/core/job/model/types.ts'
import { listed } from '../../../src/core/job/picks/with-picks.ts'

/** A small sound job that uses every list, every kind of mark, reference, measure and evidence. */
export function winchJob(): Job {
  const { marks, ...rest } = winchJobOfVersion1()
  return { ...rest, version: 2, marks: marks.map(listed) }
}

/** The same as it was written before marks listed their picks. */
export function winchJobOfVersion1(): Job {
  return {
    format: 'scantling-job',
    version: 1,
    title: 'Quay winch, general arrangement',
    unit: 'in',
    tolerance: '1/32"',
    gauge: 'birmingham',
    people: [
      { id: 'ada', name: 'Ada Quill', role: 'archivist' },
      { id: 'ben', name: 'Ben Adze' },
    ],
    instruments: [{ id: 'cal', name: '6 in dial caliper', resolution: '0.001 in', limit: '0.001 in' }],
    sheets: [
      {
        id: 's1',
        title: 'General arrangement',
        record: { identifier: 'QW-17', date: '1911' },
        scan: { file: 'sheet-1.png', sha256: 'ab'.repeat(32), page: 1, width: 6000, height: 4000, dpi: 300 },
        draughting: '0.13 mm',
      },
      {
        id: 's2',
        title: 'Details',
        record: {},
        scan: { file: 'details/sheet-2.tif', sha256: 'cd'.repeat(32), page: 2, width: 900, height: 800 },
      },
    ],
    views: [
      {
        id: 'v1',
        sheet: 's1',
        name: 'Elevation',
        outline: [pixel(0, 0), pixel(3000, 0), pixel(3000, 3000)],
        drawnScale: 0.25,
        mapping: 'two-axis',
        grain: degrees(0.3),
        references: [
          { id: 'R1', kind: 'distance', marks: ['A', 'B'], size: `1'-2 3/8"`, u: '1/64"' },
          { id: 'R2', kind: 'diameter', marks: ['drum'], size: '7 1/2"' },
          { id: 'R3', kind: 'rectangle', marks: ['A', 'B', 'C', 'D'], width: '10 in', height: '254 mm' },
        ],
      },
      { id: 'v2', sheet: 's2', name: 'Pawl', mapping: 'uniform', references: [] },
    ],
    marks: [
      { id: 'A', sheet: 's1', by: 'ada', how: 'hand', sigma: 1, kind: 'point', pixel: pixel(10.5, 20.5) },
      {
        id: 'B',
        sheet: 's1',
        how: 'hand',
        sigma: 1,
        kind: 'point',
        pixel: pixel(500, 20),
        repeats: [pixel(501, 20.25)],
      },
      { id: 'C', sheet: 's1', how: 'hand', sigma: 1, kind: 'point', pixel: pixel(500, 400) },
      { id: 'D', sheet: 's1', how: 'hand', sigma: 1, kind: 'point', pixel: pixel(10, 400) },
      {
        id: 'base',
        sheet: 's1',
        how: 'stroke',
        sigma: 0.2,
        kind: 'line',
        pixels: [pixel(0, 600), pixel(900, 602)],
      },
      {
        id: 'top',
        sheet: 's1',
        how: 'stroke',
        sigma: 0.2,
        kind: 'line',
        pixels: [pixel(0, 100), pixel(900, 101)],
      },
      {
        id: 'drum',
        sheet: 's1',
        how: 'stroke',
        sigma: 0.3,
        kind: 'circle',
        pixels: [pixel(100, 0), pixel(200, 100), pixel(100, 200)],
      },
      {
        id: 'pinion',
        sheet: 's1',
        how: 'stroke',
        sigma: 0.3,
        kind: 'circle',
        pixels: [pixel(700, 0), pixel(800, 100), pixel(700, 200)],
      },
      {
        id: 'rim',
        sheet: 's1',
        how: 'hand',
        sigma: 1,
        kind: 'path',
        pixels: [pixel(0, 0), pixel(9, 0), pixel(9, 9)],
        closed: true,
        label: 'edge of the drum side',
      },
      { id: 'elsewhere', sheet: 's2', how: 'hand', sigma: 1, kind: 'point', pixel: pixel(1, 1) },
    ],
    dimensions: [
      {
        name: 'drum_length',
        label: 'Length of drum',
        kind: 'length',
        count: 2,
        tolerance: '1/64"',
        adopt: 'P1',
        evidence: [
          {
            id: 'P1',
            basis: 'printed',
            text: `1?-3/8`,
            sheet: 's1',
            box: [10, 10, 80, 20],
            legibility: 'doubtful',
            by: 'ben',
            at: '2026-02-03T10:00:00Z',
            candidates: [{ text: '14 3/8"', probability: 0.9 }],
          },
          { id: 'S1', basis: 'scaled', view: 'v1', measure: 'distance', marks: ['A', 'B'] },
          { id: 'S2', basis: 'scaled', view: 'v1', measure: 'spacing', marks: ['top', 'base'] },
          { id: 'S3', basis: 'scaled', view: 'v1', measure: 'spacing', marks: ['C', 'base'] },
          {
            id: 'F1',
            basis: 'found',
            readings: ['14 23/64"', '14.36 in'],
            instrument: 'cal',
            worn: { loss: '1/64"', u: '0.005 in' },
            withdrawn: 'read from the wrong end',
          },
        ],
      },
      {
        name: 'drum_od',
        label: 'Drum, outside',
        kind: 'length',
        evidence: [
          { id: 'S1', basis: 'scaled', view: 'v1', measure: 'diameter', marks: ['drum'] },
          {
            id: 'S2',
            basis: 'scaled',
            view: 'v1',
            measure: 'radius',
            marks: ['drum'],
            withdrawn: 'a radius',
          },
        ],
      },
      {
        name: 'drum_girth',
        label: 'Round the drum',
        kind: 'length',
        adopt: 'derived',
        evidence: [{ id: 'D1', basis: 'derived', formula: 'pi * drum_od' }],
      },
      {
        name: 'shafts_apart',
        label: 'Shafts, centres',
        kind: 'length',
        evidence: [{ id: 'S1', basis: 'scaled', view: 'v1', measure: 'centres', marks: ['drum', 'pinion'] }],
      },
      {
        name: 'rake',
        label: 'Rake of the side',
        kind: 'angle',
        tolerance: "30'",
        evidence: [
          { id: 'S1', basis: 'scaled', view: 'v1', measure: 'angle', marks: ['top', 'base'] },
          { id: 'F1', basis: 'found', readings: ["47° 30'"] },
        ],
      },
      {
        name: 'edge_run',
        label: 'Edge',
        kind: 'length',
        evidence: [{ id: 'S1', basis: 'scaled', view: 'v1', measure: 'run', marks: ['rim'] }],
      },
      {
        name: 'side_area',
        label: 'Area of the side',
        kind: 'area',
        evidence: [
          { id: 'S1', basis: 'scaled', view: 'v1', measure: 'area', marks: ['rim'] },
          { id: 'F1', basis: 'found', readings: ['12.4 sq in'] },
        ],
      },
      {
        name: 'spokes',
        label: 'Spokes',
        kind: 'count',
        evidence: [{ id: 'F1', basis: 'found', readings: ['6'] }],
      },
    ],
    relations: [{ id: 'E1', text: 'drum_girth = pi * drum_od', u: '1/32"' }],
    notes: [
      {
        id: 'N1',
        sheet: 's1',
        outline: [pixel(1, 1), pixel(2, 2)],
        text: 'smudged here',
        by: 'ada',
        about: 'drum_length',
      },
    ],
  }
}
