import { useEffect } from 'react'
import { useBench } from '../bench/bench-store.ts'
import { goTo } from '../bench/choose.ts'
import { redo, undo } from '../bench/edits.ts'
import { showOnSheet } from '../bench/settings.ts'
import { nextShows } from '../bench/shows.ts'
import { STATIONS } from '../bench/stations.ts'
import { lookCloser, showWholeSheet } from '../camera/look-at.ts'
import { SLOT_KEY, takeUpByKey } from '../desk/in-hand/tool-keys.ts'
import { isWritingIn, leaveField } from '../focus/leave-field.ts'
import { focusNextRegion } from '../focus/regions.ts'
import { UndoIn } from '../focus/undo-in.ts'
import { isForTheForm } from '../gestures/for-the-form.ts'
import { crossPlace } from '../gestures/picking.ts'
import { mean } from '../overlay/shape.ts'
import { pointer } from '../picking/pointer-store.ts'
import { pixelsOfSelection } from '../sheet/pixels-of-selection.ts'
import { goToNext, NEXT_KEYS } from '../table/rows-in-order.ts'

/** The station that Alt and a digit name. */
function stationOf({ altKey, ctrlKey, metaKey, code }: KeyboardEvent) {
  if (!altKey || ctrlKey || metaKey) return undefined
  const digit = /^(?:Digit|Numpad)([1-6])$/.exec(code)?.[1]
  return digit === undefined ? undefined : STATIONS[Number(digit) - 1]
}

/** Parts of the window in which digits mean something else. In the table that is so in some cells only, and said there. */
const OWN_KEYS = '[role="listbox"], [role="menu"], [role="spinbutton"]'

/** Parts in which a letter goes to the entry that begins with it. */
const BY_LETTERS = '[role="listbox"], [role="menu"], [role="spinbutton"]'

/** Whether letters and digits mean something of their own where they are pressed. */
const hasOwnLetters = (target: EventTarget | null): boolean =>
  isWritingIn(target) || (target instanceof Element && target.closest(`${OWN_KEYS}, [role="grid"]`) !== null)

/** Whether this may take a tool up: a digit by itself, where nobody writes. */
const isToolKey = ({ altKey, ctrlKey, metaKey, key, target }: KeyboardEvent): boolean =>
  !altKey &&
  !ctrlKey &&
  !metaKey &&
  /^[0-9]$/.test(key) &&
  !isWritingIn(target) &&
  !(target instanceof Element && target.closest(OWN_KEYS) !== null)

/** Whether this may be a command by its letter: by itself, where nobody writes and no list is gone through by letters. */
const isLetterKey = ({ altKey, ctrlKey, metaKey, key, target }: KeyboardEvent): boolean =>
  !altKey &&
  !ctrlKey &&
  !metaKey &&
  /^[a-z]$/i.test(key) &&
  // The sheet hands letters on to a form, which has the keyboard by now.
  ![target, document.activeElement].some(isWritingIn) &&
  !(target instanceof Element && target.closest(BY_LETTERS) !== null)

/** Looks closer at what the pointer is over, or else at what is chosen, or at the middle of what is seen. */
function lookCloserAtChosen(): void {
  const chosen = pixelsOfSelection(useBench.getState().selection)
  lookCloser(pointer.getState().pixel ?? (chosen.length > 0 ? mean(chosen) : crossPlace()))
}

/** Whether a letter meant something. */
function onLetter({ key, shiftKey }: KeyboardEvent): boolean {
  const letter = key.toUpperCase()
  if (letter === 'M' && !shiftKey) {
    showOnSheet(nextShows(useBench.getState().shows))
    return true
  }
  if (letter === 'W' && !shiftKey) {
    showWholeSheet()
    return true
  }
  if (letter === 'Z' && !shiftKey) {
    lookCloserAtChosen()
    return true
  }
  if (letter === SLOT_KEY && !shiftKey && takeUpByKey(SLOT_KEY)) return true
  const next = NEXT_KEYS.find((one) => one.key === letter)
  return next !== undefined && goToNext(next.status, shiftKey ? -1 : 1)
}

/** Whether this asks for undo or redo. */
function historyKey({ ctrlKey, metaKey, shiftKey, altKey, key }: KeyboardEvent): 'undo' | 'redo' | null {
  if (!(ctrlKey || metaKey) || altKey) return null
  const letter = key.toLowerCase()
  if (letter === 'z') return shiftKey ? 'redo' : 'undo'
  return letter === 'y' && !shiftKey ? 'redo' : null
}

/**
 * The keys that hold everywhere in the window.
 * @param showKeys called when the sheet of keys is asked for
 */
export function useKeys(showKeys: () => void): void {
  useEffect(() => {
    const undoIn = new UndoIn()
    const pressed = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || document.querySelector('[role="dialog"]') !== null) return
      const { opened } = useBench.getState()
      if (event.key === '?' && !isWritingIn(event.target)) {
        event.preventDefault()
        showKeys()
        return
      }
      if (opened === null) return
      if (event.key === 'F6') {
        event.preventDefault()
        focusNextRegion(event.shiftKey ? -1 : 1)
        return
      }
      const station = stationOf(event)
      if (station !== undefined) {
        event.preventDefault()
        leaveField()
        goTo(station)
        return
      }
      // A tool taken up by a letter of a name would throw away what was picked.
      if (!hasOwnLetters(event.target) && isForTheForm(event)) return
      if (isToolKey(event) && takeUpByKey(event.key)) {
        event.preventDefault()
        return
      }
      if (isLetterKey(event) && onLetter(event)) {
        event.preventDefault()
        return
      }
      const history = historyKey(event)
      if (history === null || !undoIn.isOfJob(event.target, history)) return
      event.preventDefault()
      if (opened.writable) void (history === 'undo' ? undo() : redo())
    }
    const entered = ({ target }: FocusEvent): void => undoIn.entered(target)
    const wrote = ({ target }: Event): void => undoIn.wrote(target)
    window.addEventListener('keydown', pressed)
    window.addEventListener('focusin', entered)
    window.addEventListener('input', wrote)
    return () => {
      window.removeEventListener('keydown', pressed)
      window.removeEventListener('focusin', entered)
      window.removeEventListener('input', wrote)
    }
  }, [showKeys])
}
