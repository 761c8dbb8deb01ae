import { ITEM_KINDS, ITEM_WORDS } from '../model/item-kinds.ts'
import type { Job } from '../model/types.ts'
import type { Change, Verb } from './change.ts'
import { changedFields, type Fields } from './changed-fields.ts'
import { cameOrWent } from './changes-of.ts'

/** Something that was done, by whom and when as far as the job says so itself. */
export interface SignedChange {
  by?: string
  at?: string
  change: Change
}

const text = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined)

function signed(by: unknown, at: unknown, change: Change): SignedChange[] {
  const [who, when] = [text(by), text(at)]
  if (who === undefined && when === undefined) return []
  return [{ ...(who === undefined ? {} : { by: who }), ...(when === undefined ? {} : { at: when }), change }]
}

/** That a thing was adopted, withdrawn or picked again, where it says so. */
function decisions({ thing }: Change, item: Fields): SignedChange[] {
  const done = (verb: Verb, fields: Fields): Change => ({ thing, verb, fields: changedFields({}, fields) })
  const { adopt, adoptedBy, adoptedAt, withdrawn, withdrawnBy, withdrawnAt, repeatedBy } = item
  const again = thing.kind === 'mark' && Array.isArray(repeatedBy) ? (repeatedBy as Fields[]) : []
  return [
    ...(adopt === undefined ? [] : signed(adoptedBy, adoptedAt, done('adopted', { adopt }))),
    ...(withdrawn === undefined ? [] : signed(withdrawnBy, withdrawnAt, done('withdrawn', { withdrawn }))),
    ...again.flatMap(({ by, at }) => signed(by, at, done('picked again', {}))),
  ]
}

/**
 * What a job itself says was done in it: who entered its things, adopted and withdrew, and when. Where there is no
 * history this is all that is known; what bears neither a name nor a date is not told.
 */
export function signedIn(job: Job): SignedChange[] {
  return ITEM_WORDS.flatMap((kind) => {
    const { list, key } = ITEM_KINDS[kind]
    return job[list].flatMap((item: object) => {
      const id = String((item as Fields)[key])
      return cameOrWent({ kind, id }, item, 'added').flatMap((change) => {
        const fields: Fields = Object.fromEntries(change.fields.map(({ field, after }) => [field, after]))
        return [...signed(fields['by'], fields['at'], change), ...decisions(change, fields)]
      })
    })
  })
}
