/** Angles carry their unit in their type. Core computes in radians; degrees stand in files and on screens. */

declare const unit: unique symbol

export type Radians = number & { readonly [unit]: 'radians' }
export type Degrees = number & { readonly [unit]: 'degrees' }

export const radians = (value: number): Radians => value as Radians
export const degrees = (value: number): Degrees => value as Degrees

export const toRadians = (angle: Degrees): Radians => radians((angle * Math.PI) / 180)
export const toDegrees = (angle: Radians): Degrees => degrees((angle * 180) / Math.PI)
