import { formatDrawnScale } from '../../quantity/format/format-drawn-scale.ts'
import { type CoreReason, reason } from '../../words/core-words.ts'
import { isOwnWords, settingWord } from '../../words/field-words.ts'
import { plainText } from '../../words/plain-text.ts'
import { mintedFor } from '../ids/id-form.ts'
import { ADOPTION_RULES } from '../model/schema.ts'
import type { ChangedField, Thing } from './change.ts'
import { changedFields, type Fields } from './changed-fields.ts'
import type { ThingNames } from './known-names.ts'

/** A value as people write it, or what it comes to. */
export type WrittenValue = string | CoreReason

/** What the ids in a field are of. */
const REFERS: Readonly<Record<string, Thing['kind']>> = {
  marks: 'mark',
  view: 'view',
  sheet: 'sheet',
  instrument: 'instrument',
  by: 'person',
  adoptedBy: 'person',
  changedBy: 'person',
  withdrawnBy: 'person',
}

const UNITS: Readonly<Record<string, string>> = {
  sigma: ' px',
  width: ' px',
  height: ' px',
  dpi: ' dpi',
  drawnAt: ' dpi',
  grain: '°',
  straight: '°',
}

/** What only programs read: that it changed is said, and not how. */
const UNSAID: ReadonlySet<string> = new Set([
  'stroke',
  'covariance',
  'outline',
  'repeatedBy',
  'sha256',
  'sitting',
])

/** Characters that are shown of what no person wrote. */
const LONGEST = 80

function shortened(text: string): string {
  return text.length <= LONGEST ? text : `${text.slice(0, LONGEST)}…`
}

const isPixels = (list: readonly unknown[]): boolean => list.length > 0 && list.every(Array.isArray)

function listValue(kind: string, field: string, list: readonly unknown[], names: ThingNames): WrittenValue {
  if (field === 'repeats') return reason('value.times', { count: list.length })
  if (isPixels(list)) return reason('value.points', { count: list.length })
  return list.map((one) => plainValue(kind, field, one, names)).join(', ')
}

function referredTo(field: string, value: string): Thing['kind'] | undefined {
  if (field === 'adopt') return ADOPTION_RULES.has(value) ? undefined : 'evidence'
  return REFERS[field]
}

function plainValue(of: string, field: string, value: unknown, names: ThingNames): string {
  switch (typeof value) {
    case 'string': {
      const kind = referredTo(field, value) ?? mintedFor(value)
      return plainText(kind === undefined ? settingWord(of, field, value) : names.nameOf({ kind, id: value }))
    }
    case 'number':
      if (field === 'drawnScale') return formatDrawnScale(value, names.unit)
      return `${String(Number(value.toPrecision(6))).replace(/^-/, '−')}${UNITS[field] ?? ''}`
    default:
      return shortened(plainText(JSON.stringify(value)))
  }
}

/**
 * A value as people write it, whole and on one line; null where there is none.
 * @param kind of the thing in whose field it stands
 */
export function writtenValue(
  kind: string,
  field: string,
  value: unknown,
  names: ThingNames,
): WrittenValue | null {
  if (value === undefined) return null
  if (typeof value === 'boolean') return reason('value.yes-or-no', { yes: value })
  if (field === 'candidates' && Array.isArray(value)) {
    return value.map((one) => plainValue(kind, 'text', (one as Fields)['text'], names)).join(', ')
  }
  return Array.isArray(value) ? listValue(kind, field, value, names) : plainValue(kind, field, value, names)
}

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Fields in words, each with what it was and what it is; of a field that holds others those that differ. */
export function writtenFields(
  kind: string,
  fields: readonly ChangedField[],
  names: ThingNames,
): CoreReason[] {
  const written = (field: string, value: unknown): WrittenValue | null => {
    const plain = writtenValue(kind, field, value, names)
    return typeof plain === 'string' && isOwnWords(kind, field)
      ? reason('value.quoted', { text: plain })
      : plain
  }
  return fields.flatMap(({ field, before, after }) => {
    if (UNSAID.has(field)) return [reason('history.field-only', { kind, field })]
    if ((isFields(before) || before === undefined) && (isFields(after) || after === undefined)) {
      return writtenFields(kind, changedFields(before ?? {}, after ?? {}), names)
    }
    const held = { before: written(field, before), after: written(field, after) }
    return [reason('history.field', { kind, field, ...held })]
  })
}
