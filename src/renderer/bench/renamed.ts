import type { Edit } from '../../core/job/edits/edit.ts'

/** What a dimension is called after an edit. */
export function renamed(name: string, edit: Edit): string {
  if (edit.do === 'several') return edit.edits.reduce(renamed, name)
  return edit.do === 'rename-dimension' && edit.name === name ? edit.to : name
}
