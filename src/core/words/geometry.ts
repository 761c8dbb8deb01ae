/** Why a figure can't be fitted, or a place can't be mapped. Whole sentences. */
export const GEOMETRY_WORDS = {
  'circle.too-few-points': () => 'A circle needs three picked points or more.',
  'circle.points-on-one-line': () =>
    'The points of the circle lie on one straight line, so its radius is not determined.',
  'circle.arc-too-small': () =>
    'The points of the circle cover too small an arc for its radius to be determined.',
  'line.too-few-points': () => 'A line needs two picked points or more.',
  'line.one-point': () => 'All points of the line are one and the same.',
  'regression.too-few-pairs': () => 'A regression line needs three pairs of values or more.',
  'regression.one-abscissa': () => 'A regression line needs two different abscissae.',

  'mapping.mark-beyond-horizon': () =>
    'A mark lies at or beyond the horizon of this view as its figured sizes place it: check those, or pick nearer to them.',
  'mapping.true-point-beyond-horizon': () =>
    'This true point lies at or beyond the horizon of the view as its figured sizes place it: check those, or ask for a point nearer to them.',
  'mapping.without-scale': () =>
    'This view has no scale one way, so that no place on the sheet is found from true size: check its figured sizes.',
} as const
