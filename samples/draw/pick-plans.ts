import { ARCHIVIST, type PickPlan, RESTORER } from './picks.ts'

type Corner = readonly [string, string]
type View = PickPlan['view']
const HAND = 1

const [om, jt] = [ARCHIVIST, RESTORER]
const at = (by: string, minute: number) => {
  const [day, hour] = by === om ? ['2026-03-09', 10] : ['2026-03-11', 14]
  const clock = `${String(hour + Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`
  return `${day}T${clock}:00Z`
}

function inView(view: View, by: string, minute: number) {
  const when = at(by, minute)
  const common = (id: string, label: string, sigma: number) => ({ id, view, by, at: when, label, sigma })
  return {
    point: (id: string, label: string, corner: Corner, repeats = 0): PickPlan => ({
      ...common(id, label, HAND),
      kind: 'point',
      corner,
      ...(repeats > 0 ? { repeats } : {}),
    }),
    line: (id: string, label: string, edge: string, picks: number, sigma = 0.25): PickPlan => ({
      ...common(id, label, sigma),
      kind: 'line',
      edge,
      picks,
    }),
    circle: (id: string, label: string, ring: string, picks: number, sigma = 0.25): PickPlan => ({
      ...common(id, label, sigma),
      kind: 'circle',
      ring,
      picks,
    }),
    path: (id: string, label: string, corners: Corner[], closed: boolean): PickPlan => ({
      ...common(id, label, HAND),
      kind: 'path',
      corners,
      closed,
    }),
  }
}

const e1 = inView('elevation', om, 5)
const e2 = inView('elevation', jt, 0)
const f1 = inView('foot-plan', om, 40)
const f2 = inView('foot-plan', jt, 55)
const b1 = inView('bracket', om, 75)
const b2 = inView('bracket', jt, 90)

/** Everything the two people picked. */
export const PICK_PLANS: readonly PickPlan[] = [
  e1.point('M1', 'foot of flange, left', ['baseL', 'rimL']),
  e1.point('M2', 'foot of flange, right', ['baseR', 'rimR']),
  e1.point('M3', 'base on the axis', ['baseR', 'axis'], 3),
  e1.point('M4', 'top of cap on the axis', ['capTopR', 'axis'], 3),
  e1.point('M5', 'top of drum, left', ['drumSeamL', 'drumL']),
  e1.point('M6', 'top of drum, right', ['drumSeamR', 'drumR']),
  e1.point('M7', 'foot of drum, right', ['footTopR', 'drumR']),
  e1.point('M8', 'foot of neck, left', ['neckSeamL', 'neckL']),
  e1.point('M9', 'foot of neck, right', ['neckSeamR', 'neckR']),
  e1.point('M10', 'foot of hood slope, left', ['hoodBendL', 'hoodLipL']),
  e1.point('M11', 'head of hood slope, left', ['capSeatL', 'capSideL']),
  e1.point('M12', 'lever pivot', ['leverAxis', 'pivotTick']),
  e1.point('M13', 'lever eye', ['leverAxis', 'tipTick']),
  e2.point('M14', 'rim of hood, left', ['hoodRimL', 'hoodLipL'], 4),
  e2.point('M15', 'rim of hood, right', ['hoodRimR', 'hoodLipR'], 4),
  e2.line('M16', 'top of flange, left', 'footTopL', 5),
  e2.line('M17', 'seam of drum, left', 'drumSeamL', 7),
  e2.line('M18', 'seam of neck, left', 'neckSeamL', 7, 0.2),
  e2.line('M19', 'top of neck, right', 'neckTopR', 6),
  e2.line('M20', 'rim of hood, right', 'hoodRimR', 8),
  e2.line('M21', 'rim of hood, left', 'hoodRimL', 8),
  e2.line('M22', 'top of cap, left', 'capTopL', 4),
  e2.line('M23', 'cone, left', 'coneL', 8, 0.3),
  e2.line('M24', 'cone, right', 'coneR', 8, 0.3),
  e2.line('M25', 'centre line of lever', 'leverAxis', 6, 0.3),
  e2.line('M26', 'level through lever pivot', 'leverLevel', 5, 0.3),
  e2.line('M27', 'stay, outer face, left', 'stayRiseL', 4, 1),
  e2.line('M28', 'neck, left', 'neckL', 4, 1),
  e2.line('M29', 'underside of flange, right', 'baseR', 6),
  e2.line('M30', 'top of flange, right', 'footTopR', 4),
  e2.path(
    'M31',
    'stay, outer face, right',
    [
      ['stayEndR', 'stayFootR'],
      ['stayFootR', 'stayReachR'],
      ['stayReachR', 'stayRiseR'],
      ['stayRiseR', 'hoodRimR'],
    ],
    false,
  ),
  f1.circle('M32', 'rim of flange', 'rim', 10, 1),
  f1.point('M33', 'hole 1', ['axisAcross', 'tick1']),
  f1.point('M34', 'hole 5', ['axisAcross', 'tick5']),
  f1.point('M35', 'hole 3', ['axisUp', 'tick3']),
  f1.point('M36', 'hole 7', ['axisUp', 'tick7']),
  f2.circle('M37', 'bolt circle', 'boltCircle', 12, 0.3),
  f2.circle('M38', 'bore of flange', 'bore', 10),
  f2.circle('M39', 'hole 2', 'hole2', 6),
  f2.circle('M40', 'hole 8', 'hole8', 6),
  f2.circle('M41', 'hole 4', 'hole4', 8),
  f2.circle('M42', 'drum wall', 'drumWall', 8, 1),
  f2.line('M43', 'guard bar, left', 'barLeft', 6),
  f2.line('M44', 'guard bar, right', 'barRight', 6),
  b1.point('M45', 'palm, top left', ['palmTop', 'palmLeft']),
  b1.point('M46', 'palm, top right', ['palmTop', 'palmRight']),
  b1.point('M47', 'palm, bottom right', ['palmBottom', 'palmRight']),
  b1.point('M48', 'palm, bottom left', ['palmBottom', 'palmLeft']),
  b1.point('M49', 'palm hole, bottom left', ['holesLeft', 'holesBottom']),
  b1.point('M50', 'palm hole, top left', ['holesLeft', 'holesTop']),
  b1.point('M51', 'palm hole, top right', ['holesRight', 'holesTop']),
  b2.circle('M52', 'boss', 'boss', 10),
  b2.circle('M53', 'bore of boss', 'bossBore', 8),
  b2.line('M54', 'back of plate', 'plateBack', 6),
  b2.line('M55', 'front of plate', 'plateFront', 6),
  b2.point('M56', 'centre of boss', ['bossUp', 'bossAcross'], 2),
  b2.line('M57', 'underside of arm', 'armUnder', 6),
  b2.path(
    'M58',
    'recess in web',
    [
      ['recessLeft', 'recessTop'],
      ['recessTop', 'recessRight'],
      ['recessRight', 'recessUnder'],
      ['recessUnder', 'recessLeft'],
    ],
    true,
  ),
]
