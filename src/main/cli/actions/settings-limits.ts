import { homedir } from 'node:os'
import { KeptLimits } from '../../services/limits/kept-limits.ts'
import { placesFor } from '../../services/places/places.ts'

/** The limits of this person, where the window keeps them as well. */
export const settingsLimits = (): KeptLimits =>
  new KeptLimits(placesFor({ platform: process.platform, env: process.env, home: homedir() }).settings)
