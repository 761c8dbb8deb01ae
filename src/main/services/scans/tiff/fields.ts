/** Numbers of fields. Source: TIFF 6.0, section 8, and 15 for tiles. */
export const TAG = {
  newSubfileType: 254,
  subfileType: 255,
  width: 256,
  height: 257,
  bits: 258,
  compression: 259,
  photometric: 262,
  stripOffsets: 273,
  orientation: 274,
  samples: 277,
  rowsPerStrip: 278,
  stripBytes: 279,
  xResolution: 282,
  yResolution: 283,
  planar: 284,
  resolutionUnit: 296,
  tileWidth: 322,
} as const

/** Types of values: 16 bits, 32 bits, and a fraction of two of these. TIFF 6.0, section 2. */
export const TYPE = { short: 3, long: 4, rational: 5 } as const
