/** The stations of the work, in order. */
export const STATIONS = ['sheet', 'scale', 'pick', 'read'] as const

export type Station = (typeof STATIONS)[number]

export const STATION_NAMES: Record<Station, string> = {
  sheet: 'Sheet',
  scale: 'Scale',
  pick: 'Pick',
  read: 'Read',
}
