import type { Edit } from '../model/edit-schema.ts'
import { ITEM_KINDS, nameOf } from '../model/item-kinds.ts'
import { itemEditOf } from './apply/item-edit.ts'

const fields = ({ set, clear }: { set?: object; clear?: string[] }): string =>
  [...Object.keys(set ?? {}), ...(clear ?? [])].join(', ') || 'nothing'

/** What an edit does, in a few words, as undo and the history name it: "add mark M12", "adopt printed for drum_length". */
export function describeEdit(edit: Edit): string {
  switch (edit.do) {
    case 'describe':
      return `change ${fields(edit)} of the job`
    case 'several':
      return edit.name === '' ? edit.edits.map(describeEdit).join('; ') : edit.name
    case 'add-evidence':
      return `add ${edit.item.basis} evidence ${edit.item.id} to ${edit.dimension}`
    case 'change-evidence':
      return `change ${fields(edit)} of evidence ${edit.id} of ${edit.dimension}`
    case 'withdraw-evidence':
      return `withdraw evidence ${edit.id} of ${edit.dimension}`
    case 'reinstate-evidence':
      return `reinstate evidence ${edit.id} of ${edit.dimension}`
    case 'remove-evidence':
      return `take back evidence ${edit.id} of ${edit.dimension}`
    case 'add-reference':
      return `add reference ${edit.item.id} to view ${edit.view}`
    case 'change-reference':
      return `change ${fields(edit)} of reference ${edit.id} of view ${edit.view}`
    case 'remove-reference':
      return `remove reference ${edit.id} of view ${edit.view}`
    case 'adopt':
      return edit.adopt === undefined
        ? `adopt by the rules for ${edit.dimension}`
        : `adopt ${edit.adopt} for ${edit.dimension}`
    case 'rename-dimension':
      return `rename ${edit.name} to ${edit.to}`
    case 'move-dimension':
      return `move dimension ${edit.name}`
    case 'repeat-pick':
      return `pick mark ${edit.mark} again`
    default: {
      const itemEdit = itemEditOf(edit)
      if (itemEdit === null) return edit.do
      const { kind, does } = itemEdit
      if (does.verb === 'add') return `add ${kind} ${nameOf(does.item, ITEM_KINDS[kind].key)}`
      return does.verb === 'change'
        ? `change ${fields(does)} of ${kind} ${does.name}`
        : `remove ${kind} ${does.name}`
    }
  }
}
