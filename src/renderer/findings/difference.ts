/** What stands in a list, in its order: a run of what stood in the list before, from one place to before another; or new. */
export type Run<T> = { readonly from: number; readonly to: number } | { readonly put: readonly T[] }

/** How something came from what it was: by its fields, and of lists by their items. */
export interface Difference {
  readonly set: Readonly<Record<string, unknown>>
  readonly lists: Readonly<Record<string, readonly Run<unknown>[]>>
  readonly gone: readonly string[]
}

/** How a list came from another. What is the same one is not told again, only where it stood. */
export function runsFrom<T>(before: readonly T[], after: readonly T[]): Run<T>[] {
  const places = new Map(before.map((item, place) => [item, place]))
  const runs: Run<T>[] = []
  for (let i = 0; i < after.length; ) {
    const from = places.get(after[i] as T)
    const start = i
    if (from === undefined) {
      while (i < after.length && !places.has(after[i] as T)) i++
      runs.push({ put: after.slice(start, i) })
    } else {
      i++
      while (i < after.length && from + i - start < before.length && before[from + i - start] === after[i])
        i++
      // Of what stands twice in a list the last is found.
      runs.push({ from, to: from + i - start })
    }
  }
  return runs
}

/** The list that runs tell of. */
export const listOf = <T>(before: readonly T[], runs: readonly Run<T>[]): T[] =>
  runs.flatMap((run) => ('put' in run ? run.put : before.slice(run.from, run.to)))

/** How something came from what it was; what is the same one is not told again. */
export function differenceFrom<T extends object>(before: T, after: T): Difference {
  const [was, is] = [new Map(Object.entries(before)), Object.entries(after)]
  const set: Record<string, unknown> = {}
  const lists: Record<string, readonly Run<unknown>[]> = {}
  for (const [field, value] of is) {
    const old: unknown = was.get(field)
    if (old === value) continue
    if (Array.isArray(old) && Array.isArray(value)) lists[field] = runsFrom<unknown>(old, value)
    else set[field] = value
  }
  const gone = [...was.keys()].filter((field) => !Object.hasOwn(after, field))
  return { set, lists, gone }
}

/** What something comes to by a change. */
export function changed<T extends object>(before: T, { set, lists, gone }: Difference): T {
  const fields = new Map<string, unknown>(Object.entries(before))
  for (const [field, value] of Object.entries(set)) fields.set(field, value)
  for (const [field, runs] of Object.entries(lists)) {
    const old: unknown = fields.get(field)
    fields.set(field, listOf<unknown>(Array.isArray(old) ? old : [], runs))
  }
  for (const field of gone) fields.delete(field)
  return Object.fromEntries(fields) as T
}
