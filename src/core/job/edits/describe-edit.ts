import { withNoun } from '../ids/label.ts'
import type { Labels } from '../ids/labels-of-job.ts'
import type { Edit } from '../model/edit-schema.ts'
import { ITEM_KINDS, nameOf } from '../model/item-kinds.ts'
import type { Job } from '../model/types.ts'
import { itemEditOf } from './apply/item-edit.ts'
import { labelsAround } from './apply/labels-around.ts'

const fields = ({ set, clear }: { set?: object; clear?: string[] }): string =>
  [...Object.keys(set ?? {}), ...(clear ?? [])].join(', ') || 'nothing'

/**
 * What an edit does, in a few words, as undo and the history name it: "add mark M12", "adopt printed for drum_length".
 * @param job that it is or was made in, by which things are called by their labels: "change sigma of circle 12"
 * @param back the edit that takes it back, for what is not in that job any more
 */
export function describeEdit(edit: Edit, job?: Job, back?: Edit): string {
  return described(edit, labelsAround(job, edit, back))
}

function described(edit: Edit, labels: Labels): string {
  const the = (noun: string, id: string): string => withNoun(noun, id, labels(id))
  switch (edit.do) {
    case 'describe':
      return `change ${fields(edit)} of the job`
    case 'several':
      return edit.name === '' ? edit.edits.map((one) => described(one, labels)).join('; ') : edit.name
    case 'add-evidence':
      return `add ${the(`${edit.item.basis} evidence`, edit.item.id)} to ${edit.dimension}`
    case 'change-evidence':
      return `change ${fields(edit)} of ${the('evidence', edit.id)} of ${edit.dimension}`
    case 'withdraw-evidence':
      return `withdraw ${the('evidence', edit.id)} of ${edit.dimension}`
    case 'reinstate-evidence':
      return `reinstate ${the('evidence', edit.id)} of ${edit.dimension}`
    case 'remove-evidence':
      return `take back ${the('evidence', edit.id)} of ${edit.dimension}`
    case 'add-reference':
      return `add ${the('reference', edit.item.id)} to ${the('view', edit.view)}`
    case 'change-reference':
      return `change ${fields(edit)} of ${the('reference', edit.id)} of ${the('view', edit.view)}`
    case 'remove-reference':
      return `remove ${the('reference', edit.id)} of ${the('view', edit.view)}`
    case 'adopt':
      return edit.adopt === undefined
        ? `adopt by the rules for ${edit.dimension}`
        : `adopt ${labels(edit.adopt)} for ${edit.dimension}`
    case 'rename-dimension':
      return `rename ${edit.name} to ${edit.to}`
    case 'move-dimension':
      return `move dimension ${edit.name}`
    case 'repeat-pick':
      return `pick ${the('mark', edit.mark)} again`
    default: {
      const itemEdit = itemEditOf(edit)
      if (itemEdit === null) return edit.do
      const { kind, does } = itemEdit
      const key = ITEM_KINDS[kind].key
      const name = does.verb === 'add' ? nameOf(does.item, key) : does.name
      const called = key === 'id' ? the(kind, name) : `${kind} ${name}`
      return does.verb === 'change' ? `change ${fields(does)} of ${called}` : `${does.verb} ${called}`
    }
  }
}
