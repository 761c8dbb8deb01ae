/** Inputs that a person writes in. */
const WRITTEN_IN: ReadonlySet<string> = new Set([
  'text',
  'search',
  'password',
  'number',
  'email',
  'tel',
  'url',
])

type Written = HTMLInputElement | HTMLTextAreaElement

/** Whether what has the keyboard takes a text of its own; a list that is found by typing, a choice and a check do not. */
function isTextField(target: EventTarget | null): target is Written {
  if (target instanceof HTMLTextAreaElement) return true
  return (
    target instanceof HTMLInputElement &&
    WRITTEN_IN.has(target.type) &&
    target.getAttribute('role') !== 'combobox'
  )
}

/**
 * Tells whether undo and redo, pressed in a control, are those of the job, or those of what is written in it. A browser's
 * own undo goes on to letters of the field that was left, once there is none in the one that has the keyboard: it is left
 * to act only where something was written since the keyboard came.
 */
export class UndoIn {
  #field: Written | null = null
  #came = ''
  #written = false

  /** To be called when the keyboard comes to something. */
  entered(target: EventTarget | null): void {
    this.#field = isTextField(target) ? target : null
    this.#came = this.#field?.value ?? ''
    this.#written = false
  }

  /** To be called when somebody writes. */
  wrote(target: EventTarget | null): void {
    if (target === this.#field) this.#written = true
  }

  /** Whether undo or redo is the job's. */
  isOfJob(target: EventTarget | null, which: 'undo' | 'redo'): boolean {
    if (!isTextField(target)) return !(target instanceof HTMLElement && target.isContentEditable)
    if (target.hasAttribute('data-kept')) return true
    if (target !== this.#field || !this.#written) return true
    return which === 'undo' && target.value === this.#came
  }
}
