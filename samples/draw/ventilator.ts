/** True sizes of the deck ventilator, inches and degrees. Nobody but the drawing and the truth file knows them. */
export const SIZES = {
  flangeOd: 12,
  flangeThickness: 0.75,
  flangeBore: 8,
  boltCircle: 10.75,
  edgeMargin: 0.625,
  holes: 8,
  holeDia: 0.5625,
  sheet: 0.0625,
  drumOd: 8.75,
  drumHeight: 11.25,
  coneHeight: 4.5,
  neckOd: 6,
  neckHeight: 3.125,
  opening: 2.25,
  hoodOd: 11.5,
  hoodLip: 0.375,
  hoodRise: 1.875,
  capOd: 2.5,
  capHeight: 0.5,
  leverCentres: 5,
  leverAngle: 55,
  guardBar: 0.875,
  stayThickness: 0.1875,
  stayFoot: 1.25,
  stayReach: 1.75,
  stayRise: 3.375,
  palmWidth: 2.75,
  palmHeight: 5,
  palmPitchUp: 3.75,
  palmPitchAcross: 1.75,
  palmMargin: 0.625,
  palmHole: 0.4375,
  plateThickness: 0.625,
  bossReach: 4.125,
  bossHeight: 3.5,
  bossRadius: 1,
  bossBore: 0.875,
} as const

/** Heights above the base of the flange. */
export const LEVELS = (() => {
  const s = SIZES
  const flangeTop = s.flangeThickness
  const drumTop = flangeTop + s.drumHeight
  const coneTop = drumTop + s.coneHeight
  const neckTop = coneTop + s.neckHeight
  const hoodRim = neckTop + s.opening
  const lipTop = hoodRim + s.hoodLip
  const slopeTop = lipTop + s.hoodRise
  return { flangeTop, drumTop, coneTop, neckTop, hoodRim, lipTop, slopeTop, top: slopeTop + s.capHeight }
})()

export const HOOD_HEIGHT = SIZES.hoodLip + SIZES.hoodRise + SIZES.capHeight
/** 3/8 lip, then a 5:12:13 slope. */
export const HOOD_SLANT = Math.hypot((SIZES.hoodOd - SIZES.capOd) / 2, SIZES.hoodRise)
