import type { PenHand } from './pen-face.ts'

/** Five draughtsmen who never were. */
export const PEN_HANDS = {
  'pen, upright': {
    slant: [-2, 3],
    breadth: [0.9, 1.1],
    pen: [0.08, 0.12],
    wobble: [0.005, 0.02],
    gap: [0.1, 0.2],
    flagged: false,
  },
  'pen, slanted': {
    slant: [15, 23],
    breadth: [0.85, 1.05],
    pen: [0.08, 0.12],
    wobble: [0.008, 0.022],
    gap: [0.1, 0.2],
    flagged: false,
  },
  'pen, quick': {
    slant: [5, 18],
    breadth: [0.8, 1.15],
    pen: [0.07, 0.12],
    wobble: [0.025, 0.045],
    gap: [0.07, 0.18],
    flagged: true,
  },
  'pen, broad': {
    slant: [-1, 10],
    breadth: [1.05, 1.3],
    pen: [0.13, 0.18],
    wobble: [0.01, 0.025],
    gap: [0.12, 0.22],
    flagged: true,
  },
  'pen, narrow': {
    slant: [8, 16],
    breadth: [0.65, 0.8],
    pen: [0.07, 0.1],
    wobble: [0.01, 0.025],
    gap: [0.08, 0.15],
    flagged: false,
  },
} as const satisfies Readonly<Record<string, PenHand>>
