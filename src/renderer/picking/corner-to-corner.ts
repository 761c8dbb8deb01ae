import type { Tool } from './tool.ts'

/** Whether a tool picks a region by two opposite corners, so that it can be dragged as well. */
export const isCornerToCorner = ({ kind }: Tool): boolean => kind === 'outline' || kind === 'note'
