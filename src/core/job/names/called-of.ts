import { quoted } from '../../words/quoted.ts'
import { labelBesideId } from '../ids/label.ts'
import type { ThingKind } from '../model/thing-kind.ts'

/** What people know a thing of a kind by that goes by a name which need not be its own. */
export const NAMED = { person: 'name', instrument: 'name', sheet: 'title', view: 'name' } as const

export const isNamed = (kind: ThingKind): kind is keyof typeof NAMED => Object.hasOwn(NAMED, kind)

/** What is called by a name, with its noun: `view “Elevation”`, `person A. Rivet`; what has a noun already as it is. */
export function calledOf(kind: ThingKind, name: string): string {
  if (kind === 'person' || kind === 'dimension') return `${kind} ${name}`
  return isNamed(kind) ? `${kind} “${name}”` : name
}

/** An item by its name, else by its label, as a refusal has it: `view "Elevation"`, `circle 12`; null: it has only its id. */
export function nameOrLabel(kind: ThingKind, item: object): string | null {
  const name = isNamed(kind) ? (item as Record<string, unknown>)[NAMED[kind]] : undefined
  if (typeof name === 'string' && name.trim() !== '')
    return kind === 'person' ? `${kind} ${name}` : `${kind} ${quoted(name)}`
  return 'id' in item && typeof item.id === 'string'
    ? (labelBesideId({ ...item, id: item.id }) ?? null)
    : null
}
