/** Angles carry their unit in their type. Core computes in radians; degrees stand in files and on screens. */

declare const unit: unique symbol

/** An angle in radians. Nothing but `radians`, `toRadians` and what core computes gives one. */
export type Radians = number & { readonly [unit]: 'radians' }
/** An angle in degrees. Nothing but `degrees`, `toDegrees` and a document that was read gives one. */
export type Degrees = number & { readonly [unit]: 'degrees' }

/** A number that is known to be in radians. */
export const radians = (value: number): Radians => value as Radians
/** A number that is known to be in degrees. */
export const degrees = (value: number): Degrees => value as Degrees

/** The same angle in radians: 1° is π/180. */
export const toRadians = (angle: Degrees): Radians => radians((angle * Math.PI) / 180)
/** The same angle in degrees: 1 rad is 180°/π. */
export const toDegrees = (angle: Radians): Degrees => degrees((angle * 180) / Math.PI)
