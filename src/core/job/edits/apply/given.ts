/** Fields that have a value. */
export type Given<T> = { [K in keyof T]?: Exclude<T[K], undefined> }

/** Only those fields that have a value, so that what is not said is not there. */
export function given<T extends object>(fields: T): Given<T> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Given<T>
}
