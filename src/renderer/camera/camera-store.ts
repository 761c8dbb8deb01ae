import { createStore } from 'zustand/vanilla'
import type { BoxSize, Camera } from './camera.ts'

/** Where each sheet is looked at from. Apart from the bench, so that moving a sheet renders nothing. */
export interface Cameras {
  /** By the id of the sheet; a sheet that was never in a box has none. */
  of: Record<string, Camera>
  /** The box that sheets are shown in, CSS pixels; 0 by 0 while there is none. */
  box: BoxSize
}

export const cameras = createStore<Cameras>(() => ({ of: {}, box: { width: 0, height: 0 } }))

export const cameraOf = (sheet: string | null): Camera | undefined =>
  sheet === null ? undefined : cameras.getState().of[sheet]

export const setCamera = (sheet: string, camera: Camera): void =>
  cameras.setState(({ of }) => ({ of: { ...of, [sheet]: camera } }))
