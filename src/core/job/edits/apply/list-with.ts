import { reason } from '../../../words/core-words.ts'
import { JobError } from '../../text/job-error.ts'

/** A list with one more item in it. @throws JobError when the index is beyond its end */
export function inserted<T>(list: readonly T[], item: T, index: number, kind: string): T[] {
  if (index > list.length) {
    throw new JobError(reason('edit.index-beyond-end', { kind, index, length: list.length }))
  }
  return [...list.slice(0, index), item, ...list.slice(index)]
}

/** A list without one item. */
export function without<T>(list: readonly T[], index: number): T[] {
  return [...list.slice(0, index), ...list.slice(index + 1)]
}

/** A list with one item replaced. */
export function replaced<T>(list: readonly T[], index: number, item: T): T[] {
  return [...list.slice(0, index), item, ...list.slice(index + 1)]
}
